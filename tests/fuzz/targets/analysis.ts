/** Short recordings that could be read, with an odd vehicle, through the whole analysis to text and page. */
import { analyse } from '../../../src/core/analyse.ts';
import { readJob } from '../../../src/core/job/job-file.ts';
import type { Job } from '../../../src/core/job/job.ts';
import { reportPage } from '../../../src/core/report/page.ts';
import { reportText } from '../../../src/core/report/text.ts';
import { CSV_LAYOUTS } from '../../../src/core/simulate/csv-layouts.ts';
import { seedFile } from '../csv-seeds.ts';
import type { Dice } from '../dice.ts';
import { checkProblem, checkReport } from '../invariants.ts';
import { mutatedJson } from '../mutate-json.ts';
import { mutatedTable } from '../mutate-table.ts';
import { must, target } from '../target.ts';
import { jobSeeds } from './job.ts';
import { readBytes } from './reader.ts';

interface Input {
  readonly text: string;
  readonly job: Job;
}

const fallback: Job = { schemaVersion: 1, vehicle: { layout: 'rear-drive' }, work: [], runs: [], measurements: [] };

function jobOf(dice: Dice): Job {
  let content = dice.pick(jobSeeds);
  if (dice.chance(0.6)) content = mutatedJson(content, dice);
  const read = readJob(JSON.stringify(content) ?? '', 'made.job.json');
  const job = read.ok ? read.value : fallback;
  const run = job.runs[0] ?? { file: 'made.csv' };
  return { ...job, runs: [{ ...run, file: 'made.csv' }] };
}

const seeds = CSV_LAYOUTS.flatMap((layout) => [40, 120, 500].map((rows) => seedFile(layout, rows)));

export const analysis = target<Input>({
  name: 'analysis',
  cases: 10,
  make: (dice) => {
    const { text, layout } = dice.pick(seeds);
    return { text: dice.chance(0.7) ? mutatedTable(text, layout.delimiter, dice) : text, job: jobOf(dice) };
  },
  check: async ({ text, job }) => {
    const read = await readBytes(Buffer.from(text));
    if (!read.ok) return;
    const result = analyse(job, [read.value]);
    if (!result.ok) return checkProblem(result.problem, text);
    const { report } = result.value;
    checkReport(report);
    for (const units of ['us', 'metric'] as const) {
      const words = reportText(report, { units, width: 80, emphasis: false });
      const page = reportPage(result.value, { units });
      const given = JSON.stringify(job) + text;
      for (const shown of [words, page])
        must(
          !/\bundefined\b|\bNaN\b|\[object /.test(shown) || /undefined|nan|object/i.test(given),
          `unformatted in the report`,
        );
      must(!/<script|<img|javascript:/i.test(page), 'markup from a file in the page');
    }
  },
  show: ({ text, job }) => `${JSON.stringify(job)}\n\n${text}`,
});
