/**
 * Demo jobs with the first seconds of their recordings, opened as files: answered in a third of the time, for tests to
 * which it does not matter how much was recorded. Unlike a demo such a job is in the job book.
 */
import { Buffer } from 'node:buffer';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { recordingPath, waitForAnswer } from './tasks.ts';

const LENGTH_S = 6;
/** One run from before the repair, and the one from after it. */
const RUNS = {
  'joint-replaced': [{ name: 'joint-replaced-cruise.csv', rateHz: 250 }],
  comeback: [
    { name: 'comeback-cruise.csv', rateHz: 200 },
    { name: 'comeback-proof.csv', rateHz: 200 },
  ],
} as const;

const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

const readText = (name: string): string => readFileSync(recordingPath(name), 'utf8');

/** The line of names, and the first seconds. */
const begin = ({ name, rateHz }: { readonly name: string; readonly rateHz: number }): string =>
  `${readText(name)
    .split('\n', 1 + LENGTH_S * rateHz)
    .join('\n')}\n`;

/** A run of the job with the replaced joint. */
export const SHORT_RUN = file('joint-replaced-cruise.csv', begin(RUNS['joint-replaced'][0]));
/** How the page tells its length. */
export const SHORT_RUN_LENGTH = '6.0 s ·';

export const openShortRun = (page: Page): Promise<void> => page.setInputFiles('input[type=file]', [SHORT_RUN]);

/** Opens a job and waits for its answer. */
export async function openShortJob(page: Page, name: keyof typeof RUNS): Promise<void> {
  const job = JSON.parse(readText(`${name}.job.json`)) as { runs: { file: string }[] };
  const runs = job.runs.filter((run) => RUNS[name].some((one) => one.name === run.file));
  await page.setInputFiles('input[type=file]', [
    file(`${name}.job.json`, JSON.stringify({ ...job, runs })),
    ...RUNS[name].map((run) => file(run.name, begin(run))),
  ]);
  await page.getByRole('button', { name: 'Diagnose' }).click();
  await waitForAnswer(page);
}
