import { describe, expect, it } from 'vitest';
import { slowerBlocks, toBlocks } from '../../../../src/core/signal/prepare/blocks.ts';
import { decimate, decimationFor } from '../../../../src/core/signal/prepare/decimate.ts';
import { parkMiller, preparedOf, samples, tone } from '../made.ts';

/** Amplitude that a tone at a share of the new half rate has after decimation, away from the ends, by least squares. */
function kept(factor: number, share: number): number {
  const w = (Math.PI * share) / factor;
  const out = decimate(
    samples(6000, 1, (t) => Math.cos(w * t + 0.3)),
    factor,
  );
  let [cc, cs, ss, yc, ys] = [0, 0, 0, 0, 0];
  for (let i = 100; i < out.length - 100; i += 1) {
    const [c, s] = [Math.cos(w * factor * i), Math.sin(w * factor * i)];
    cc += c * c;
    cs += c * s;
    ss += s * s;
    yc += out[i]! * c;
    ys += out[i]! * s;
  }
  const det = cc * ss - cs * cs;
  return Math.hypot((yc * ss - ys * cs) / det, (ys * cc - yc * cs) / det);
}

describe('fewer samples', () => {
  it.each([2, 3, 5, 8])('by %i: flat within 0.06 % to 0.8 of the new half rate', (factor) => {
    for (const share of [0.05, 0.3, 0.6, 0.8]) expect(Math.abs(kept(factor, share) - 1)).toBeLessThan(6e-4);
  });

  it.each([2, 3, 5, 8])('by %i: what would fold into the flat part is 68 dB down or more', (factor) => {
    for (const share of [1.21, 1.4, 1.73]) {
      if (share < factor) expect(20 * Math.log10(kept(factor, share))).toBeLessThan(-68);
    }
  });

  it('keeps the phase: the filter is symmetric', () => {
    const x = parkMiller(8, 601);
    const forward = decimate(x, 4);
    const backward = decimate(x.slice().reverse(), 4).reverse();
    forward.forEach((v, i) => expect(backward[i]).toBeCloseTo(v, 12));
  });

  it('starts at the first sample, keeps a constant to its ends, and by one does nothing', () => {
    const x = parkMiller(9, 100);
    expect(decimate(x, 1)).toBe(x);
    const flat = decimate(new Float64Array(100).fill(3), 7);
    expect(flat.length).toBe(15);
    for (const v of flat) expect(v).toBeCloseTo(3, 12);
  });

  it('takes the greatest factor that keeps the highest frequency in the flat part', () => {
    // fs·0.8/(2·f): 1000 Hz for 100 Hz → 4; for 101 Hz → 3; never less than 1.
    expect([decimationFor(1000, 100), decimationFor(1000, 101), decimationFor(100, 90)]).toEqual([4, 3, 1]);
  });
});

describe('blocks for the search', () => {
  it('are equal, at most 100 s long, and know when they begin', () => {
    const rate = 50;
    const axis = parkMiller(10, 250 * rate);
    const { blocks, samplingRateHz, longest } = toBlocks(preparedOf([axis], rate, 7), 20);
    expect(samplingRateHz).toBe(50);
    expect(blocks.map((b) => [b.startS, b.axes[0]!.length])).toEqual([0, 1, 2].map((k) => [7 + (k * 4166) / 50, 4166]));
    expect(longest).toBe(4166);
    expect(blocks[1]!.axes[0]![0]).toBe(axis[4166]);
  });

  it('are at a lower rate where the search allows', () => {
    const { samplingRateHz, blocks } = toBlocks(preparedOf([parkMiller(11, 5000)], 1000), 100);
    expect(samplingRateHz).toBe(250);
    expect(blocks[0]!.axes[0]!.length).toBe(1250);
  });

  it('are made slower again by the greatest factor, their beginnings kept; where there is none they are the same', () => {
    const blocks = toBlocks(preparedOf([samples(240_000, 2000, tone(1, 40)), parkMiller(12, 240_000)], 2000, 5), 800);
    // 2000·0.8/(2·250) = 3.2.
    const slow = slowerBlocks(blocks, 250);
    expect(slow.samplingRateHz).toBeCloseTo(2000 / 3, 9);
    expect(slow.blocks.map((b) => [b.startS, b.axes.length, b.axes[0]!.length])).toEqual([
      [5, 2, 40_000],
      [65, 2, 40_000],
    ]);
    expect(slow.longest).toBe(40_000);
    expect(slow.axisCount).toBe(2);
    for (const i of [200, 20_000]) {
      expect(slow.blocks[1]!.axes[0]![i]).toBeCloseTo(Math.cos(2 * Math.PI * 40 * (60 + i / slow.samplingRateHz)), 3);
    }
    expect(slowerBlocks(blocks, 600)).toBe(blocks);
  });
});
