import { describe, expect, it } from 'vitest';
import { isOfNothing, motionModels, type Histories } from '../../../../src/core/diagnosis/origins/motion-model.ts';
import type { Tone } from '../../../../src/core/diagnosis/origins/tone.ts';

const FOUND: Histories = { count: 1, wander: [0.004], logged: false, sweepPrior: 0.05, durationS: 60, gain: 100 };

/** Only what the models ask of a tone: its evidence if it stays, and if it moves with the one track. */
const toneOf = (still: number, along: number): Tone =>
  ({ peak: { frequencyHz: 30 }, motion: { still, along: () => along } }) as unknown as Tone;

const still = [toneOf(100, 20)];
const moving = [toneOf(20, 100)];

describe('the ways in which groups may follow a history', () => {
  /** Probability, over all models, that the history is no part's, the likelihood of its wander left out. */
  const priorOfNothing = (histories: Histories, tones: readonly Tone[]): number =>
    motionModels(histories, false, [], tones)
      .filter((model) => isOfNothing(model, histories))
      .reduce((sum, { logPrior }) => sum + Math.exp(logPrior) / 0.2, 0);

  it('count the history as no part’s the more, the less lines gained by it, and never where it was logged', () => {
    const priors = [18, 22, 25, 30, 100].map((gain) => priorOfNothing({ ...FOUND, gain }, moving));
    // By the counts of the simulated histories (see the table's comment): 4 of 4, 5 of 10 about 25, 3 of 51.
    expect(priors[0]).toBeGreaterThan(0.85);
    expect(priors[2]).toBeCloseTo(0.5, 6);
    expect(priors[4]).toBeCloseTo(0.05, 6);
    priors.slice(1).forEach((prior, k) => expect(prior).toBeLessThan(priors[k]!));
    expect(priorOfNothing(FOUND, still)).toBeCloseTo(0.05, 6);
    expect(priorOfNothing({ ...FOUND, logged: true }, still)).toBe(0);
    expect(priorOfNothing({ ...FOUND, count: 0, wander: [] }, moving)).toBe(0);
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
