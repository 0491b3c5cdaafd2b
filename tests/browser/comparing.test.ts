import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { PHONE, useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { axeViolations, go, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

async function print(page: Page, what: string): Promise<void> {
  await page.locator('summary', { hasText: /^Print$/u }).click();
  await page.getByRole('button', { name: what }).click();
}

describe('before and after', () => {
  it('is entered into the history and printed, also after a reload and on a phone', async () => {
    const { page, complaints } = await bench.open();
    await openShortJob(page, 'comeback');
    await page.getByText('Saved in this browser').waitFor();
    await go(page, 'before-and-after');
    const history = page.getByRole('region', { name: 'From complaint to proof' });
    await history.getByText(/^Before and after: Driveshaft 2× is gone/u).waitFor();
    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await go(page, 'road-test');
    await waitForAnswer(page);
    await print(page, 'One page for the customer');
    const proof = page.getByRole('heading', { name: /^The shake is gone\./u });
    await proof.waitFor();
    expect(await proof.textContent()).toMatch(/from [\d.]+ to (under )?[\d.]+ times what a person just feels/u);
    // What is for the file stays in the file, and nothing is left to do.
    const customerPage = (await page.locator('main').textContent()) ?? '';
    expect(customerPage).not.toMatch(/ dB|± |should be done next/u);
    expect(await axeViolations(page)).toEqual([]);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/gu)).toHaveLength(1);
    await page.getByRole('button', { name: 'Back' }).click();
    await print(page, 'All pages for the file');
    await page.getByRole('rowheader', { name: 'driveshaft 2×' }).first().waitFor();
    await page.getByRole('cell', { name: 'comeback-proof.csv', exact: true }).waitFor();
    expect(await page.getByText(/: Before and after: Driveshaft 2× is gone/u).count()).toBe(1);
    expect(await axeViolations(page)).toEqual([]);
    await page.setViewportSize(PHONE.viewport!);
    const table = await page
      .getByRole('table', { name: / against / })
      .first()
      .boundingBox();
    expect(table!.x + table!.width).toBeLessThanOrEqual(PHONE.viewport!.width);
    expect(complaints).toEqual([]);
  });
});
