/** The figures of a demo job's report that a change of the analysis would move. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { analyse } from '../../src/core/analyse.ts';
import { readJob } from '../../src/core/job/job-file.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import type { Report } from '../../src/core/report/report.ts';

/** Demo jobs whose speed holds, drifts, ramps by the log, folds an order, in one run and in two. */
export const PINNED = [
  'tire-shake',
  'misfire',
  'dropped-mount',
  'coast-down',
  'phone-100hz',
  'half-shaft',
  'fixed-hum',
];

const reportOf = async (name: string): Promise<Report> => {
  const job = readJob(readFileSync(`recordings/${name}.job.json`, 'utf8'), name);
  if (!job.ok) throw new Error(job.problem.message);
  const recordings: Recording[] = [];
  for (const { file } of job.value.runs) {
    const read = await readRecording({ name: file, bytes: readFileSync(join('recordings', file)) }, {});
    if (!read.ok) throw new Error(read.problem.message);
    recordings.push(read.value);
  }
  const analysis = analyse(job.value, recordings);
  if (!analysis.ok) throw new Error(analysis.problem.message);
  return analysis.value.report;
};

/** Probabilities below this are not pinned. */
const WORTH_PINNING = 0.001;

export const reportFigures = async (name: string): Promise<unknown> => {
  const { verdict, runs, orders, peaks, findings, checks } = await reportOf(name);
  return {
    verdict,
    runs: runs.map(({ speed, speedVaried, durationS }) => ({
      speedVaried,
      durationS,
      scale: speed.scale,
      scaleSd: speed.scaleSd,
    })),
    orders: orders.map(({ label, frequencyHz, frequencySdHz, visibility, amplitudeMps2 }) => [
      label,
      visibility,
      frequencyHz,
      frequencySdHz,
      amplitudeMps2,
    ]),
    peaks: peaks.map(({ matches, run: _run, ...figures }) => ({
      ...figures,
      matches: matches
        .filter(({ probability }) => probability > WORTH_PINNING)
        .map(({ label, probability }) => [label, probability]),
    })),
    findings: findings.map(({ label, probability, feltLevel, causes }) => ({
      label,
      probability,
      feltLevel,
      causes: causes.map(({ id, probability: share }) => [id, share]),
    })),
    checks: checks.map(({ id, expectedBits }) => [id, expectedBits]),
  };
};
