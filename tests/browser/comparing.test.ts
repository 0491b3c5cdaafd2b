import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { axeViolations, go, openDemo } from './support/tasks.ts';

const bench = useBrowser();

describe('before and after', () => {
  it('takes the verdict away with the side it was about, and refuses a side against itself', async () => {
    const { page, complaints } = await bench.open();
    await openDemo(page, /comeback/iu);
    await go(page, 'before-and-after');
    const verdict = page.getByRole('heading', { name: /driveshaft 2× is gone/iu });
    await verdict.waitFor();
    const before = page.getByRole('combobox', { name: 'Before' });
    await before.selectOption('This job, proving runs');
    await page.getByText('Before and after are the same runs').waitFor();
    expect(await verdict.count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Compare', exact: true }).isDisabled()).toBe(true);
    expect(await axeViolations(page)).toEqual([]);
    await before.selectOption('This job, runs of the complaint');
    await verdict.waitFor();
    expect(complaints).toEqual([]);
  });
});
