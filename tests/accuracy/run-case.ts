/** A case through the real path: samples → the bytes of a logger's file → reading → analysis → score. */
import { analyse } from '../../src/core/analyse.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import type { Report } from '../../src/core/report/report.ts';
import { csvLayout } from '../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../src/core/simulate/csv-write.ts';
import { simulate } from '../../src/core/simulate/simulate.ts';
import type { AccuracyCase } from './case.ts';
import type { Score } from './score.ts';
import { scoreCase } from './score.ts';

export interface Outcome {
  readonly family: AccuracyCase['family'];
  readonly index: number;
  readonly score: Score;
  readonly seconds: { readonly simulate: number; readonly read: number; readonly analyse: number };
  /** Rate, length, layout, road and speeds, for the list of misses. */
  readonly about: string;
}

/** What a user must add where the file itself cannot tell: nothing but the rate of a file without stamps. */
const readAll = async (one: AccuracyCase, files: readonly Uint8Array[]): Promise<readonly Recording[] | string> => {
  const out: Recording[] = [];
  for (const [i, bytes] of files.entries()) {
    const read = await readRecording({ name: one.runs[i]!.file, bytes }, {});
    if (!read.ok) return `not read: ${read.problem.message}`;
    out.push(read.value);
  }
  return out;
};

const failed = (why: string, one: AccuracyCase): Score => ({
  right: false,
  answered: why,
  truth: one.faults.map((f) => f.kind).join(' & ') || 'sound',
  stated: [],
  frequency: null,
  falseFindings: 0,
  seen: true,
});

const aboutOf = (one: AccuracyCase): string =>
  one.runs
    .map(({ scenario: s, layout }, i) => {
      const said = one.job.runs[i]!;
      const speed =
        said.speedMps === undefined ? 'log' : `${said.speedMps.toFixed(2)} ${said.speedSource ?? 'unknown'}`;
      const tire = s.rollingCircumferenceM.toFixed(4);
      return `${s.sensor.rateHz} Hz${s.sensor.antiAliasHz === undefined ? ' unfiltered' : ''} ${s.drive.durationS} s ${layout} road ${(s.roadM3 * 1e6).toFixed(1)}e-6 said ${speed} drift ${s.drive.speed.driftSd.toFixed(4)} C ${tire} slip ${(s.drive.converterSlip ?? 0).toFixed(3)} seed ${s.seed}`;
    })
    .join(' | ');

export const runCase = async (
  one: AccuracyCase,
  index: number,
): Promise<{ outcome: Outcome; report: Report | null }> => {
  const start = performance.now();
  const simulations = one.runs.map((run) => simulate(run.scenario));
  const files = simulations.map((run, i) =>
    new TextEncoder().encode(csvText(run, csvLayout(one.runs[i]!.layout), one.seed)),
  );
  const made = performance.now();
  const recordings = await readAll(one, files);
  const read = performance.now();
  const analysis = typeof recordings === 'string' ? null : analyse(one.job, recordings);
  const done = performance.now();
  const report = analysis?.ok ? analysis.value.report : null;
  const why =
    typeof recordings === 'string'
      ? recordings
      : analysis && !analysis.ok
        ? `not analysed: ${analysis.problem.message}`
        : '';
  const outcome: Outcome = {
    family: one.family,
    index,
    score: report ? scoreCase(one, report, simulations[0]!.truth.orders) : failed(why, one),
    seconds: { simulate: (made - start) / 1000, read: (read - made) / 1000, analyse: (done - read) / 1000 },
    about: aboutOf(one),
  };
  return { outcome, report };
};
