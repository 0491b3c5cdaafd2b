/** Sums over made samples whose truth is known. */
import { describe, expect, it } from 'vitest';
import { foldsBy } from '../../../../src/core/signal/peaks/folds.ts';
import type { Instants } from '../../../../src/core/signal/peaks/instants.ts';
import { randomSource } from '../../../../src/core/simulate/random.ts';

const RATE_HZ = 100;
const FOLDS = [0, -1, 1, -2, 2, -3, 3];

interface Made {
  readonly lineHz: number;
  readonly jitterS: number;
  readonly amplitudeMps2?: number;
  readonly seed?: number;
}

/** 60 s of a line in noise on gravity, taken about every 10 ms. */
const made = ({ lineHz, jitterS, amplitudeMps2 = 1, seed = 1 }: Made): Instants => {
  const random = randomSource(seed);
  const timeS = Float64Array.from({ length: 60 * RATE_HZ }, (_, i) => 5 + i / RATE_HZ + jitterS * random.normal());
  const axis = timeS.map((t) => 9.81 + amplitudeMps2 * Math.sin(2 * Math.PI * lineHz * t) + 0.2 * random.normal());
  return { samplingRateHz: RATE_HZ, pieces: [{ timeS, axes: [axis] }] };
};

const best = (instants: Instants, shownHz: number): number =>
  foldsBy(instants)(() => shownHz, FOLDS).find(({ logLikelihood }) => logLikelihood === 0)!.fold;

describe('the fold of a tone, by uneven instants', () => {
  it.each([
    { lineHz: 13, fold: 0 },
    { lineHz: 87, fold: -1 },
    { lineHz: 113, fold: 1 },
    { lineHz: 187, fold: -2 },
  ])('$lineHz Hz, shown at 13 Hz, is of fold $fold', ({ lineHz, fold }) => {
    for (let seed = 1; seed <= 10; seed++) expect(best(made({ lineHz, jitterS: 1e-3, seed }), 13)).toBe(fold);
  });

  it('is told by a tenth of a millisecond too, where the line is strong', () => {
    expect(best(made({ lineHz: 87, jitterS: 1e-4, amplitudeMps2: 3 }), 13)).toBe(-1);
    expect(best(made({ lineHz: 13, jitterS: 1e-4, amplitudeMps2: 3 }), 13)).toBe(0);
  });

  it('is not told at even instants', () => {
    const folds = foldsBy(made({ lineHz: 87, jitterS: 0 }))(() => 13, FOLDS);
    for (const { logLikelihood } of folds) expect(Math.abs(logLikelihood)).toBeLessThan(0.01);
  });

  it('leaves what it cannot tell within a few units of ln: noise alone hardly points to an image', () => {
    let pointed = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const folds = foldsBy(made({ lineHz: 13, jitterS: 1e-3, amplitudeMps2: 0.03, seed }))(() => 13, FOLDS);
      if (folds[0]!.logLikelihood < -3) pointed++;
    }
    expect(pointed).toBeLessThanOrEqual(2);
  });

  it('takes a weak line in a quiet band for no image, however much else shakes', () => {
    // What shakes at 7 Hz is scattered by the instants, and stands a thousand times over the noise at 13 Hz.
    for (let seed = 1; seed <= 10; seed++) {
      const random = randomSource(seed);
      const timeS = Float64Array.from({ length: 60 * RATE_HZ }, (_, i) => i / RATE_HZ + 2e-3 * random.normal());
      const axis = timeS.map(
        (t) => 3 * Math.sin(2 * Math.PI * 7.1 * t) + 0.02 * Math.sin(2 * Math.PI * 13 * t) + 0.01 * random.normal(),
      );
      const folds = foldsBy({ samplingRateHz: RATE_HZ, pieces: [{ timeS, axes: [axis] }] })(() => 13, FOLDS);
      expect(folds[0]!.logLikelihood).toBeGreaterThan(-3);
    }
  });

  it('says nothing of a recording shorter than a block', () => {
    const { pieces, samplingRateHz } = made({ lineHz: 87, jitterS: 1e-3 });
    const short = { timeS: pieces[0]!.timeS.slice(0, 100), axes: [pieces[0]!.axes[0]!.slice(0, 100)] };
    expect(foldsBy({ samplingRateHz, pieces: [short] })(() => 13, FOLDS)).toEqual([]);
  });
});
