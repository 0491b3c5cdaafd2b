/**
 * The demo of a comeback with one run from before and the one from after the repair, a quarter of a minute each:
 * answered in less than half the time, for tests to which it does not matter how much was recorded.
 */
import { Buffer } from 'node:buffer';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { recordingPath, waitForAnswer } from './tasks.ts';

/** A line of names, and 15 s at 200 Hz. */
const LINES = 1 + 15 * 200;

const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

const readText = (name: string): string => readFileSync(recordingPath(name), 'utf8');

/** Opens the job and its recordings as files, and waits for the answer; it is in the job book then. */
export async function openShortComeback(page: Page): Promise<void> {
  const job = JSON.parse(readText('comeback.job.json')) as { runs: { file: string }[] };
  const runs = job.runs.filter(({ file: name }) => name !== 'comeback-pull.csv');
  await page.setInputFiles('input[type=file]', [
    file('comeback.job.json', JSON.stringify({ ...job, runs })),
    ...runs.map(({ file: name }) => file(name, `${readText(name).split('\n', LINES).join('\n')}\n`)),
  ]);
  await page.getByRole('button', { name: 'Diagnose' }).click();
  await waitForAnswer(page);
}
