import { describe, expect, it } from 'vitest';
import { backgroundAt, type Background } from '../../../../src/core/diagnosis/matching/intensity.ts';
import type { Histories } from '../../../../src/core/diagnosis/origins/motion-model.ts';
import type { Tone } from '../../../../src/core/diagnosis/origins/tone.ts';
import { madePeak } from '../../../support/made-peak.ts';

const HISTORY: Histories = { count: 1, wander: [0.004], logged: false, sweepPrior: 0.05, durationS: 60, gain: 20 };

/** A tone that is a line at four to one, of given evidence if it stays, and if it moves with the one track. */
const toneOf = (still: number, along: number): Tone => ({
  peak: madePeak({ frequencyHz: 30, lineProbability: 0.8 }),
  feltLevel: 2,
  motion: { still, along: () => along },
  imageMotion: null,
  folds: [],
});

const at = (tone: Tone, ofNothing: boolean): Background =>
  backgroundAt(tone, [tone], 200, HISTORY, [], { factor: 1, held: null, ofNothing });

// Hand case: odds of 4 to 1 for a line become 4 to 10: 2/7 in place of 4/5, and 5/7 in place of 1/5.
describe('a track that is held to be no part’s', () => {
  it('makes what it gathers less of a line, and more of a resonance', () => {
    const gathered = toneOf(20, 60);
    const [of, by] = [at(gathered, false), at(gathered, true)];
    expect(by.unlisted / of.unlisted).toBeCloseTo(2 / 7 / 0.8, 9);
    expect(by.resonance / of.resonance).toBeCloseTo(5 / 7 / 0.2, 9);
    expect(by.noise).toBe(of.noise);
  });

  it('says nothing of a tone that stays', () => {
    expect(at(toneOf(60, 20), true)).toEqual(at(toneOf(60, 20), false));
  });
});
