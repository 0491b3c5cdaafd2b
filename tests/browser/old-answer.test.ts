import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { axeViolations, go, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

const notice = (page: Page) => page.getByText('changed since this answer was made');

async function print(page: Page, what: string): Promise<void> {
  await page.locator('summary', { hasText: /^Print$/u }).click();
  await page.getByRole('button', { name: what }).click();
}

describe('an answer the job has left behind', () => {
  it('says so on Measurements and on both kinds of paper, and no more once it was made again', async () => {
    const { page, complaints } = await bench.open();
    await openShortJob(page, 'joint-replaced');
    await page.getByRole('button', { name: 'Change vehicle and runs' }).click();
    await page.getByRole('textbox', { name: 'Axle ratio' }).fill('4.10');
    await page.getByRole('button', { name: 'Back to the answer' }).click();
    await notice(page).waitFor();
    for (const what of ['One page for the customer', 'All pages for the file']) {
      await print(page, what);
      await notice(page).waitFor();
      await page.emulateMedia({ media: 'print' });
      expect(await notice(page).isVisible()).toBe(true);
      expect(await page.getByRole('button', { name: 'Diagnose again' }).count()).toBe(0);
      await page.emulateMedia({ media: 'screen' });
      expect(await axeViolations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Back' }).click();
    }
    await go(page, 'measurements');
    const causes = page.getByRole('region', { name: /Where the causes stand/u });
    await causes.getByText('changed since this answer was made').waitFor();
    await causes.getByRole('button', { name: 'Diagnose again' }).click();
    await waitForAnswer(page);
    expect(await notice(page).count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it('is not made anew from half an edit when the page is loaded again: the form, the edit and a step back are there', async () => {
    const { page, complaints } = await bench.open();
    await openShortJob(page, 'joint-replaced');
    await page.getByRole('button', { name: 'Change vehicle and runs' }).click();
    const axle = page.getByRole('textbox', { name: 'Axle ratio' });
    await axle.fill('3.08');
    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await page.getByText(/Answered before the last changes to vehicle or runs: “Driveshaft 1×/u).waitFor();
    expect(await axle.inputValue()).toBe('3.08');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await axle.inputValue()).toBe('3.73');
    expect(await page.getByText('Answered before the last changes').count()).toBe(0);
    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await waitForAnswer(page);
    expect(complaints).toEqual([]);
  });
});
