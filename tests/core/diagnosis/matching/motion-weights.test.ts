import { describe, expect, it } from 'vitest';
import {
  anyWeight,
  backgroundWeight,
  movingWeight,
  ownWeight,
  resonanceWeight,
} from '../../../../src/core/diagnosis/matching/motion-weights.ts';
import type { Histories } from '../../../../src/core/diagnosis/origins/motion-model.ts';
import type { Tone } from '../../../../src/core/diagnosis/origins/tone.ts';
import { besideCases, heldWanderCases } from '../../../../src/core/diagnosis/origins/wander.ts';
import { madePeak } from '../../../support/made-peak.ts';

/** 10 s long: curves then stray by 3.2e-4·√10 = 1.012 ms. */
const HISTORY: Histories = { count: 1, wander: [0.002], logged: false, sweepPrior: 0.05, durationS: 10, gain: 100 };

/** A tone of given evidence if it stays, and if it moves with the one track. */
const toneOf = (still: number, along: number, hz = 30): Tone => ({
  peak: madePeak({ frequencyHz: hz }),
  feltLevel: 5,
  motion: { still, along: () => along },
  imageMotion: null,
  folds: [],
});
const onTrack = { track: 0, factor: 1, held: null, beside: null, followed: false, ofNothing: false };

describe('what the motion of a tone says of an order', () => {
  it('is nothing against it where it keeps together best on the track', () => {
    expect(movingWeight(toneOf(100, 900), HISTORY, onTrack, 30, true)).toBeCloseTo(1, 9);
  });

  it('forgives what curves make a wheel stray from the shaft: 3 % of the power at 30 Hz is 0.93 ms', () => {
    // √(ln(1/0.97))/(2π·30) = 0.926 ms by hand, against 0.5 ms where it stayed: exp(−1.715) = 0.180 of one run in ten.
    expect(movingWeight(toneOf(1000, 970), HISTORY, onTrack, 30, true)).toBeCloseTo(0.018, 3);
    // The same loss at 5 Hz is six times that in time, which no curve makes.
    expect(movingWeight(toneOf(1000, 970, 5), HISTORY, onTrack, 5, true)).toBeLessThan(3e-4);
  });

  it('is all but ruled out where it loses a fifth of a strong tone at 25 Hz within seconds, not so in minutes', () => {
    // √(ln(1/0.8))/(2π·25) = 3.01 ms: exp(−4.42) of one run in ten.
    const other = { ...HISTORY, count: 2, wander: [0.002, 0.002] };
    const onOther = toneOf(100, 800, 25);
    const tone = { ...onOther, motion: { still: 100, along: (k: number) => (k === 0 ? 800 : 1000) } };
    expect(movingWeight(tone, other, onTrack, 25, true)).toBeCloseTo(0.0012, 4);
    // In 90 s curves stray by 3.04 ms: exp(−0.490).
    expect(movingWeight(tone, { ...other, durationS: 90 }, onTrack, 25, true)).toBeCloseTo(0.0612, 3);
  });

  it('is no longer forgiven where it stayed: curves hardly undo what the speed wandered', () => {
    // √(ln(1/0.9256))/(2π·25) = 1.770 ms against 0.5 ms: exp(−6.27) = 0.0019 of one run in ten, and what is spoilt anyhow.
    const long = { ...HISTORY, durationS: 90 };
    expect(movingWeight(toneOf(1000, 925.6, 25), long, onTrack, 25, true)).toBeCloseTo(0.0002, 4);
  });

  it('leaves a fortieth of its evidence to a level that pulses, and no more than 8 of it', () => {
    // 312·0.025 = 7.8 of the 11 that are lost: exp(−3.2).
    expect(movingWeight(toneOf(312, 301, 12), HISTORY, onTrack, 12, false)).toBeCloseTo(0.0408 + 2e-4, 4);
    // 3900·0.025 = 97.5, held to 8: exp(−12), next to what is spoilt.
    expect(movingWeight(toneOf(3900, 3880, 12), HISTORY, onTrack, 12, false)).toBeCloseTo(2e-4, 4);
  });

  it('is not forgiven a shaft, which turns with the mean of both wheels: curves do not hold it still', () => {
    expect(movingWeight(toneOf(1000, 970), HISTORY, onTrack, 30, false)).toBeCloseTo(2e-4, 6);
    // Where it moved, but as a wheel did in curves, the track is a wheel's and the shaft strayed from that.
    const other = { ...HISTORY, count: 2, wander: [0.002, 0.002] };
    const strayed = { ...toneOf(100, 970), motion: { still: 100, along: (k: number) => (k === 0 ? 970 : 1000) } };
    expect(movingWeight(strayed, other, onTrack, 30, false)).toBeCloseTo(
      movingWeight(strayed, other, onTrack, 30, true),
      12,
    );
  });

  it('that stays while others of the vehicle move is all but ruled out, and less so where nothing else moves', () => {
    const tone = toneOf(8000, 1500);
    expect(movingWeight(tone, HISTORY, onTrack, 30, true)).toBeCloseTo(2e-4, 9);
    expect(movingWeight(tone, HISTORY, { ...onTrack, followed: true }, 30, true)).toBeCloseTo(2e-6, 9);
    // One that moves with something else may have been spoilt.
    const other = { ...HISTORY, count: 2, wander: [0.002, 0.002] };
    const elsewhere = { ...tone, motion: { still: 100, along: (k: number) => (k === 0 ? 150 : 8000) } };
    expect(movingWeight(elsewhere, other, { ...onTrack, followed: true }, 30, true)).toBeCloseTo(2e-4, 9);
  });
});

