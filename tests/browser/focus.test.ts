/** Where the reader stands after something was done, and what folds away by itself. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { PHONE, useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { go, openRecordings } from './support/tasks.ts';

const bench = useBrowser();

/** Id of what has the focus. */
const focused = (page: Page): Promise<string> => page.evaluate(() => document.activeElement?.id ?? '');

describe('the print menu', () => {
  it('folds away on Esc, on a press outside and on another screen, and is where the paper leads back to', async () => {
    const { page, complaints } = await bench.open();
    await openShortJob(page, 'joint-replaced');
    const summary = page.locator('#print-menu');
    const choice = page.getByRole('button', { name: 'One page for the customer' });
    await summary.press('Enter');
    await choice.focus();
    await page.keyboard.press('Escape');
    await choice.waitFor({ state: 'hidden' });
    expect(await focused(page)).toBe('print-menu');
    await summary.click();
    await choice.waitFor();
    await page.locator('header .job').click();
    await choice.waitFor({ state: 'hidden' });
    await summary.click();
    await choice.waitFor();
    await go(page, 'measurements');
    await choice.waitFor({ state: 'hidden' });
    await summary.press('Enter');
    await choice.press('Enter');
    await page.getByRole('button', { name: 'Back' }).press('Enter');
    await summary.waitFor();
    expect(await focused(page)).toBe('print-menu');
    // The paper is a place of its own: the browser's Back leads from it to the screen it was asked for on.
    await summary.press('Enter');
    await choice.press('Enter');
    await page.locator('.paper').waitFor();
    await page.goBack();
    await summary.waitFor();
    expect(new URL(page.url()).hash).toBe('#measurements');
    expect(complaints).toEqual([]);
  });
});

describe('the reader stands', () => {
  it('at the next check after an outcome was entered, and at the list after a measurement was taken out', async () => {
    const { page, complaints } = await bench.open();
    await page.getByRole('button', { name: /joint replacement/iu }).press('Enter');
    await expect.poll(() => focused(page)).toBe('answer');
    const title = page.locator('#check-title');
    const first = await title.textContent();
    const enter = page.getByRole('button', { name: 'Found it fine' });
    await enter.press('Enter');
    await expect.poll(() => title.textContent()).not.toBe(first);
    await expect.poll(() => focused(page)).toBe('check-title');
    // What was entered stays in sight, and can be taken back there.
    const entered = page.locator('#next-check [role=status]').first();
    await expect.poll(() => entered.textContent()).toMatch(/found fine\.\s+(Now|Still) first: /u);
    expect(await entered.textContent()).toContain(first);
    await entered.getByRole('button', { name: 'Take back' }).press('Enter');
    await expect.poll(() => title.textContent()).toBe(first);
    await expect.poll(() => entered.textContent()).toBe('');
    await enter.press('Enter');
    await expect.poll(() => title.textContent()).not.toBe(first);
    await go(page, 'measurements');
    await page.getByRole('button', { name: /^Remove:/u }).press('Enter');
    await page.getByText('Nothing has been measured yet.').waitFor();
    expect(await focused(page)).toBe('taken-title');
    expect(complaints).toEqual([]);
  });

  it('at the mark that a measurement is kept', async () => {
    const { page, complaints } = await bench.open({ hash: '#measurements/radial-play' });
    await page.getByRole('textbox', { name: /^Play/u }).fill('0.3 mm');
    await page.getByRole('button', { name: 'Keep this measurement' }).press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('✓ Kept with the job');
    expect(complaints).toEqual([]);
  });
});

it('a new job begins on the road test, whatever screen it was asked for on', async () => {
  const { page } = await bench.open();
  await openShortJob(page, 'joint-replaced');
  expect(await page.title()).toBe('Monday: shake after a joint replacement · Road test · perrev');
  await go(page, 'job-book');
  await page.getByRole('button', { name: 'New job' }).press('Enter');
  await page.getByRole('button', { name: 'Open recordings' }).waitFor();
  expect(await page.title()).toBe('Road test · perrev');
});

it('what was undone past the first recording can be brought back on a phone', async () => {
  const { page, complaints } = await bench.open(PHONE);
  await openRecordings(page, 'joint-replaced-cruise.csv');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('joint-replaced-cruise.csv').first().waitFor({ state: 'hidden' });
  await page.getByRole('button', { name: 'Redo' }).click();
  await page.getByText('joint-replaced-cruise.csv').first().waitFor();
  expect(complaints).toEqual([]);
});
