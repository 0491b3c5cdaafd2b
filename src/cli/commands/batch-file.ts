/** One file of a batch → its JSON line. Runs in a worker thread; standard input is read in the main thread. */
import { analyse } from '../../core/analyse.ts';
import type { Job } from '../../core/job/job.ts';
import type { Problem, Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import type { Report } from '../../core/report/report.ts';
import type { Arguments } from '../arguments.ts';
import { readArguments } from '../arguments.ts';
import type { Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { isJobFile, loadJob, loadRecordings } from '../load.ts';
import { JOB_OPTIONS, RUN_OPTIONS, VEHICLE_OPTIONS } from '../option-table.ts';
import type { OptionRow } from '../option-table.ts';
import { jobOfFiles, jobWithOptions } from '../options.ts';

export const BATCH_OPTIONS: readonly OptionRow[] = [
  { name: 'parallel', value: '4', help: 'files worked on at the same time (default: as many as there are cores)' },
];

/** The words of a batch command. @throws UsageError */
export const readBatchArguments = (args: readonly string[]): Arguments =>
  readArguments(args, [...VEHICLE_OPTIONS, ...RUN_OPTIONS, ...JOB_OPTIONS, ...BATCH_OPTIONS]);

/** One line of a batch's output. */
export interface BatchLine {
  readonly ok: boolean;
  /** One JSON object without a line end. */
  readonly text: string;
}

function problemLine(file: string, problem: Problem): BatchLine {
  return { ok: false, text: JSON.stringify({ file, ok: false, problem }) };
}

/** A file that brought the program itself down; the others go on. */
export const faultLine = (file: string, fault: string): BatchLine =>
  problemLine(file, {
    code: 'own-fault',
    file,
    message: `${file} stopped the program by a fault of its own: ${fault}.`,
    remedy: 'The other files were worked on all the same. Please report it with the file that caused it.',
  });

/** The options as they stand for one of the files: a run option given once for each file is cut to its own value. */
export function argumentsOfFile(given: Arguments, index: number): Arguments {
  const texts = (name: string): readonly string[] => {
    const values = given.texts(name);
    if (values.length < 2 || !RUN_OPTIONS.some((row) => row.name === name)) return values;
    if (values.length !== given.files.length) {
      throw new UsageError(
        `--${name} was given ${values.length} times for ${given.files.length} files; give it once for all, or once for each in their order.`,
      );
    }
    return values.slice(index, index + 1);
  };
  return { ...given, files: given.files.slice(index, index + 1), texts };
}

/** Reads and analyses file `index`; what goes wrong with it is said in its line. */
export async function batchLine(given: Arguments, index: number, io: Io): Promise<BatchLine> {
  const file = given.files[index] ?? '';
  try {
    const report = await reportOf(argumentsOfFile(given, index), file, io);
    return report.ok
      ? { ok: true, text: JSON.stringify({ file, ok: true, report: report.value }) }
      : problemLine(file, report.problem);
  } catch (error) {
    return faultLine(file, error instanceof Error ? error.message : String(error));
  }
}

async function reportOf(given: Arguments, file: string, io: Io): Promise<Result<Report>> {
  const job: Result<Job> = isJobFile(file) ? await loadJob(io, file) : success(jobOfFiles(given));
  if (!job.ok) return job;
  const whole = isJobFile(file) ? jobWithOptions(given, job.value) : job.value;
  const recordings = await loadRecordings(io, whole);
  if (!recordings.ok) return recordings;
  const analysis = analyse(whole, recordings.value);
  return analysis.ok ? success(analysis.value.report) : failure(analysis.problem);
}