describe('a group behind a slipping converter, whose history is not known', () => {
  const unknown = { ...onTrack, track: null };

  it('wanders, as the road, by half of what the engine does, in half of all runs less; the engine by more', () => {
    const road = besideCases('road', 0.002);
    expect(road.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 9);
    expect(road.map(({ wander }) => wander)).toEqual([0.002, 0.0008, 0.00032, 0.00012]);
    // Edges between them by hand: Φ(−ln(2·√0.4)/0.6) = Φ(−0.392) = 0.3476 wander more than the first, and
    // Φ(ln(2·√(0.16·0.06))/0.6) = Φ(−2.716) = 0.0033 less than the last.
    expect(road[0]!.prior).toBeCloseTo(0.3476, 3);
    expect(road[3]!.prior).toBeCloseTo(0.0033, 3);
    besideCases('engine', 0.002).forEach(({ wander, prior }, k) => {
      expect(wander / road[k]!.wander).toBeCloseTo(3, 9);
      expect(prior).toBeCloseTo(road[k]!.prior, 9);
    });
  });

  it('is held, where what was followed is no part, as speeds are: by 0.004 in the middle', () => {
    const held = heldWanderCases();
    expect(held.map(({ wander }) => wander)).toEqual([0.008, 0.0032, 0.00128, 0.00048]);
    // Φ(ln(2·√(0.16·0.06))/0.8) = Φ(−2.037) = 0.0208.
    expect(held[3]!.prior).toBeCloseTo(0.0208, 3);
    const nothing = { ...unknown, beside: 0.00048, ofNothing: true };
    expect(movingWeight(toneOf(100, 20, 7.5), HISTORY, nothing, 7.5, true)).toBe(1);
    // What keeps to it is hardly a part's: then it would be the part's history.
    expect(movingWeight(toneOf(20, 100, 7.5), HISTORY, nothing, 7.5, true)).toBe(1e-3);
    expect(movingWeight(toneOf(20, 25, 7.5), HISTORY, nothing, 7.5, true)).toBe(0.3);
  });

  it('leaves a tone that clearly stays to it where it wanders less than would be seen', () => {
    const still = toneOf(100, 20, 7.5);
    // A sharp tone has spread by its least width at most: 0.03 Hz/2.355 = 0.0127 Hz, of 7.5 Hz 0.0017.
    expect(movingWeight(still, HISTORY, { ...unknown, beside: 0.0008 }, 7.5, true)).toBe(1);
    // ln(0.004/0.0017)/0.35 = 2.45: exp(−3.0).
    expect(movingWeight(still, HISTORY, { ...unknown, beside: 0.004 }, 7.5, true)).toBeCloseTo(0.0505, 2);
    // Its phases say more: 0.0006 of its frequency; ln(0.0008/0.0006)/0.35 = 0.822: exp(−0.338).
    const steady = { ...still, peak: { ...still.peak, wanderHz: 0.0006 * 7.5 } };
    expect(movingWeight(steady, HISTORY, { ...unknown, beside: 0.0008 }, 7.5, true)).toBeCloseTo(0.713, 2);
    // One that is not sharp is as steady as its least width lets it seem: 0.03/(2·7.5) = 0.002.
    const blurred = { ...still, peak: { ...still.peak, widthHz: 0.06 } };
    expect(movingWeight(blurred, HISTORY, { ...unknown, beside: 0.002 }, 7.5, true)).toBe(1);
    // One that moves with the other group's history is hardly of this one; one that does not clearly so says nothing.
    expect(movingWeight(toneOf(20, 100, 7.5), HISTORY, { ...unknown, beside: 0.002 }, 7.5, true)).toBe(0.03);
    expect(movingWeight(toneOf(20, 30, 7.5), HISTORY, { ...unknown, beside: 0.002 }, 7.5, true)).toBe(0.3);
  });
});

