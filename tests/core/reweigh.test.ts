import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { analyse } from '../../src/core/analyse.ts';
import { reweigh } from '../../src/core/conclude.ts';
import { readJob } from '../../src/core/job/job-file.ts';
import type { Job } from '../../src/core/job/job.ts';
import type { Analysis } from '../../src/core/report/analysis.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import { must } from '../support/must.ts';

let job: Job;
let recordings: Recording[];
let analysis: Analysis;

beforeAll(async () => {
  job = must(readJob(readFileSync('recordings/joint-replaced.job.json', 'utf8'), 'joint-replaced'));
  recordings = await Promise.all(
    job.runs.map(async ({ file }) =>
      must(await readRecording({ name: file, bytes: readFileSync(`recordings/${file}`) }, {})),
    ),
  );
  analysis = must(analyse(job, recordings));
});

describe('weighing causes anew after an entry', () => {
  it('gives the same report as the whole analysis with that entry', () => {
    const measured: Job = {
      ...job,
      measurements: [{ kind: 'observation', checkId: 'ring-thickness', outcome: 'wrong' }],
    };
    const again = reweigh(analysis, measured);
    const whole = analyse(measured, recordings);
    expect(whole.ok && whole.value.report).toEqual(again.report);
    const before = analysis.report.findings[0]?.causes.find(({ id }) => id.includes('ring') || id.includes('off-cent'));
    const after = again.report.findings[0]?.causes.find(({ id }) => id === before?.id);
    expect(before).toBeDefined();
    expect(after?.probability).toBeGreaterThan(before?.probability ?? 1);
    expect(after?.probabilityBefore).toBeCloseTo(before?.probability ?? 0, 10);
    expect(again.report.checks).not.toEqual(analysis.report.checks);
  });

  it('leaves an analysis as it was where nothing was entered', () => {
    expect(reweigh(analysis, job).report).toEqual(analysis.report);
  });

  it('answers within 50 ms, so that the ranking moves at the touch', () => {
    reweigh(analysis, job);
    const times = Array.from({ length: 7 }, () => {
      const start = performance.now();
      reweigh(analysis, job);
      return performance.now() - start;
    }).sort((a, b) => a - b);
    // The quickest: what else the machine does only adds.
    expect(times[0]).toBeLessThan(50);
  });
});
