import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { openShortRun } from './support/short-job.ts';
import { openDemo, openRecordings, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const saved = (page: Page) => page.getByText('Saved in this browser').waitFor();

/** A job of a vehicle, diagnosed and kept. */
async function doJob(page: Page, vehicle: string, tire: string, axle: string): Promise<void> {
  await openShortRun(page);
  await field(page, 'Description').fill(vehicle);
  await field(page, 'Tires').fill(tire);
  await field(page, 'Axle ratio').fill(axle);
  await field(page, 'Road speed').fill('62');
  await page.getByRole('button', { name: 'Diagnose' }).click();
  await waitForAnswer(page);
  await saved(page);
}

it('the vehicle of the last job is offered by name, never taken over unasked: the next one in the bay is another', async () => {
  const { page, complaints } = await bench.open();
  await doJob(page, 'work truck', 'LT245/75R16', '3.73');
  await page.getByRole('button', { name: 'New job' }).click();
  await page.reload();
  await openShortRun(page);
  for (const name of ['Tires', 'Axle ratio', 'Description']) expect(await field(page, name).inputValue()).toBe('');
  expect(await page.locator('header .job').textContent()).toBe('');
  const same = page.getByRole('button', { name: 'Same vehicle as last time: work truck · Rear drive · LT245/75R16' });
  await same.click();
  expect(await field(page, 'Tires').inputValue()).toBe('LT245/75R16');
  expect(await same.count()).toBe(0);
  await field(page, 'Road speed').fill('62');
  await page.getByRole('button', { name: 'Diagnose' }).click();
  await waitForAnswer(page);
  expect(await page.locator('#answer').textContent()).toMatch(/driveshaft 1×/iu);
  expect(complaints).toEqual([]);
});

it('any vehicle of the job book can be taken over, and that can be undone', async () => {
  const { page } = await bench.open();
  await doJob(page, 'work truck', 'LT245/75R16', '3.73');
  await page.getByRole('button', { name: 'New job' }).click();
  await doJob(page, 'delivery van', '225/70R15', '4.10');
  await page.getByRole('button', { name: 'New job' }).click();
  await openRecordings(page, 'joint-replaced-cruise.csv');
  await field(page, 'Tires').fill('265/70R17');
  const choice = page.getByLabel('From the job book');
  expect(await choice.locator('option').allTextContents()).toEqual([
    'Take over a vehicle …',
    'delivery van · Rear drive · 225/70R15 · 4.1',
    'work truck · Rear drive · LT245/75R16 · 3.73',
  ]);
  await choice.selectOption({ label: 'work truck · Rear drive · LT245/75R16 · 3.73' });
  expect(await field(page, 'Tires').inputValue()).toBe('LT245/75R16');
  expect(await field(page, 'Axle ratio').inputValue()).toBe('3.73');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await field(page, 'Tires').inputValue()).toBe('265/70R17');
});

it('a demo leaves job book and offered vehicle alone, until it is kept', async () => {
  const { page, context } = await bench.open();
  await openDemo(page, /moving off/iu);
  await page.getByText('Demo, not in your job book').waitFor();
  await page.getByRole('link', { name: 'Job book' }).click();
  await page.getByText('No jobs yet.').waitFor();
  await page.getByRole('link', { name: 'Road test' }).click();
  await page.getByRole('button', { name: 'New job' }).click();
  await openRecordings(page, 'joint-replaced-cruise.csv');
  expect(await page.getByText('Same vehicle as last time').count()).toBe(0);
  const { page: other } = await bench.openIn(context);
  await openDemo(other, /moving off/iu);
  await other.getByRole('button', { name: 'Keep it' }).click();
  await saved(other);
  await other.reload();
  await waitForAnswer(other);
});
