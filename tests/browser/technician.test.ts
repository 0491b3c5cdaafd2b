import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { PHONE, useBrowser } from './support/browser.ts';
import { axeViolations, openDemo } from './support/tasks.ts';

const bench = useBrowser();

const leading = (page: Page): Promise<string[]> =>
  page.locator('section:has(#causes-title) > ol > li .row').allTextContents();

describe('measuring', () => {
  it('an outcome moves the ranking at once, and can be taken back', async () => {
    const { page } = await bench.open();
    await openDemo(page, /joint replacement/iu);
    const before = await leading(page);
    await page.getByRole('button', { name: 'Found it wrong' }).click();
    await expect.poll(() => leading(page)).not.toEqual(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => leading(page)).toEqual(before);
  });

  it('numbers are judged while they are typed, kept, and listed', async () => {
    const { page, complaints } = await bench.open();
    await openDemo(page, /joint replacement/iu);
    await page.goto(`${bench.server.url}#measurements/radial-play`);
    await page.getByLabel(/^Play/u).fill('0.5 mm');
    await page.getByText('Outside the limits').waitFor();
    await page.getByRole('button', { name: 'Keep this measurement' }).click();
    await page.getByRole('button', { name: 'Remove: Radial play by dial: slip yoke' }).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });
});

describe('before and after', () => {
  for (const [name, options] of [
    ['desk', {}],
    ['phone', PHONE],
  ] as const) {
    it(`tells on one screen, by order, that the complaint is gone (${name})`, async () => {
      const { page } = await bench.open(options);
      await openDemo(page, /comeback/iu);
      await page.getByRole('link', { name: 'Before and after' }).click();
      await page.getByRole('heading', { name: /driveshaft 2×/iu }).waitFor();
      expect(await page.getByRole('rowheader', { name: 'driveshaft 2×' }).count()).toBeGreaterThan(0);
      expect(await axeViolations(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    });
  }
});

describe('on paper', () => {
  const pages = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/gu)?.length ?? 0;

  it.each([
    ['US', 'Letter', /MediaBox\s*\[0 0 612 792\]/u],
    ['Metric', 'A4', /MediaBox\s*\[0 0 59[456][.\d]* 84[12][.\d]*\]/u],
  ])('%s readers get one page for the customer on %s, and all pages for the file', async (units, _paper, size) => {
    const { page } = await bench.open({ colorScheme: 'dark' });
    await openDemo(page, /comeback/iu);
    await page.getByText('Settings').click();
    await page.getByRole('radio', { name: units, exact: true }).check({ force: true });
    await page.keyboard.press('Escape');
    await page.locator('summary', { hasText: /^Print$/u }).click();
    await page.getByRole('button', { name: 'One page for the customer' }).click();
    await page.getByText('What it most likely is').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    const customer = await page.pdf({ preferCSSPageSize: true });
    expect(pages(customer)).toBe(1);
    expect(customer.toString('latin1')).toMatch(size);
    await page.getByRole('button', { name: 'Back' }).click();
    await page.locator('summary', { hasText: /^Print$/u }).click();
    await page.getByRole('button', { name: 'All pages for the file' }).click();
    await page.getByText('Checks proposed').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(pages(await page.pdf({ preferCSSPageSize: true }))).toBeGreaterThan(2);
  });
});

describe('pictures', () => {
  it('are saved as SVG that stands alone and as PNG, and the table of orders as CSV', async () => {
    const { page } = await bench.open();
    await openDemo(page, /comeback/iu);
    const figure = page.locator('figure').first();
    await figure.locator('summary').click();
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
  });

  it('show all runs side by side, and the spectrum at each speed where the speed changed', async () => {
    const { page } = await bench.open();
    await openDemo(page, /comeback/iu);
    await page.getByText('All runs side by side').waitFor();
    expect(await page.getByText('Spectrum at each speed').count()).toBe(0);
    await page.getByRole('button', { name: 'New job' }).click();
    await openDemo(page, /comes and goes with speed/iu);
    await page.getByText('Spectrum at each speed').waitFor();
    expect(await axeViolations(page)).toEqual([]);
  });
});
