import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { texts } from '../../src/app/texts.ts';
import { useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';

const bench = useBrowser();

const openForm = async (page: Page, id: string): Promise<void> => {
  await page.goto(`${bench.server.url}#measurements/${id}`);
  await page.locator('#measure-title').waitFor();
};

describe('a limit of one’s own', () => {
  it('is read in the unit shown; what cannot be one is told, and the figure before it stays', async () => {
    const { page, complaints } = await bench.open();
    await openForm(page, 'radial-play');
    await page.getByText('Limits in force').click();
    const field = page.getByRole('textbox', { name: /slip yoke/u });
    const enter = async (text: string): Promise<void> => {
      await field.fill(text);
      await field.press('Enter');
    };
    await enter('0.010');
    await page.getByText(/slip yoke: at most 0\.0100\sin \(0\.254\smm\) · maker’s figure/u).waitFor();
    expect(await field.inputValue()).toBe('0.01 in');
    await enter('abc');
    await page.getByText('“abc” is not a limit').waitFor();
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await page.getByText(/slip yoke: at most 0\.0100\sin/u).waitFor();
    await enter('');
    await page.getByText(/slip yoke: at most 0\.0079\sin .*no source/u).waitFor();
    expect(await field.getAttribute('aria-invalid')).toBe('false');
    expect(complaints).toEqual([]);
  });
});

describe('a half-typed measurement', () => {
  it('keeps its size when the reader goes over to other units, also after a reload', async () => {
    const { page, complaints } = await bench.open({ locale: 'de-DE' });
    await openShortJob(page, 'joint-replaced');
    await openForm(page, 'radial-play');
    await page.getByRole('textbox', { name: 'Play, mm' }).fill('0,5');
    await page.getByText(texts.book.status.saved).waitFor();
    await page.reload();
    await expect.poll(() => page.getByRole('textbox', { name: 'Play, mm' }).inputValue()).toBe('0,5');
    await page.getByText('Settings').click();
    await page.getByText('US', { exact: true }).click();
    const field = page.getByRole('textbox', { name: 'Play, in' });
    expect(await field.inputValue()).toBe('0,5 mm');
    await page
      .getByText(/0\.0197\sin \(0\.500\smm\)/u)
      .first()
      .waitFor();
    // What is typed from now on is in the new unit.
    await field.fill('0.05');
    await page
      .getByText(/0\.0500\sin \(1\.270\smm\)/u)
      .first()
      .waitFor();
    expect(complaints).toEqual([]);
  });
});
