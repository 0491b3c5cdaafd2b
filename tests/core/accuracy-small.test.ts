/** A small fixed part of the accuracy suite: one case of every family through the real path. */
import { beforeAll, describe, expect, it } from 'vitest';
import { NO_LEAN } from '../accuracy/case.ts';
import { makeCase } from '../accuracy/families.ts';
import type { Outcome } from '../accuracy/run-case.ts';
import { runCase } from '../accuracy/run-case.ts';
import { smallCases } from '../accuracy/small-cases.ts';
import { missList } from '../accuracy/table.ts';
import { differences, golden } from '../golden/differences.ts';
import { leaves } from '../golden/leaves.ts';
import { figuresOf } from '../golden/report-figures.ts';

describe('accuracy, a small part', () => {
  const outcomes: Outcome[] = [];
  const reports: unknown[] = [];
  beforeAll(async () => {
    for (const { outcome, report } of await smallCases()) {
      outcomes.push(outcome);
      reports.push(leaves(report && figuresOf(report)));
    }
  }, 900_000);

  // What has been reached so far, as a floor that only ever rises; the aim is 97 in 100 (`npm run accuracy`).
  it('is right in at least fifteen of sixteen cases, one of each family', () => {
    expect(outcomes.filter((o) => o.score.right).length, missList(outcomes)).toBeGreaterThanOrEqual(15);
  });

  it('is never sure of what is wrong', () => {
    const wrong = outcomes.flatMap((o) =>
      o.score.stated.filter((s) => s.p > 0.95 && !s.hit).map((s) => `${o.family} ${s.p}`),
    );
    expect(wrong).toEqual([]);
  });

  // They show that something has changed, not that it is right: see tests/golden.
  it('gives the figures it gave when they were last looked at', () => {
    const got: unknown = JSON.parse(JSON.stringify(reports));
    expect(differences(got, (golden('small-cases') as { reports: unknown }).reports, 1e-4)).toEqual([]);
  });

  // A weak line beside the wheel hop, and an image: each fails where only the loudest spots of the spectrum are followed,
  // or only as far as the speed may ever move.
  it.each([
    ['rough-weak', 27],
    ['alias', 4],
  ] as const)(
    'is right in %s %i of the suite, where one quiet line gives the history of the speed',
    async (family, index) => {
      const { outcome } = await runCase(makeCase(family, index, 4711, NO_LEAN), 0);
      expect(outcome.score.right, missList([outcome])).toBe(true);
    },
  );

  // A strong line that sweeps on for a minute: followed for a stretch only, it looks like a weak one that hardly drifts.
  it('is right in blind-ramp 42 of the suite, where a stretch of the sweep is a track of its own', async () => {
    const { outcome } = await runCase(makeCase('blind-ramp', 42, 4711, NO_LEAN), 0);
    expect(outcome.score.right, missList([outcome])).toBe(true);
  });

  // On a launch of ten seconds an order fades in and out: it splits in two that are nearly alike, or is as broad as a
  // resonance.
  it.each([
    [5, 50505],
    [10, 28112],
  ])('names one order in launch %i of suite %i, and no unknown tone beside it', async (index, seed) => {
    const { outcome } = await runCase(makeCase('launch', index, seed, NO_LEAN), 0);
    expect(outcome.score.right, missList([outcome])).toBe(true);
  });

  // Each failed while motion was weighed tone by tone, wheels were followed only together with an engine of a speed read by
  // hand, and a smear ended where its tone turned back.
  it.each([
    ['hum', 1, 27112],
    ['hum', 30, 28112],
    ['two-runs', 21, 27112],
    ['engine-given', 19, 27112],
    ['two-faults', 29, 29113],
  ] as const)('is right in %s %i of suite %i', async (family, index, seed) => {
    const { outcome } = await runCase(makeCase(family, index, seed, NO_LEAN), 0);
    expect(outcome.score.right, missList([outcome])).toBe(true);
  });

  // A weak side tone of a pulsing wheel stood where the wheel was expected, and the wheel itself was called fixed; a path that
  // went astray along an image made another history of it; an image just below half the rate was not followed.
  it.each([
    ['speed-wrong', 134],
    ['alias', 83],
    ['alias', 82],
  ] as const)('is right in %s %i of suite 31415', async (family, index) => {
    const { outcome } = await runCase(makeCase(family, index, 31415, NO_LEAN), 0);
    expect(outcome.score.right, missList([outcome])).toBe(true);
  });
});
