import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { openShortRun, SHORT_RUN_LENGTH } from './support/short-job.ts';
import { openDemo, openRecordings, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

/** Waits until the offline copy stands and answers for the page. */
async function waitForCopy(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { serviceWorker } = navigator;
    await serviceWorker.ready;
    if (!serviceWorker.controller) await new Promise((resolve) => (serviceWorker.oncontrollerchange = resolve));
  });
}

describe('without a network', () => {
  it('starts and diagnoses after one visit', async () => {
    const { page, context, complaints } = await bench.open({ serviceWorkers: 'allow' });
    await waitForCopy(page);
    await context.setOffline(true);
    await page.reload();
    await openShortRun(page);
    await page.getByRole('textbox', { name: 'Tires' }).fill('LT245/75R16');
    await page.getByRole('textbox', { name: 'Axle ratio' }).fill('3.73');
    await page.getByRole('textbox', { name: 'Road speed' }).fill('62');
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await waitForAnswer(page);
    for (const screen of ['Measurements', 'Before and after', 'Lessons', 'Job book']) {
      await page.getByRole('link', { name: screen, exact: true }).click();
      await page.getByRole('heading', { level: 1 }).first().waitFor();
    }
    expect(complaints).toEqual([]);
  });

  it('asks for nothing once the page is loaded, whatever is done in it', async () => {
    const { page } = await bench.open();
    await page.getByRole('button', { name: /moving off/iu }).waitFor();
    for (const screen of ['Measurements', 'Before and after', 'Lessons', 'Job book', 'Road test']) {
      await page.getByRole('link', { name: screen, exact: true }).click();
      await page.getByRole('heading', { level: 1 }).first().waitFor();
    }
    await openDemo(page, /moving off/iu);
    const asked = bench.server.requests.length;
    const outside: string[] = [];
    page.on('request', (request) => outside.push(request.url()));
    await page.getByRole('button', { name: 'New job' }).click();
    await openShortRun(page);
    await page.getByText(SHORT_RUN_LENGTH).waitFor();
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await waitForAnswer(page);
    // The browser itself may draw the tab's icon anew when the title changes.
    expect(bench.server.requests.slice(asked).filter((path) => path !== '/icon.svg')).toEqual([]);
    expect(outside.filter((url) => !url.startsWith('blob:') && !url.endsWith('/icon.svg'))).toEqual([]);
  });

  it('announces a newer version and takes it when asked, with the job kept', async () => {
    const { page } = await bench.open({ serviceWorkers: 'allow' });
    await waitForCopy(page);
    await openRecordings(page, 'joint-replaced-cruise.csv');
    await page.getByRole('textbox', { name: 'Job' }).fill('stays');
    await page.getByText('Saved in this browser').waitFor();
    const worker = await page.evaluate(async () => (await fetch('sw.js', { cache: 'no-store' })).text());
    bench.server.replaced.set('/sw.js', Buffer.from(worker.replace(/"([0-9a-f]{12})"(?=[^"]*$|,)/u, '"newer"') + '//'));
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    // The page as it was shows the job, too.
    const loaded = page.waitForEvent('load');
    await page.getByRole('button', { name: 'Load it now' }).click();
    await loaded;
    await page.getByText('40 s ·').waitFor();
    expect(await page.getByRole('textbox', { name: 'Job' }).inputValue()).toBe('stays');
    expect(await page.getByRole('button', { name: 'Load it now' }).count()).toBe(0);
    bench.server.replaced.clear();
  });
});

describe('as an app', () => {
  it('has a manifest with icons the browser can load', async () => {
    const { page } = await bench.open();
    const sizes = await page.evaluate(async () => {
      const manifest = (await (await fetch('manifest.webmanifest')).json()) as {
        icons: { src: string; sizes: string }[];
      };
      return Promise.all(
        manifest.icons.map(async ({ src, sizes: stated }) => {
          const bitmap = await new Promise<HTMLImageElement>((resolve, reject) => {
            const image = new Image();
            image.onload = () => resolve(image);
            image.onerror = () => reject(new Error(src));
            image.src = src;
          });
          return stated === 'any' ? 'any' : `${bitmap.naturalWidth}x${bitmap.naturalHeight}` === stated;
        }),
      );
    });
    expect(sizes).toEqual(['any', true, true, true]);
  });
});
