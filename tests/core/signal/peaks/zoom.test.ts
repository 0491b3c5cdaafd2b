import { describe, expect, it } from 'vitest';
import {
  amplitudeAt,
  powerAt,
  powersAt,
  powerScan,
  whitenedPower,
} from '../../../../src/core/signal/peaks/band-power.ts';
import { toBlocks } from '../../../../src/core/signal/prepare/blocks.ts';
import { outer, traceOfProduct } from '../../../../src/core/signal/numeric/hermitian.ts';
import { makeZoom, sliceBand, type Band } from '../../../../src/core/signal/peaks/zoom.ts';
import { parkMiller, preparedOf, samples, tone } from '../made.ts';

const RATE = 200;
const START_S = 12.34;

/** Tones on the recording's clock, which starts at 12.34 s. */
function bandOf(tones: readonly ((t: number) => number)[], centreHz: number, halfHz: number, seconds = 30): Band {
  const axes = tones.map((f) => samples(seconds * RATE, RATE, (t) => f(START_S + t)));
  return makeZoom(toBlocks(preparedOf(axes, RATE, START_S), 99)).band(0, centreHz, halfHz);
}

describe('a narrow band about a frequency', () => {
  it.each([
    [14.4128, 14.4128],
    [14.4128, 14.9],
    [53.7599, 53.1],
    [3.1, 3.4],
  ])('a tone at %f Hz in a band about %f Hz keeps its amplitude and phase', (hz, centre) => {
    const band = bandOf([tone(0.7, hz, 1.1), tone(0.2, hz, -2)], centre, 2);
    const a = amplitudeAt(band, hz);
    // Ends faded over 0.2 s: the share of a tone that is lost there is weighed off, 0.1 % is left of the leakage.
    [
      [0.7, 1.1],
      [0.2, -2],
    ].forEach(([size, phase], i) => {
      expect(Math.abs(a.re[i]! - size! * Math.cos(phase!))).toBeLessThan(1e-3 * size!);
      expect(Math.abs(a.im[i]! - size! * Math.sin(phase!))).toBeLessThan(1e-3 * size!);
    });
  });

  it('holds the analytic signal moved down: A·e^{j(2π(f − centre)t + φ)} at each of its samples', () => {
    const band = bandOf([tone(0.7, 14.4128, 1.1)], 14.9, 2);
    const { re, im } = band.axes[0]!;
    for (let i = 0; i < re.length; i += 1) {
      const t = band.startS + i * band.stepS;
      if (t < START_S + 2 || t > START_S + 28) continue;
      const angle = 2 * Math.PI * (14.4128 - band.centreHz) * t + 1.1;
      expect(Math.hypot(re[i]! - 0.7 * Math.cos(angle), im[i]! - 0.7 * Math.sin(angle))).toBeLessThan(5e-3);
      expect(Math.abs(band.envelope[i]! - 1)).toBeLessThan(5e-3);
    }
    expect(band.startS).toBe(START_S);
    expect(band.stepS).toBeLessThan(1 / 4);
    // Two faded ends of 0.2 s take 0.3 s at most off what the block is worth.
    expect(band.lengthS).toBeGreaterThan(29.6);
    expect(band.lengthS).toBeLessThanOrEqual(30);
    expect(Math.abs(band.flatHz - 1.5)).toBeLessThan(0.02);
    expect(Math.abs(band.centreHz - 14.9)).toBeLessThan(0.02);
  });

  it('keeps what lies outside out, as far as 30 s with 0.2 s of fade can tell it apart', () => {
    const inside = (hz: number): number => {
      const band = bandOf([tone(1, hz)], 22, 2);
      const sizes = [20.6, 21, 22, 22.7, 23.4]
        .map((f) => amplitudeAt(band, f))
        .map(({ re, im }) => Math.hypot(re[0]!, im[0]!));
      return 20 * Math.log10(Math.max(...sizes));
    };
    expect(inside(25.2)).toBeLessThan(-50);
    expect(inside(40)).toBeLessThan(-90);
  });

  it('a slice under a Hann window reads the tone too, and is worth two thirds of its length', () => {
    const band = bandOf([tone(0.5, 14.4128, 0.6)], 14.4, 2);
    const slice = sliceBand(band, START_S + 10, START_S + 16);
    const a = amplitudeAt(slice, 14.4128);
    expect(a.re[0]).toBeCloseTo(0.5 * Math.cos(0.6), 3);
    expect(a.im[0]).toBeCloseTo(0.5 * Math.sin(0.6), 3);
    // (∫w)²/∫w² = (L/2)²/(3L/8).
    expect(Math.abs(slice.lengthS - 4)).toBeLessThan(0.05);
    // Two bins of 1/6 s away a Hann window shows nothing.
    const beside = amplitudeAt(slice, 14.4128 + 2 / 6);
    expect(Math.hypot(beside.re[0]!, beside.im[0]!)).toBeLessThan(5e-3);
    const one = amplitudeAt(slice, 14.4128 - 1 / 6);
    expect(Math.abs(Math.hypot(one.re[0]!, one.im[0]!) - 0.25)).toBeLessThan(0.01);
  });

  it('of noise has the density it should: E|a|² = 4·σ²/fs·/T for an analytic signal', () => {
    let sum = 0;
    let count = 0;
    for (let seed = 1; seed <= 20; seed += 1) {
      // Uniform noise has σ² = 1/12.
      const zoom = makeZoom(toBlocks(preparedOf([parkMiller(seed, 6000)], RATE), 99));
      const band = zoom.band(0, 40, 4);
      for (let f = 38; f <= 42; f += 0.1) {
        sum += powerAt(band, Float64Array.of(1), f) * band.lengthS;
        count += 1;
      }
    }
    expect(Math.abs(sum / count / (4 / 12 / RATE) - 1)).toBeLessThan(0.08);
  });
});

