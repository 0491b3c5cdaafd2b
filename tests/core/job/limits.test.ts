import { describe, expect, it } from 'vitest';
import { readJob, writeJob } from '../../../src/core/job/job-file.ts';

const jobWith = (limits: unknown) =>
  readJob(JSON.stringify({ vehicle: { layout: 'rear-drive' }, limits }, null, 1), 'shop.job.json');

describe('limits of a job file', () => {
  it('replace defaults by figures, with where they come from, and survive saving', () => {
    const job = jobWith({
      'end-play': { value: 0.15, source: 'service data, page 12' },
      'whirl-share': { value: 0.65 },
    });
    expect(job).toMatchObject({ ok: true, value: { limits: { 'end-play': { value: 0.15 } } } });
    if (job.ok) expect(readJob(writeJob(job.value), 'again.job.json')).toEqual(job);
  });

  it('keep limits this version does not know', () => {
    expect(jobWith({ 'from-the-future': { value: 'any' } })).toMatchObject({ ok: true });
  });

  it.each([
    [{ 'end-play': { value: 'little' } }, 'limits.end-play.value'],
    [{ 'end-play': { value: 0 } }, 'limits.end-play.value'],
    [{ 'end-play': {} }, 'limits.end-play.value'],
    [{ 'end-play': 0.15 }, 'limits.end-play'],
    [[], 'limits'],
  ])('refuse %j, with the key', (limits, key) => {
    expect(jobWith(limits)).toMatchObject({ ok: false, problem: { key, line: expect.any(Number) } });
  });
});
