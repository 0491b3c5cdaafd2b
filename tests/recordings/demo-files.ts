/** Each demo job as the files it becomes. */
import { JOB_SCHEMA_VERSION } from '../../src/core/job/job.ts';
import { csvLayout } from '../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../src/core/simulate/csv-write.ts';
import { simulate } from '../../src/core/simulate/simulate.ts';
import type { DemoJob, DemoRun } from './demo-job.ts';

export const recordingText = (run: DemoRun): string =>
  csvText(simulate(run.scenario), csvLayout(run.layout), run.scenario.seed);

export const jobText = (job: DemoJob): string =>
  `${JSON.stringify(
    {
      schemaVersion: JOB_SCHEMA_VERSION,
      title: job.title,
      complaint: job.complaint,
      vehicle: job.vehicle,
      work: job.work ?? [],
      runs: job.runs.map((run) => ({ file: run.file, ...run.keys })),
      ...(job.repaired !== undefined && { repaired: job.repaired }),
      measurements: job.measurements ?? [],
      ...(job.notes !== undefined && { notes: job.notes }),
    },
    null,
    2,
  )}\n`;

/** The table that tells how each was made. */
export const readmeText = (jobs: readonly DemoJob[]): string =>
  [
    '# Recordings: a week at Quarry Road Garage',
    '',
    'Demo jobs. The shop, its customers and vehicles are invented; the recordings are simulated (`src/core/simulate`) from',
    'the described vehicle, fault and drive with fixed seeds. `npm run recordings` makes the same bytes again. Open a job',
    'with `perrev diagnose recordings/NAME.job.json` or in the app.',
    '',
    ...jobs.flatMap((job) => [
      `## ${job.name}.job.json`,
      '',
      `${job.title}. "${job.complaint}"`,
      '',
      `How it was made: ${job.made}`,
      '',
      `Files: ${job.runs.map((run) => `\`${run.file}\` (layout "${run.layout}", seed ${run.scenario.seed})`).join(', ')}.`,
      '',
    ]),
  ].join('\n');
