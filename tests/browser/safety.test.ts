import { gzipSync } from 'node:zlib';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { CONTENT_SECURITY_POLICY } from '../../src/app/build/policy.ts';
import { useBrowser } from './support/browser.ts';
import { SHORT_RUN, SHORT_RUN_LENGTH } from './support/short-job.ts';
import { waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();
const MARKUP = `<img src="x" onerror="globalThis.harmed = true"><script>globalThis.harmed = true</script>`;

const isHarmed = (page: Page): Promise<boolean> =>
  page.evaluate(() => 'harmed' in globalThis || document.querySelector('img[src="x"]') !== null);

describe('the first load', () => {
  it('takes at most 150 kB of packed script, and nothing from elsewhere', async () => {
    const { page } = await bench.open({ hash: '#lessons' });
    const before = bench.server.requests.length;
    const outside: string[] = [];
    page.on('request', (request) => outside.push(request.url()));
    await page.goto(bench.server.url);
    await page.reload({ waitUntil: 'networkidle' });
    await page.getByRole('button', { name: /joint replacement/iu }).waitFor();
    expect(outside.filter((url) => !url.startsWith(bench.server.url))).toEqual([]);
    const scripts = [...new Set(bench.server.requests.slice(before))].filter((path) => path.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(0);
    const bytes = await Promise.all(
      scripts.map((path) => page.evaluate(async (url) => (await fetch(url)).text(), path)),
    );
    expect(bytes.reduce((sum, text) => sum + gzipSync(text).length, 0)).toBeLessThanOrEqual(150_000);
  });

  it('is under a policy that lets no script in but the app’s own', async () => {
    expect(CONTENT_SECURITY_POLICY).toMatch(/default-src 'none'/u);
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe-(inline|eval)|https?:|\*/u);
    const { page } = await bench.open();
    const wasRun = await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'globalThis.harmed = true';
      document.head.append(script);
      return 'harmed' in globalThis;
    });
    expect(wasRun).toBe(false);
    const got = await page.evaluate(() =>
      fetch('https://example.org/').then(
        () => 'sent',
        () => 'refused',
      ),
    );
    expect(got).toBe('refused');
  });
});

describe('text from files and forms', () => {
  it('stays text on every screen, in tables, on paper and in the book', async () => {
    const { page } = await bench.open();
    const name = '=cmd <b onclick=x>&amp;.csv';
    await page.setInputFiles('input[type=file]', [{ ...SHORT_RUN, name }]);
    await page.getByText(SHORT_RUN_LENGTH).waitFor();
    for (const field of ['Job name', 'Complaint', 'Description']) {
      await page.getByRole('textbox', { name: field, exact: true }).fill(field + MARKUP);
    }
    await page.getByText('More about this run').click();
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill(`=HYPERLINK(${MARKUP})`);
    await page.getByRole('textbox', { name: 'Tires' }).fill('LT245/75R16');
    await page.getByRole('textbox', { name: 'Axle ratio' }).fill('3.73');
    await page.getByRole('textbox', { name: 'Road speed' }).fill('62');
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await waitForAnswer(page);
    expect(await isHarmed(page)).toBe(false);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as CSV' }).first().click(),
    ]);
    const table = readFileSync(await download.path(), 'utf8');
    expect(table).toContain("'=HYPERLINK");
    expect(table).not.toMatch(/(^|,)"?[=+@]/mu);
    for (const what of ['One page for the customer', 'All pages for the file']) {
      await page.locator('summary', { hasText: /^Print$/u }).click();
      await page.getByRole('button', { name: what }).click();
      await page.getByText(`Complaint${MARKUP}`).first().waitFor();
      expect(await isHarmed(page)).toBe(false);
      await page.getByRole('button', { name: 'Back' }).click();
    }
    for (const screen of ['Before and after', 'Measurements', 'Job book']) {
      await page.getByRole('link', { name: screen, exact: true }).click();
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      expect(await isHarmed(page)).toBe(false);
    }
    await page.getByText(`Job name${MARKUP}`).first().waitFor();
  });
});
