import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toBlocks, type Blocks } from '../../../../src/core/signal/prepare/blocks.ts';
import { inverse } from '../../../../src/core/signal/numeric/hermitian.ts';
import { levelLengths, makeLevel, type Level } from '../../../../src/core/signal/noise/levels.ts';
import { noiseBands } from '../../../../src/core/signal/noise/noise-bands.ts';
import { loudnessOf } from '../../../../src/core/signal/noise/segment-weights.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { whiten } from '../../../../src/core/signal/noise/whiten.ts';
import { noiseRecording, withTone } from '../../../support/noise.ts';
import { seededRandom } from '../../../support/random.ts';
import { normals, preparedOf, samples, tone } from '../made.ts';

const RATE = 100;
const blocksOf = (prepared: Prepared): Blocks => toBlocks(prepared, 49);
const levelOf = (prepared: Prepared, length: number, highestHz = 49): Level => {
  const blocks = blocksOf(prepared);
  return makeLevel(blocks, loudnessOf(blocks), length, highestHz);
};
const mean = (values: ArrayLike<number>, from: number, to: number): number => {
  let sum = 0;
  for (let k = from; k < to; k += 1) sum += values[k]!;
  return sum / (to - from);
};
/** x, and y = ½x + noise of σ 2 of its own: covariance [[1, ½], [½, 4¼]]. */
const correlated = (seconds: number, seed: number): Prepared => {
  const normal = normals(seed);
  const x = samples(seconds * RATE, RATE, () => normal());
  return preparedOf([x, x.map((v) => 0.5 * v + 2 * normal())], RATE);
};

describe('cross-spectra at several lengths', () => {
  it('lengths halve from the whole block down to 3.5 s', () => {
    const blocks = blocksOf(preparedOf([new Float64Array(6001)], RATE));
    expect(levelLengths(blocks)).toEqual([6001, 3000, 1500, 750, 375]);
    expect(levelLengths(blocksOf(preparedOf([new Float64Array(200)], RATE)))).toEqual([200]);
    expect(levelLengths(blocksOf(preparedOf([new Float64Array(10)], RATE)))).toEqual([]);
  });

  it('of white noise hold its covariance, at any length and padding', () => {
    const prepared = correlated(80, 1);
    for (const length of [8000, 2048, 500]) {
      const level = levelOf(prepared, length);
      const to = Math.floor(48 / level.stepHz);
      // Relative scatter of a mean over 80 s · 48 Hz is 2 %.
      [1, 4.25, 0.5, 0].forEach((v, q) =>
        expect(Math.abs(mean(level.matrix[q]!, 10, to) - v)).toBeLessThan(0.08 * Math.max(v, 2)),
      );
      expect(level.pad).toBeCloseTo(2 ** Math.ceil(Math.log2(length)) / length, 12);
      expect(level.stepHz * level.pad * level.lengthS).toBeCloseTo(1, 12);
      expect(level.lengthS).toBe(length / 100);
    }
  });

  it('half overlap to the very ends: 15 segments of an eighth, worth 14.26 (Welch 1967)', () => {
    const level = levelOf(correlated(80, 2), 1000);
    expect(level.segments).toBe(15);
    expect(Math.abs(level.averages / 14.26 - 1)).toBeLessThan(0.05);
    expect(levelOf(correlated(80, 2), 8000).segments).toBe(1);
    // 35/18 natural bins, times the padding.
    expect(Math.abs(level.binCorrelation / ((35 / 18) * 1.024) - 1)).toBeLessThan(0.1);
  });

  it('a tone: |X|² = A²N/4 · (Σw)²/(N Σw²) = A²N/6, and the second axis lagging by 90° gives +j', () => {
    const n = 1024;
    const both = preparedOf([samples(n, RATE, tone(3, 25)), samples(n, RATE, tone(2, 25, -Math.PI / 2))], RATE);
    const level = levelOf(both, n);
    const bin = 256;
    expect(level.matrix[0]![bin]! / ((9 * n) / 6)).toBeCloseTo(1, 3);
    expect(level.matrix[1]![bin]! / ((4 * n) / 6)).toBeCloseTo(1, 3);
    expect(level.matrix[2]![bin]! / ((6 * n) / 6)).toBeCloseTo(0, 3);
    expect(level.matrix[3]![bin]! / ((6 * n) / 6)).toBeCloseTo(1, 3);
  });
});

