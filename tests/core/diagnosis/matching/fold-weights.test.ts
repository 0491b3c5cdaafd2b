import { describe, expect, it } from 'vitest';
import { foldWeight } from '../../../../src/core/diagnosis/matching/fold-weights.ts';
import type { Tone, ToneFold } from '../../../../src/core/diagnosis/origins/tone.ts';
import { madePeak } from '../../../support/made-peak.ts';

const toneOf = (folds: readonly ToneFold[]): Tone => ({
  peak: madePeak({ frequencyHz: 38.3 }),
  feltLevel: 4,
  motion: null,
  imageMotion: null,
  folds,
});
const fold = (at: number, logLikelihood: number): ToneFold => ({ fold: at, logLikelihood, kept: 1 });

describe('what uneven sampling instants say of where a tone truly stands', () => {
  it('is nothing where they are even', () => {
    expect(foldWeight(toneOf([]), 0)).toBe(1);
  });

  it('leaves a hundredth to stamps that strayed where they tell little', () => {
    // 0.01·e^(−5/50) + (1 − 0.01·e^(−5/50))·e^(−5) = 0.009048 + 0.990952·0.006738 by hand.
    expect(foldWeight(toneOf([fold(-1, 0), fold(0, -5)]), 0)).toBeCloseTo(0.015725, 5);
    expect(foldWeight(toneOf([fold(-1, 0), fold(0, -5)]), -1)).toBe(1);
  });

  it('rules out a place that is two thousand nats worse: stamps that strayed tell no place from the others so clearly', () => {
    expect(foldWeight(toneOf([fold(-1, 0), fold(0, -2167)]), 0)).toBeLessThan(1e-20);
  });
});