describe('whitened power', () => {
  it('is aᴴWa', () => {
    const a = { re: [0.3, -0.8, 0.1], im: [0.5, 0.2, -0.9] };
    const w = Float64Array.of(2, 3, 4, 0.5, -0.7, 0.2, 0.3, -0.4, 0.6);
    expect(whitenedPower(a, w)).toBeCloseTo(traceOfProduct(3, w, outer(3, a)), 12);
  });

  it('over a range by one transform is within 3 % of the sum at each frequency, to both ends of the range', () => {
    const both = [tone(0.5, 14.41, 0.3), (t: number): number => tone(0.4, 14.41, 1.9)(t) + tone(0.2, 14.9)(t)];
    const band = bandOf(both, 14.6, 2);
    const w = Float64Array.of(3, 5, 0.4, -1.1);
    for (const piece of [band, sliceBand(band, START_S + 4, START_S + 19)]) {
      const scan = powerScan(piece, w, 13.3, 15.9);
      const top = powerAt(piece, w, 14.41);
      for (const f of [...Array.from({ length: 190 }, (_, k) => 13.3 + 0.0137 * k), 15.9])
        expect(Math.abs(scan(f) - powerAt(piece, w, f)) / top).toBeLessThan(0.03);
    }
  });

  it.each([190, 191, 1, 2])('at %d even steps, in pairs about the middle, is the sum at each frequency', (count) => {
    const band = bandOf([tone(0.5, 14.41, 0.6), tone(0.3, 14.41, -1), tone(0.1, 15.2)], 14.6, 2);
    const w = outer(3, { re: [0.7, -1.1, 0.4], im: [0.2, 0.8, -0.9] });
    const piece = sliceBand(band, START_S + 8, START_S + 14);
    const powers = powersAt(piece, w, 13.3, 0.0137, count);
    const top = powerAt(piece, w, 14.41);
    expect(powers).toHaveLength(count);
    powers.forEach((power, k) =>
      expect(Math.abs(power - powerAt(piece, w, 13.3 + k * 0.0137)) / top).toBeLessThan(1e-11),
    );
  });
});
