/** `perrev diagnose`: a job, or recordings of one vehicle, to ranked findings. */
import { analyse } from '../../core/analyse.ts';
import type { Job } from '../../core/job/job.ts';
import { reportPage } from '../../core/report/page.ts';
import { reportText } from '../../core/report/text.ts';
import type { Arguments } from '../arguments.ts';
import { readArguments } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { isJobFile, loadJob, loadRecordings, problemText } from '../load.ts';
import { JOB_OPTIONS, OUTPUT_OPTIONS, PAGE_OPTION, RUN_OPTIONS, VEHICLE_OPTIONS, optionHelp } from '../option-table.ts';
import { jobOfFiles, jobWithOptions, unitsOf } from '../options.ts';

const OUTPUT = [...OUTPUT_OPTIONS, PAGE_OPTION];
const ROWS = [...VEHICLE_OPTIONS, ...RUN_OPTIONS, ...JOB_OPTIONS, ...OUTPUT];

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readArguments(args, ROWS);
  const units = unitsOf(given);
  const job = await jobOf(given, io);
  if (job === null) return 1;
  const recordings = await loadRecordings(io, job);
  if (!recordings.ok) {
    io.stderr(problemText(recordings.problem));
    return 1;
  }
  const analysis = analyse(job, recordings.value);
  if (!analysis.ok) {
    io.stderr(problemText(analysis.problem));
    return 1;
  }
  const { report } = analysis.value;
  const page = given.text('page');
  if (page !== undefined) {
    const { title, complaint } = job;
    const text = reportPage(analysis.value, {
      units,
      ...(title === undefined ? {} : { title }),
      ...(complaint === undefined ? {} : { complaint }),
    });
    try {
      await io.writeFile(page, text);
    } catch (error) {
      io.stderr(
        `perrev: ${page} could not be written: ${(error as Error).message}. Choose another place for --page.\n`,
      );
      return 1;
    }
    io.stderr(`Page written to ${page}\n`);
  }
  io.stdout(
    given.flag('json')
      ? `${JSON.stringify(report)}\n`
      : reportText(report, { units, width: Math.min(io.terminalColumns ?? 96, 110), emphasis: io.emphasis }),
  );
  return 0;
}

/** The job the arguments name; null after a problem has been told. */
async function jobOf(given: Arguments, io: Io): Promise<Job | null> {
  const [first] = given.files;
  if (first === undefined)
    throw new UsageError('name a job file or at least one recording. Try: perrev diagnose recording.csv --speed 62mph');
  if (!given.files.some(isJobFile)) return jobOfFiles(given);
  if (given.files.length > 1) throw new UsageError('a job file stands alone: it names its own recordings.');
  const job = await loadJob(io, first);
  if (job.ok) return jobWithOptions(given, job.value);
  io.stderr(problemText(job.problem));
  return null;
}

export const diagnoseCommand: Command = {
  name: 'diagnose',
  summary: 'rank what shakes in one or more recordings of a vehicle',
  usage: `Reads recordings of one vehicle, finds which rotating part and order shakes, and ranks the causes.

  perrev diagnose cruise.csv --tire 265/70R17 --axle 3.73 --gear 0.70 --cylinders 8 --speed 62mph
  perrev diagnose cruise.csv coast.csv --tire LT245/75R16 --axle 3.73 --speed 62mph --load cruise --load coast

A job file (NAME.job.json) holds vehicle, runs, work done and measurements; options change what it says.
Several recordings are runs of the same vehicle: run options are given once for all, or once for each.
- reads standard input.

${optionHelp('Vehicle', VEHICLE_OPTIONS)}

${optionHelp('Run', RUN_OPTIONS)}

${optionHelp('Job', JOB_OPTIONS)}

${optionHelp('Output', OUTPUT)}`,
  run,
};
