import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { PHONE, type OpenedPage, useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { axeViolations, go, openDemo, overflowPx } from './support/tasks.ts';

const bench = useBrowser();

const leading = (page: Page): Promise<string[]> =>
  page.locator('section:has(#causes-title) > ol > li .row').allTextContents();

describe('measuring', () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await bench.open();
    await openShortJob(opened.page, 'joint-replaced');
  });

  it('an outcome moves the ranking at once, and can be taken back', async () => {
    const { page } = opened;
    const before = await leading(page);
    await page.getByRole('button', { name: 'Found it wrong' }).click();
    await expect.poll(() => leading(page)).not.toEqual(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => leading(page)).toEqual(before);
  });

  it('numbers are judged while they are typed, kept, and listed', async () => {
    const { page, complaints } = opened;
    await page.goto(`${bench.server.url}#measurements/radial-play`);
    await page.getByLabel(/^Play/u).fill('0.5 mm');
    await page.getByText('Outside the limits').waitFor();
    await page.getByRole('button', { name: 'Keep this measurement' }).click();
    await page.getByRole('button', { name: 'Remove: Radial play by dial: slip yoke' }).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });
});

const open = async (page: Page, words: string): Promise<void> => {
  await page.getByRole('link', { name: words }).click();
};

const print = async (page: Page, what: string): Promise<void> => {
  await page.locator('summary', { hasText: /^Print$/u }).click();
  await page.getByRole('button', { name: what }).click();
};

const inUnits = async (page: Page, units: string): Promise<void> => {
  await page.getByText('Settings').click();
  await page.getByRole('radio', { name: units, exact: true }).check({ force: true });
  await page.keyboard.press('Escape');
};

const pages = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/gu)?.length ?? 0;

/** Width and height of the first page of a PDF, in points. */
function paper(pdf: Buffer): number[] {
  const box = /MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/u.exec(pdf.toString('latin1'));
  return [Number(box?.[1]), Number(box?.[2])];
}
const LETTER = [612, 792];
const A4 = [(210 / 25.4) * 72, (297 / 25.4) * 72];

describe('the demo of a comeback', () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await bench.open({ colorScheme: 'dark' });
    await openDemo(opened.page, /comeback/iu);
  });

  it('shows its runs side by side, and saves pictures and tables', async () => {
    const { page, complaints } = opened;
    await go(page, 'road-test');
    const sideBySide = page.locator('figure', { hasText: 'All runs side by side' });
    // The two runs of the complaint; the proving run stands against them on a screen of its own.
    await sideBySide.locator('svg text.strong').nth(1).waitFor();
    expect(await sideBySide.locator('svg text.strong').count()).toBe(2);
    await sideBySide.getByText('Numbers', { exact: false }).first().click();
    expect(await sideBySide.getByRole('row').count()).toBeGreaterThanOrEqual(3);
    expect(await page.getByText('Spectrum at each speed').count()).toBe(0);

    await page.locator('figure').first().locator('summary').click();
    const save = async (button: string): Promise<Buffer> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: button }).first().click(),
      ]);
      return readFileSync(await download.path());
    };
    const svg = (await save('Save as SVG')).toString();
    expect(svg).toContain('xmlns="http://www.w3.org/2000/svg"');
    expect(svg).not.toContain('var(--');
    expect((await save('Save as PNG')).subarray(1, 4).toString()).toBe('PNG');
    expect((await save('Save as CSV')).toString()).toContain('driveshaft 2×');
    expect(complaints).toEqual([]);
  });

  it('prints on the paper of the reader’s units', async () => {
    const { page, complaints } = opened;
    await go(page, 'road-test');
    for (const [units, size] of [
      ['US', LETTER],
      ['Metric', A4],
    ] as const) {
      await inUnits(page, units);
      await print(page, 'One page for the customer');
      await page.getByText('The shake is gone.').waitFor();
      expect(await axeViolations(page)).toEqual([]);
      const customer = await page.pdf({ preferCSSPageSize: true });
      expect(pages(customer)).toBe(1);
      // To whole pixels of 1/96 inch.
      paper(customer).forEach((points, side) => expect(Math.abs(points - size[side]!)).toBeLessThan(0.76));
      await page.getByRole('button', { name: 'Back' }).click();
    }
    await print(page, 'All pages for the file');
    await page.getByText('Close the job').first().waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(pages(await page.pdf({ preferCSSPageSize: true }))).toBeGreaterThan(2);
    await page.getByRole('button', { name: 'Back' }).click();
    expect(complaints).toEqual([]);
  });

  it('tells by order that the complaint is gone; takes that away with its side, and refuses a side against itself', async () => {
    const { page, complaints } = opened;
    await go(page, 'road-test');
    await open(page, 'Before and after');
    // Until the runs are compared the answer of the road test, which names the order too, may still stand there.
    const verdict = page.getByRole('heading', { name: /^driveshaft 2× is gone/iu });
    await verdict.waitFor();
    expect(await page.getByRole('rowheader', { name: 'driveshaft 2×' }).count()).toBeGreaterThan(0);
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

  it('stays a demo where it is only looked at, a kept measurement too: not in the job book, nothing to undo', async () => {
    const { page, complaints } = opened;
    await go(page, 'measurements/end-play');
    await page.getByRole('button', { name: 'Open: Working angles' }).click();
    await page.locator('#measure-title', { hasText: 'Working angles' }).waitFor();
    expect(
      await page
        .getByRole('textbox', { name: /^Slope/u })
        .first()
        .inputValue(),
    ).not.toBe('');
    await page.getByText('Demo, not in your job book').waitFor();
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await go(page, 'job-book');
    await page.getByText('No jobs yet').waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('a comeback on a phone', () => {
  it('is found in the job book, noted in its timeline, compared and printed, without scrolling sideways', async () => {
    const { page, complaints } = await bench.open(PHONE);
    const fits = async (): Promise<void> => expect(await overflowPx(page)).toBeLessThanOrEqual(0);
    await openShortJob(page, 'comeback');
    await page.getByText('Saved in this browser').waitFor();
    await fits();
    await open(page, 'Job book');
    await page.getByRole('searchbox', { name: 'Search' }).fill('third visit');
    await page.getByText('1 job', { exact: true }).waitFor();
    await page.getByRole('textbox', { name: 'Note', exact: true }).fill('Wedge under the spring seat changed');
    await page.getByRole('button', { name: 'Add a note' }).click();
    await page.getByText('Wedge under the spring seat changed').waitFor();
    await fits();
    await open(page, 'Before and after');
    await page.getByRole('heading', { name: /driveshaft 2×/iu }).waitFor();
    expect(await page.getByRole('heading', { name: /driveshaft 2×/iu }).textContent()).toMatch(/gone/iu);
    await fits();
    await open(page, 'Road test');
    await print(page, 'One page for the customer');
    await page.getByText('The shake is gone.').waitFor();
    await fits();
    expect(pages(await page.pdf({ preferCSSPageSize: true }))).toBe(1);
    expect(complaints).toEqual([]);
  });
});

describe('a run whose speed changed', () => {
  it('shows the spectrum at each speed, on a phone', async () => {
    const { page } = await bench.open(PHONE);
    await openDemo(page, /comes and goes with speed/iu);
    await page.getByText('Spectrum at each speed').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(await overflowPx(page)).toBeLessThanOrEqual(0);
  });
});
