/** `perrev compare`: before and after a repair, order by order. */
import { compare, stagesOf } from '../../core/compare.ts';
import type { RecordedJob } from '../../core/job/recorded-job.ts';
import { comparisonText } from '../../core/report/compare-text.ts';
import type { Arguments } from '../arguments.ts';
import { readArguments } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { isJobFile, loadJob, loadRecordings, problemText } from '../load.ts';
import { OUTPUT_OPTIONS, RUN_OPTIONS, VEHICLE_OPTIONS, optionHelp } from '../option-table.ts';
import { jobOfFiles, jobWithOptions, unitsOf } from '../options.ts';

const ROWS = [...VEHICLE_OPTIONS, ...RUN_OPTIONS, ...OUTPUT_OPTIONS];

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readArguments(args, ROWS);
  const units = unitsOf(given);
  const sides = await sidesOf(given, io);
  if (sides === null) return 1;
  const comparison = compare(sides.before, sides.after);
  if (!comparison.ok) {
    io.stderr(problemText(comparison.problem));
    return 1;
  }
  io.stdout(
    given.flag('json')
      ? `${JSON.stringify(comparison.value)}\n`
      : comparisonText(comparison.value, {
          units,
          width: Math.min(io.terminalColumns ?? 96, 110),
          emphasis: io.emphasis,
        }),
  );
  return 0;
}

/** Two jobs, two recordings, or one job that holds both stages; null after a problem has been told. */
async function sidesOf(given: Arguments, io: Io): Promise<{ before: RecordedJob; after: RecordedJob } | null> {
  const [first, second, more] = given.files;
  if (first === undefined || more !== undefined || (second === undefined && !isJobFile(first))) {
    throw new UsageError(
      'name what was before and what is after: two jobs, two recordings, or one job with a run of the proof stage.',
    );
  }
  const before = await recordedJob(given, io, first, 0);
  if (before === null) return null;
  if (second === undefined) return stagesOf(before);
  const after = await recordedJob(given, io, second, 1);
  return after === null ? null : { before, after };
}

async function recordedJob(given: Arguments, io: Io, path: string, side: number): Promise<RecordedJob | null> {
  const job = isJobFile(path) ? await loadJob(io, path) : { ok: true as const, value: jobOfSide(given, side) };
  if (!job.ok) {
    io.stderr(problemText(job.problem));
    return null;
  }
  const whole = isJobFile(path) ? jobWithOptions(given, job.value) : job.value;
  const recordings = await loadRecordings(io, whole);
  if (recordings.ok) return { job: whole, recordings: recordings.value };
  io.stderr(problemText(recordings.problem));
  return null;
}

/** Of two recordings with shared options, the job of one. */
function jobOfSide(given: Arguments, side: number): ReturnType<typeof jobOfFiles> {
  const job = jobOfFiles(given);
  return { ...job, runs: job.runs.slice(side, side + 1) };
}

export const compareCommand: Command = {
  name: 'compare',
  summary: 'tell what changed between two recordings or jobs, order by order',
  usage: `Compares before and after a repair by order, with the difference of speed taken out, and says whether the change is real.

  perrev compare before.csv after.csv --tire 265/70R17 --axle 3.73 --speed 62mph
  perrev compare recordings/comeback.job.json

Two jobs, two recordings of one vehicle, or one job in which the runs after the repair have the stage "proof".
Drive both runs alike: same road, speed and gear, sensor in the same place. Run options are given once for both
recordings, or once for each.

${optionHelp('Vehicle', VEHICLE_OPTIONS)}

${optionHelp('Run', RUN_OPTIONS)}

${optionHelp('Output', OUTPUT_OPTIONS)}`,
  run,
};
