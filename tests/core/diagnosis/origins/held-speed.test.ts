import { describe, expect, it } from 'vitest';
import {
  heldCases,
  orderWidthWeight,
  stayedWithin,
  type SpeedHeld,
} from '../../../../src/core/diagnosis/origins/held-speed.ts';
import type { Tone } from '../../../../src/core/diagnosis/origins/tone.ts';
import { wanderBesideWeight } from '../../../../src/core/diagnosis/origins/wander.ts';
import type { Peak } from '../../../../src/core/signal/peaks/peak.ts';
import { madePeak } from '../../../support/made-peak.ts';

const peakOf = (changes: Partial<Peak>): Peak => madePeak({ wanderHz: 0.03, ...changes });
const toneOf = (peak: Peak): Tone => ({ peak, feltLevel: 5, motion: null, imageMotion: null, folds: [] });

/** How often a speed that is meant to be held wanders less: the table of wander.ts, by hand. */
const below = (wander: number): number => {
  // Φ by Abramowitz & Stegun, Handbook of Mathematical Functions (NBS, 1964), 26.2.17: within 7.5e-8.
  const phi = (x: number): number => {
    const t = 1 / (1 + 0.2316419 * Math.abs(x));
    const tail =
      (Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI)) *
      t *
      (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    return x > 0 ? 1 - tail : tail;
  };
  return 0.01 * phi(Math.log(wander / 1e-3) / 0.8) + 0.99 * phi(Math.log(wander / 0.004) / 0.8);
};

describe('how far the speed wandered where no history of it was found', () => {
  it('is asked in four steps from what would just begin to spread the sharpest tone, all together certain', () => {
    // Sharp: its least width, 0.03 Hz, hides 0.03/2.355 = 0.0127 Hz; of 30 Hz 4.246e-4.
    const cases = heldCases([toneOf(peakOf({})), toneOf(peakOf({ frequencyHz: 10 }))]);
    const within = 0.03 / 2.355 / 30;
    expect(cases.map(({ held }) => held.from / within)).toEqual([0, 1, 3, 10]);
    expect(cases.map(({ held }) => held.to / within)).toEqual([1, 3, 10, Infinity]);
    expect(cases.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 9);
    expect(cases[0]!.prior).toBeCloseTo(below(within), 6);
    expect(cases[1]!.prior).toBeCloseTo(below(3 * within) - below(within), 6);
  });

  it('is not asked where no tone is sharp, or only what noise may have made', () => {
    expect(heldCases([toneOf(peakOf({ widthHz: 0.06 }))])).toEqual([]);
    expect(heldCases([toneOf(peakOf({ falseAlarmProbability: 1e-3 }))])).toEqual([]);
  });

  it('leaves a sharp order as likely as wanders in that range are that would not spread it', () => {
    const range: SpeedHeld = { from: 3e-4, to: 9e-4 };
    // 0.0127 Hz of 30 Hz as above, of 20 Hz 6.369e-4.
    const share = (below(6.369e-4) - below(3e-4)) / (below(9e-4) - below(3e-4));
    expect(orderWidthWeight(peakOf({ frequencyHz: 20 }), 20, range)).toBeCloseTo(share, 3);
    // Sharper than the least wander of the range would leave it: all but ruled out, unless it is hardly there.
    const still = { frequencyHz: 50, wanderHz: 0.001 };
    expect(orderWidthWeight(peakOf(still), 50, range)).toBe(3e-5);
    expect(orderWidthWeight(peakOf({ ...still, smoothAlarmProbability: 1e-3 }), 50, range)).toBe(0.3);
    // That a resonance may be what stands there does not make it weak.
    expect(orderWidthWeight(peakOf({ ...still, falseAlarmProbability: 1e-2 }), 50, range)).toBe(3e-5);
  });
});

describe('a tone that stayed while others moved', () => {
  it('stayed as closely as its phases tell, or as its width where they tell less', () => {
    expect(stayedWithin(peakOf({ wanderHz: 0.0015 }))).toBeCloseTo(5e-5, 12);
    expect(stayedWithin(peakOf({}))).toBeCloseTo(0.03 / 2.355 / 30, 6);
    expect(stayedWithin(peakOf({ widthHz: 0.06 }))).toBeCloseTo(0.03 / 2 / 30, 12);
  });
});

describe('an engine behind a slipping converter', () => {
  it('wanders by half as much again as the road, and seldom by a fifth of it', () => {
    expect(wanderBesideWeight(0.002, 0.003)).toBeCloseTo(1, 12);
    // ln((1/5)/1.5)/0.6 = −3.358: exp(−5.639) = 0.00355; and one rough track in a hundred.
    expect(wanderBesideWeight(0.0075, 0.0015)).toBeCloseTo(0.01 + 0.99 * 0.00355, 4);
  });

  it('may go its own way where the speed was changed on purpose', () => {
    expect(wanderBesideWeight(0.2, 0.04)).toBe(1);
  });
});
