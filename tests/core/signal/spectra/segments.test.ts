import { describe, expect, it } from 'vitest';
import { toBlocks } from '../../../../src/core/signal/prepare/blocks.ts';
import { realSpectrum } from '../../../../src/core/signal/spectra/fft.ts';
import { cutSegments, forEachSpectrum, type Cut } from '../../../../src/core/signal/spectra/segments.ts';
import { loudnessOf, segmentWorth, type Loudness } from '../../../../src/core/signal/noise/segment-weights.ts';
import { windowSamples } from '../../../../src/core/signal/spectra/windows.ts';
import { normals, parkMiller, preparedOf, samples } from '../made.ts';

describe('cutting and transforming segments', () => {
  const pieces = [
    { startS: 0, axes: [parkMiller(1, 100), parkMiller(2, 100), parkMiller(3, 100)] },
    { startS: 9, axes: [parkMiller(4, 70), parkMiller(5, 70), parkMiller(6, 70)] },
  ];
  const prepared = { samplingRateHz: 10, durationS: 17, pieces, up: null };

  it('whole segments only, a hop apart, in each piece', () => {
    expect(cutSegments(prepared, 40, 20)).toEqual([
      ...[0, 20, 40, 60].map((offset) => ({ piece: 0, offset })),
      ...[0, 20].map((offset) => ({ piece: 1, offset })),
    ]);
    expect(cutSegments(prepared, 70, 35).map((c) => c.offset)).toEqual([0, 0]);
    expect(cutSegments(prepared, 101, 10)).toEqual([]);
  });

  // 3 cuts of 1 or 3 axes are odd counts: the last has no partner in a pair.
  it.each([
    [32, 32, [0, 1, 2]],
    [32, 64, [1]],
    [30, 30, [0, 2]],
    [33, 33, [2]],
    [20, 32, [0, 1, 2]],
  ])('windows of %i in transforms of %i give each segment’s own spectrum', (length, size, axes) => {
    const cuts: Cut[] = [
      { piece: 0, offset: 7 },
      { piece: 1, offset: 0 },
      { piece: 0, offset: 41 },
    ];
    const w = windowSamples('hann', length);
    const seen: string[] = [];
    forEachSpectrum(
      prepared,
      cuts,
      w,
      axes,
      ({ re, im }, cut, axis) => {
        seen.push(`${cut} ${axis}`);
        const { piece, offset } = cuts[cut]!;
        const plain = realSpectrum(
          pieces[piece]!.axes[axis]!.slice(offset, offset + length).map((v, i) => v * w[i]!),
          size,
        );
        plain.re.forEach((v, k) => expect(re[k]).toBeCloseTo(v, 11));
        plain.im.forEach((v, k) => expect(im[k]).toBeCloseTo(v, 11));
      },
      size,
    );
    expect(seen).toEqual([0, 1, 2].flatMap((cut) => axes.map((axis) => `${cut} ${axis}`)));
  });
});

describe('what an average over segments is worth', () => {
  const halfOverlapped = (count: number, length: number): Cut[] =>
    Array.from({ length: count }, (_, k) => ({ piece: 0, offset: (k * length) / 2 }));
  const loudness = (cells: number, f: (cell: number) => number): Loudness => ({
    cell: 8,
    blocks: [Float64Array.from({ length: cells }, (_, c) => f(c))],
  });

  it.each([
    [1, 1],
    [7, 6.681818],
    [15, 14.260563],
    [31, 29.418367],
  ])('on an even road %i half-overlapped Hann segments are worth %f (Welch 1967, ρ = 1/6)', (count, averages) => {
    const worth = segmentWorth(
      loudness(2100, () => 1),
      halfOverlapped(count, 1024),
      1024,
    );
    expect(worth.averages).toBeCloseTo(averages, 5);
    for (const w of worth.weights) expect(w).toBeCloseTo(1, 9);
    // L·Σw⁴/(Σw²)² of Hann: (35/128)/(3/8)² = 35/18.
    expect(worth.binCorrelation).toBeCloseTo(35 / 18, 6);
  });

  it('on an uneven road it follows from the loudness as the plain sums over samples say', () => {
    const length = 512;
    const v = (cell: number): number => 0.2 + (cell % 50 < 10 ? 5 : 0) + cell / 100;
    const cuts = halfOverlapped(9, length);
    const worth = segmentWorth(loudness(400, v), cuts, length);
    const w = (i: number): number => (i < 0 || i >= length ? 0 : Math.sin((Math.PI * (i + 0.5)) / length) ** 2);
    const product = (a: number, b: number, power: number): number => {
      let sum = 0;
      for (let t = 0; t < 9 * length; t += 1) sum += (w(t - a) * w(t - b) * v(Math.floor(t / 8))) ** power;
      return sum;
    };
    const own = cuts.map(({ offset }) => product(offset, offset, 1));
    let pairs = 0;
    cuts.forEach((a, k) =>
      cuts.forEach((b, l) => {
        if (l > k) pairs += product(a.offset, b.offset, 1) ** 2 / (own[k]! * own[l]!);
      }),
    );
    expect(worth.averages).toBeCloseTo(81 / (9 + 2 * pairs), 2);
    const mean = own.reduce((sum, s) => sum + 1 / s, 0) / 9;
    own.forEach((s, k) => expect(Math.abs(worth.weights[k]! * s * mean - 1)).toBeLessThan(1e-3));
    const correlation =
      cuts.reduce((sum, { offset }, k) => sum + (length * product(offset, offset, 2)) / own[k]! ** 2, 0) / 9;
    expect(worth.binCorrelation).toBeCloseTo(correlation, 2);
    expect(worth.binCorrelation).toBeGreaterThan(2);
  });

  it('segments of different pieces share nothing', () => {
    const flat = { cell: 8, blocks: [new Float64Array(200).fill(1), new Float64Array(200).fill(1)] };
    const cuts = [
      { piece: 0, offset: 0 },
      { piece: 1, offset: 0 },
    ];
    expect(segmentWorth(flat, cuts, 1024).averages).toBeCloseTo(2, 12);
  });

  it('loudness is each cell’s share of the mean square of differences, all axes alike, whatever their scale', () => {
    const normal = normals(4);
    const rate = 100;
    const made = (gain: number): Float64Array =>
      samples(6000, rate, (t) => gain * (t < 30 ? 1 : 3) * normal() + 50 * gain);
    const { cell, blocks } = loudnessOf(toBlocks(preparedOf([made(1), made(1000)], rate), 40));
    expect(cell).toBe(25);
    const mean = (from: number, to: number): number =>
      blocks[0]!.slice(from, to).reduce((s, v) => s + v, 0) / (to - from);
    // Powers 1 and 9 with mean 5, two axes added.
    expect(Math.abs(mean(0, 120) / 0.4 - 1)).toBeLessThan(0.06);
    expect(Math.abs(mean(121, 240) / 3.6 - 1)).toBeLessThan(0.06);
  });
});