describe('the noise in bands', () => {
  it('of correlated white noise is the inverse of its covariance, at every length', () => {
    const known = inverse(2, Float64Array.of(1, 4.25, 0.5, 0));
    for (const length of [8000, 1000]) {
      const { bands, averages } = noiseBands(2, levelOf(correlated(80, 3), length), 40);
      known.forEach((v, q) => {
        const own = bands.reduce((sum, b) => sum + b.size * b.shape[q]!, 0) / bands.length;
        expect(Math.abs(own - v)).toBeLessThan(0.06 * known[0]!);
      });
      for (const b of bands) expect(b.shape[0]! + b.shape[1]!).toBeCloseTo(1, 12);
      expect(averages).toBeCloseTo(levelOf(correlated(80, 3), length).averages, 9);
    }
  });

  it('is not raised by lines', () => {
    const quiet = correlated(80, 4);
    const loud = withTone(withTone(quiet, 12.3, [5, 5]), 14.9, [0, 8]);
    const [a, b] = [quiet, loud].map((p) => noiseBands(2, levelOf(p, 2000), 40).bands);
    a!.forEach((band, i) => expect(Math.abs(b![i]!.size / band.size - 1)).toBeLessThan(0.2));
  });

  it('believes the averages that theory gives in steady noise, chance scatter and all', () => {
    let believed = 0;
    for (let seed = 20; seed < 28; seed += 1) {
      for (const length of [4000, 1000]) {
        const level = levelOf(correlated(40, seed), length);
        if (Math.abs(noiseBands(2, level, 40).averages - level.averages) < 1e-9) believed += 1;
      }
    }
    expect(believed).toBeGreaterThanOrEqual(14);
  });

  it('believes fewer averages where the powers scatter more than averages can', () => {
    // Powers of one average each (exponential) in a level that claims twenty.
    const normal = normals(5);
    const bins = 2000;
    const entries = Float64Array.from({ length: bins }, () => (normal() ** 2 + normal() ** 2) / 2);
    const level: Level = {
      ...{
        samplingRateHz: 100,
        length: 4000,
        lengthS: 40,
        pad: 1,
        stepHz: 0.025,
        bins,
        segments: 20,
        averages: 20,
        binCorrelation: 1,
      },
      matrix: [entries],
    };
    const { averages } = noiseBands(1, level, 10);
    expect(averages).toBeGreaterThan(0.8);
    expect(averages).toBeLessThan(1.3);
  });
});

describe('the spectrum against its own noise', () => {
  it.each(['white', 'pink', 'red', 'violet', 'hump'] as const)(
    'T is 1 on average in %s noise, at every length',
    (colour) => {
      const sums = new Map<number, number>();
      for (let seed = 1; seed <= 4; seed += 1) {
        const blocks = blocksOf(noiseRecording(colour, 60, RATE, 3, seededRandom(seed)));
        for (const length of [6000, 750]) {
          const level = makeLevel(blocks, loudnessOf(blocks), length, 49);
          const from = Math.ceil(3 / level.stepHz);
          const { t } = whiten(3, level, Math.floor(1.4 / level.stepHz));
          sums.set(length, (sums.get(length) ?? 0) + mean(t, from, Math.floor(48 / level.stepHz)) / 4);
        }
      }
      // 4 runs of 60 s and 45 Hz on three axes: the mean scatters by 0.5 %; steep colours sag between band middles.
      for (const average of sums.values()) expect(Math.abs(average - 1)).toBeLessThan(0.06);
    },
  );

  it('takes the whitener between two bands as the same everywhere: T = tr(W(f)·S(f)) / axes', () => {
    const level = levelOf(noiseRecording('pink', 60, RATE, 3, seededRandom(9)), 1500);
    const own = whiten(3, level, 20);
    for (let k = 20; k < level.bins; k += 7) {
      const w = own.whitenerAt(k);
      let sum = 0;
      for (let q = 0; q < 9; q += 1) sum += (q < 3 ? 1 : 2) * w[q]! * level.matrix[q]![k]!;
      expect(own.t[k]! / (sum / 3)).toBeCloseTo(1, 9);
    }
    expect(own.t.slice(0, 20).every((v) => v === 0)).toBe(true);
  });

  describe('hardly changes with the mounting', () => {
    const made = withTone(noiseRecording('pink', 40, RATE, 3, seededRandom(11)), 23.4, [0.4, -0.2, 0.5]);
    const against = (m: readonly (readonly number[])[]): Float64Array => {
      const { axes } = made.pieces[0]!;
      const turned = m.map((row) => axes[0]!.map((_, i) => row.reduce((sum, r, a) => sum + r * axes[a]![i]!, 0)));
      return whiten(3, levelOf(preparedOf(turned, RATE), 2000), 40).t;
    };
    const before = against([
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ]);
    const bins = Array.from({ length: before.length - 70 }, (_, i) => i + 60);
    const line = Math.round((23.4 * 2048) / RATE);
    const rmsChange = (t: Float64Array): number =>
      Math.sqrt(bins.reduce((sum, k) => sum + (t[k]! / before[k]! - 1) ** 2, 0) / bins.length);

    it('turned any way: 4 % root mean square, the line within half a decibel (bins that shape a band come and go)', () => {
      // Whole degrees: a generator of doubles would try next to nothing but tiny angles.
      const angle = fc.integer({ min: 0, max: 359 }).map((degrees) => (degrees * Math.PI) / 180);
      fc.assert(
        fc.property(angle, angle, (a, b) => {
          const [c, s, d, e] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)];
          const t = against([
            [c, -s, 0],
            [s * d, c * d, -e],
            [s * e, c * e, d],
          ]);
          expect(rmsChange(t)).toBeLessThan(0.04);
          expect(Math.abs(10 * Math.log10(t[line]! / before[line]!))).toBeLessThan(0.5);
        }),
        { numRuns: 8, seed: 6 },
      );
    });

    it('an axis scaled by up to 100: within 5 % at every bin; all scaled alike: not at all', () => {
      const scale = fc.integer({ min: -20, max: 20 }).map((db) => 10 ** (db / 20));
      fc.assert(
        fc.property(fc.tuple(scale, scale, scale), ([x, y, z]) => {
          const t = against([
            [x, 0, 0],
            [0, y, 0],
            [0, 0, z],
          ]);
          expect(Math.max(...bins.map((k) => Math.abs(t[k]! / before[k]! - 1)))).toBeLessThan(0.05);
        }),
        { numRuns: 8, seed: 7 },
      );
      expect(
        rmsChange(
          against([
            [7, 0, 0],
            [0, 7, 0],
            [0, 0, 7],
          ]),
        ),
      ).toBeLessThan(1e-12);
    });
  });
});
