import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../src/app/form/document.ts';
import { isSameDrive } from '../../src/app/state/staleness.ts';

const job = { ...emptyJob(), runs: [{ file: 'a.csv' }] };
const withRuns = (...runs: { file: string; stage?: 'complaint' | 'proof' }[]) => ({ ...job, runs });

describe('an answer is left behind', () => {
  it('by another vehicle and by other runs of the complaint', () => {
    expect(isSameDrive(job, { ...job, vehicle: { ...job.vehicle, axleRatio: 3.73 } })).toBe(false);
    expect(isSameDrive(job, withRuns({ file: 'a.csv' }, { file: 'b.csv' }))).toBe(false);
  });

  it('not by a proving run, which is no part of it', () => {
    expect(isSameDrive(job, withRuns({ file: 'a.csv' }, { file: 'p.csv', stage: 'proof' }))).toBe(true);
  });

  it('by proving runs where there are no others, for then it is made of them', () => {
    const proved = withRuns({ file: 'a.csv', stage: 'proof' });
    expect(isSameDrive(proved, withRuns({ file: 'a.csv', stage: 'proof' }, { file: 'b.csv', stage: 'proof' }))).toBe(
      false,
    );
  });
});