describe('a tone that only the motion of an image keeps together', () => {
  // Power gathered: 900 along the image's own motion, 100 on the clock and in step.
  const image: Tone = {
    ...toneOf(100, 100),
    motion: { still: 100, along: (_, slopeHz) => (slopeHz === 70 ? 900 : 100) },
    imageMotion: { track: 0, slopeHz: 70 },
  };

  it('is that image’s, and neither fixed nor an order seen directly', () => {
    expect(movingWeight(image, HISTORY, onTrack, 70, true)).toBeCloseTo(1, 9);
    expect(movingWeight(image, HISTORY, onTrack, 30, true)).toBeLessThan(3e-4);
    expect(ownWeight(image, [image], HISTORY)).toBeLessThan(3e-4);
    expect(anyWeight(image, HISTORY, null)).toBeCloseTo(0.5, 3);
  });
});

describe('a resonance', () => {
  it('may seem to follow a speed that wanders less than it is wide, and not one that wanders ten times that', () => {
    // Φ(−ln(0.003/0.03)/0.7) of resonances are wider than 0.003, and Φ(−ln(0.3/0.03)/0.7) than 0.3: 0.99950, 0.00050.
    expect(resonanceWeight(toneOf(100, 900), { ...HISTORY, wander: [0.003] })).toBeCloseTo(0.9995, 4);
    expect(resonanceWeight(toneOf(100, 900), { ...HISTORY, wander: [0.3] })).toBeLessThan(1e-3);
    expect(resonanceWeight(toneOf(900, 100), { ...HISTORY, wander: [0.3] })).toBeCloseTo(1, 9);
    expect(resonanceWeight({ ...toneOf(100, 900), motion: null }, { ...HISTORY, wander: [0.3] })).toBe(1);
  });
});

describe('where the track is taken for that of an image', () => {
  it('the tones that gave it are images of lines in the list, and the others may be anything', () => {
    const [giver, other, still] = [toneOf(100, 900), toneOf(50, 200, 40), toneOf(100, 90, 50)];
    const tones = [giver, other, still];
    for (const tone of [giver, other]) expect(backgroundWeight(tone, tones, HISTORY, -0.7)).toBeLessThan(1e-3);
    expect(backgroundWeight(giver, tones, HISTORY, 1)).toBe(1);
    expect(backgroundWeight(still, tones, HISTORY, -0.7)).toBe(1);
  });

  it('one that fits the track by chance, and by far the least, did not give it', () => {
    // 16 of 800 gained: a fiftieth.
    const [giver, chance] = [toneOf(100, 900), toneOf(0, 16, 40)];
    expect(backgroundWeight(chance, [giver, chance], HISTORY, -0.7)).toBe(1);
  });
});

describe('a tone of its own', () => {
  // Densities per ln, by hand: of a vehicle's held speed exp(−½(ln(0.00025/0.004)/0.8)²)/(0.8·√2π) = 0.00123, times
  // 0.95; of a tone's own wander exp(−½(ln(0.00025/0.0002)/1.2)²)/(1.2·√2π) = 0.327. Ratio 279 or so, held to 100.
  const small = { ...HISTORY, wander: [0.00025] };

  it('is the likelier the less it wanders, where no other tone follows the history that it gave', () => {
    const tone = toneOf(7900, 8060);
    expect(ownWeight(tone, [tone, toneOf(50, 40)], small)).toBeCloseTo(100, 6);
    // 0.002: 0.0524/(0.95·0.343) = 0.161 of a vehicle's.
    expect(ownWeight(tone, [tone], HISTORY)).toBeCloseTo(0.161, 2);
  });

  it('is no likelier than an order where another tone clearly follows that history, too', () => {
    const tone = toneOf(7900, 8060);
    expect(ownWeight(tone, [tone, toneOf(50, 90)], small)).toBeCloseTo(1, 6);
    expect(ownWeight(tone, [tone], { ...small, logged: true })).toBeLessThan(3e-4);
  });
});
