import { describe, expect, it } from 'vitest';
import { isOfNothing, motionModels, type Histories } from '../../../../src/core/diagnosis/origins/motion-model.ts';
import type { Tone } from '../../../../src/core/diagnosis/origins/tone.ts';

const FOUND: Histories = { count: 1, wander: [0.004], logged: false, sweepPrior: 0.05, durationS: 60 };

/** Only what the models ask of a tone: its evidence if it stays, and if it moves with the one track. */
const toneOf = (still: number, along: number): Tone =>
  ({ peak: { frequencyHz: 30 }, motion: { still, along: () => along } }) as unknown as Tone;

const still = [toneOf(100, 20)];
const moving = [toneOf(20, 100)];

describe('the ways in which groups may follow a history', () => {
  it('count the history as no part’s only where a tone stays, and never where it was logged', () => {
    const anyOfNothing = (histories: Histories, tones: readonly Tone[]): boolean =>
      motionModels(histories, false, [], tones).some((model) => isOfNothing(model, histories));
    expect(anyOfNothing(FOUND, still)).toBe(true);
    expect(anyOfNothing(FOUND, moving)).toBe(false);
    expect(anyOfNothing({ ...FOUND, logged: true }, still)).toBe(false);
  });

  it('share the probability of a group without a history out over its wanders, all of it', () => {
    const ofEngineAlone = (tones: readonly Tone[]) =>
      motionModels(FOUND, true, [], tones).filter(({ road, engine }) => road === null && engine === 0);
    const [whole] = ofEngineAlone(moving);
    const parts = ofEngineAlone(still);
    expect(parts.map(({ beside }) => beside! / 0.004)).toEqual(
      [1, 0.4, 0.16, 0.06].map((step) => expect.closeTo(step, 9)),
    );
    const sum = parts.reduce((all, { logPrior }) => all + Math.exp(logPrior), 0);
    expect(sum / Math.exp(whole!.logPrior)).toBeCloseTo(1, 9);
  });

  it('stretch that wander with the history where the history is an image’s', () => {
    const beside = motionModels(FOUND, true, [-0.5], still)
      .filter(({ road, factor }) => road === null && factor === -0.5)
      .flatMap((model) => model.beside ?? []);
    expect(Math.max(...beside) / 0.002).toBeCloseTo(1, 9);
  });
});
