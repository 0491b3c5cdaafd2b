import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { compare } from '../../../../src/core/compare.ts';
import type { Recording } from '../../../../src/core/reading/recording.ts';
import { launch } from '../../../support/launch.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

/** 265/75R16: 3.05 times the outer diameter of 803.9 mm rolls 2.452 m a turn. */
const AXLE = 4.1;
const JOB = madeJob(
  { tire: { kind: 'size', size: '265/75R16' }, layout: 'rear-drive', axleRatio: AXLE },
  { file: 'launch.csv', load: 'pull' },
);
const AMPLITUDE = 0.5;
const shudders = (share: number, seed = 3): Recording =>
  launch({ turnsPerM: (2 * AXLE) / 2.452, amplitude: share * AMPLITUDE, fromMps: 2.2, toMps: 7.6 }, 0.5, 1 / 3.6, seed);

const compared = (before: Recording, after: Recording) => {
  const result = must(compare({ job: JOB, recordings: [before] }, { job: JOB, recordings: [after] }));
  const change = result.pairs[0]?.orders.find(({ label }) => label === 'driveshaft 2×');
  return { ...result, change };
};

/** A launch shows its shudder in the part in which it shook only: what is compared must be that part of both. */
describe('a launch before and after the repair', () => {
  it('is proved cured of the very order that the diagnosis names', () => {
    const analysis = analyse(JOB, [shudders(1)]);
    expect(analysis.ok && analysis.value.report.findings[0]).toMatchObject({ part: 'driveshaft', order: 2 });
    const { verdict, sentence } = compared(shudders(1), launch(null, 0.5, 1 / 3.6, 9));
    expect(verdict).toBe('gone');
    expect(sentence).toContain('Driveshaft 2× is gone');
  });

  it.each([0.5, 0.2, 0.1])('of which a share of %d is left is better by so much', (share) => {
    const { verdict, change } = compared(shudders(1), shudders(share, 9));
    expect(verdict).toBe('better');
    // By definition of the decibel.
    expect(change!.lowDb!).toBeLessThan(20 * Math.log10(share));
    expect(change!.highDb!).toBeGreaterThan(20 * Math.log10(share));
  });

  it('is unchanged where it shudders as before, and worse where only the second one does', () => {
    expect(compared(shudders(1), shudders(1, 9)).verdict).toBe('unchanged');
    expect(compared(launch(null, 0.5, 1 / 3.6, 9), shudders(1)).verdict).toBe('worse');
  });
});
