/** The figures and reasons of a demo job's report that a change of the analysis would move. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { analyse } from '../../src/core/analyse.ts';
import { compare, stagesOf } from '../../src/core/compare.ts';
import type { RecordedJob } from '../../src/core/job/recorded-job.ts';
import { readJob } from '../../src/core/job/job-file.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import type { Report } from '../../src/core/report/report.ts';
import { must } from '../support/must.ts';

/** Probabilities below this are not pinned. */
const WORTH_PINNING = 0.001;

/** Demo jobs whose speed holds, drifts, ramps by the log, leaves a standstill, folds an order, in one run and in two. */
export const PINNED = [
  'direct-gear',
  'tire-shake',
  'misfire',
  'dropped-mount',
  'coast-down',
  'phone-100hz',
  'half-shaft',
  'fixed-hum',
  'launch',
];

const read = async (name: string): Promise<RecordedJob> => {
  const job = must(readJob(readFileSync(`recordings/${name}.job.json`, 'utf8'), name));
  const recordings: Recording[] = [];
  for (const { file } of job.runs) {
    const result = must(await readRecording({ name: file, bytes: readFileSync(join('recordings', file)) }, {}));
    recordings.push(result);
  }
  return { job, recordings };
};

const reportOf = async (name: string): Promise<Report> => {
  const { job, recordings } = await read(name);
  return must(analyse(job, recordings)).report;
};

/** Before and after, from the demo job that holds both. */
export const comparisonFigures = async (): Promise<unknown> => {
  const { before, after } = stagesOf(await read('comeback'));
  return must(compare(before, after));
};

export const reportFigures = async (name: string): Promise<unknown> => figuresOf(await reportOf(name));

export const figuresOf = ({ verdict, sentence, why, runs, orders, peaks, findings, checks }: Report): unknown => {
  return {
    verdict,
    sentence,
    why,
    runs: runs.map(({ speed, speedVaried, durationS, notes }) => ({
      notes: notes.map(({ text }) => text),
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
    findings: findings.map(({ causes, ...finding }) => ({
      ...finding,
      causes: causes.map((cause) => [cause.id, cause.probability, ...cause.for, ...cause.against]),
    })),
    checks: checks.map(({ id, expectedBits }) => [id, expectedBits]),
  };
};
