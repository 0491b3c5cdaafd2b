import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';

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
    await page.getByText(/slip yoke: at most 0\.010\sin \(0\.25\smm\) \(maker’s figure\)/u).waitFor();
    expect(await field.inputValue()).toBe('0.01 in');
    await enter('abc');
    await page.getByText('"abc" is not a limit').waitFor();
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await page.getByText(/slip yoke: at most 0\.010\sin/u).waitFor();
    await enter('');
    await page.getByText(/slip yoke: at most 0\.008\sin .*no source/u).waitFor();
    expect(await field.getAttribute('aria-invalid')).toBe('false');
    expect(complaints).toEqual([]);
  });
});
