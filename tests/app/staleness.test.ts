import { describe, expect, it } from 'vitest';
import type { StoredJob } from '../../src/app/book/stored-job.ts';
import { storedOf } from '../../src/app/book/stored-job.ts';
import { emptyJob } from '../../src/app/form/document.ts';
import { keptJob } from '../../src/app/state/kept-job.ts';
import { isSameDrive } from '../../src/app/state/staleness.ts';
import type { Job } from '../../src/core/job/job.ts';
import { writeJob } from '../../src/core/job/job-file.ts';

const job = { ...emptyJob(), runs: [{ file: 'a.csv' }] };
const withRuns = (...runs: { file: string; stage?: 'complaint' | 'proof' }[]) => ({ ...job, runs });

describe('an answer is left behind', () => {
  it('by another vehicle and by other runs of the complaint', () => {
    expect(isSameDrive(job, { ...job, vehicle: { ...job.vehicle, axleRatio: 3.73 } })).toBe(false);
    expect(isSameDrive(job, withRuns({ file: 'a.csv' }, { file: 'b.csv' }))).toBe(false);
  });

  it('not by an entry that was taken out and written again', () => {
    const one = { ...job, vehicle: { ...job.vehicle, axleRatio: 3.73, cylinders: 8 } };
    const other = { ...job, vehicle: { cylinders: 8, ...job.vehicle, axleRatio: 3.73 } };
    expect(isSameDrive(one, other)).toBe(true);
  });

  it('by a run made after the repair, for what to do next follows from it', () => {
    expect(isSameDrive(job, withRuns({ file: 'a.csv' }, { file: 'p.csv', stage: 'proof' }))).toBe(false);
  });
});

describe('a kept job is opened', () => {
  const figures = (axleRatio: number) => ({ ...job, vehicle: { ...job.vehicle, axleRatio } });
  const stored = (present: Job, answered: Job): StoredJob => {
    const answer = { verdict: 'found' as const, sentence: 'Driveshaft 1×.', atMs: 0, of: writeJob(answered) };
    const base = { id: 'a', revision: 1, createdMs: 0, updatedMs: 0, events: [], answer };
    return storedOf(base, {
      job: present,
      typed: { 'vehicle.axleRatio': '3.08 ', 'measure.x.y': '1' },
      recordings: {},
    });
  };

  it('with a step back to the figures of its answer where it was left in the middle of an edit', () => {
    const opened = keptJob(stored(figures(3.08), figures(3.73)));
    expect(opened).toMatchObject({
      ok: true,
      value: {
        document: { job: { vehicle: { axleRatio: 3.08 } } },
        before: { job: { vehicle: { axleRatio: 3.73 } }, typed: { 'measure.x.y': '1' } },
      },
    });
  });

  it('as it is where its answer still holds', () => {
    const opened = keptJob(stored(figures(3.73), figures(3.73)));
    expect(opened.ok && opened.value.before).toBeUndefined();
  });
});
