import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { axeEverywhere, axeViolations, go, openDemo, openRecordings, unfold } from './support/tasks.ts';

const bench = useBrowser();

describe('axe finds nothing, at the size of a desk and of a phone, light and dark', () => {
  it('on the empty state, the settings and the form', async () => {
    const { page } = await bench.open();
    await page.getByRole('button', { name: /joint replacement/iu }).waitFor();
    expect(await axeEverywhere(page, 'empty')).toEqual([]);
    await page.locator('.settings summary').click();
    expect(await axeEverywhere(page, 'settings')).toEqual([]);
    await page.keyboard.press('Escape');
    await openRecordings(page, 'joint-replaced-cruise.csv');
    await page.getByText('40 s ·').waitFor();
    await unfold(page);
    expect(await axeEverywhere(page, 'form')).toEqual([]);
  });

  it('on the answer with all unfolded, the help of a word and both printed papers', async () => {
    const { page } = await bench.open();
    await openDemo(page, /joint replacement/iu);
    await unfold(page);
    expect(await axeEverywhere(page, 'answer')).toEqual([]);
    await page.getByRole('button', { name: 'What is “Order”?' }).first().press('Enter');
    await page.getByRole('dialog', { name: 'Order', exact: true }).waitFor();
    expect(await axeEverywhere(page, 'help')).toEqual([]);
    await page.keyboard.press('Escape');
    for (const paper of ['One page for the customer', 'All pages for the file']) {
      await page.locator('summary', { hasText: 'Print' }).click();
      await page.getByRole('button', { name: paper }).click();
      await page.getByRole('button', { name: 'Back' }).waitFor();
      expect(await axeEverywhere(page, paper)).toEqual([]);
      await page.emulateMedia({ media: 'print' });
      expect(await axeViolations(page)).toEqual([]);
      await page.emulateMedia({ media: 'screen' });
      await page.getByRole('button', { name: 'Back' }).click();
    }
  });

  it('on before and after and the job book', async () => {
    const { page } = await bench.open();
    await openShortJob(page, 'comeback');
    await go(page, 'before-and-after');
    await page.getByRole('columnheader', { name: '95 % interval' }).first().waitFor();
    expect(await axeEverywhere(page, 'before and after')).toEqual([]);
    await go(page, 'job-book');
    await unfold(page);
    expect(await axeEverywhere(page, 'job book')).toEqual([]);
    await page.getByRole('searchbox', { name: 'Search' }).fill('nothing like this');
    await page.getByText('No job matches.').waitFor();
    expect(await axeEverywhere(page, 'no match')).toEqual([]);
  });

  it('on work that failed', async () => {
    const { page } = await bench.open();
    const rows = Array.from({ length: 600 }, (_, i) => `${(i / 200).toFixed(3)},${Math.sin(i).toFixed(4)},0.2,9.8`);
    const buffer = Buffer.from(`time (s),x (m/s2),y (m/s2),z (m/s2)\n${rows.join('\n')}\n`);
    await page.setInputFiles('input[type=file]', [{ name: 'short.csv', mimeType: 'text/csv', buffer }]);
    await page.getByText('3.0 s ·').waitFor();
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await page.getByRole('heading', { name: 'This did not work' }).waitFor();
    expect(await axeEverywhere(page, 'failed')).toEqual([]);
  });
});
