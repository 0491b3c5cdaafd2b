import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { openRecordings } from './support/tasks.ts';

const bench = useBrowser();

const saved = (page: Page) => page.getByText('Saved in this browser').waitFor();
const title = (page: Page) => page.getByRole('textbox', { name: 'Job' });
const opened = (page: Page) => page.getByRole('button', { name: /^Open: / });

async function startJob(page: Page, name: string): Promise<void> {
  await openRecordings(page, 'joint-replaced-cruise.csv');
  await title(page).fill(name);
  await saved(page);
}

/** From now on no save of this page ends: its transaction is kept busy, so that nothing of it is committed. */
const holdSaves = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...args) {
      const request = put.apply(this, args);
      const keepBusy = (): void => void (this.get('nothing').onsuccess = keepBusy);
      keepBusy();
      return request;
    };
  });

/** Writes the one record of the book anew with another schema number, behind the app's back, and gives it back. */
const withSchema = (page: Page, schema: number): Promise<Record<string, unknown>> =>
  page.evaluate(async (number) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open('perrev');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error as Error);
    });
    const store = database.transaction('jobs', 'readwrite').objectStore('jobs');
    const [record] = await new Promise<Record<string, unknown>[]>((resolve) => {
      const request = store.getAll();
      request.onsuccess = () => resolve(request.result);
    });
    const changed = { ...record, schema: number, extra: 'of that version' };
    store.put(changed);
    await new Promise((resolve) => (store.transaction.oncomplete = resolve));
    database.close();
    return changed;
  }, schema);

describe('the job book survives', () => {
  it('a tab killed during a save: what was typed last is there, once', async () => {
    const { page, context } = await bench.open();
    await startJob(page, 'before');
    await holdSaves(page);
    await title(page).fill('on its way');
    await page.getByText('Saving …').waitFor();
    await title(page).fill('last words');
    const devtools = await context.newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    // A page that has crashed answers no more.
    void devtools.send('Page.crash').catch(() => undefined);
    await crashed;
    const { page: again } = await bench.openIn(context, '#job-book');
    await again.getByRole('button', { name: 'Open: last words' }).click();
    await again.getByText('40 s ·').waitFor();
    expect(await title(again).inputValue()).toBe('last words');
    await again.getByRole('link', { name: 'Job book' }).click();
    await again.getByText('1 job', { exact: true }).waitFor();
  });

  it('a record of an older version: it is opened, and saved as one of today', async () => {
    const { page, context } = await bench.open();
    await startJob(page, 'old');
    await page.close();
    const { page: again } = await bench.openIn(context, '#job-book');
    await opened(again).waitFor();
    await withSchema(again, 0);
    await again.reload();
    await opened(again).click();
    await title(again).fill('old, changed');
    await saved(again);
    await again.reload();
    await title(again).waitFor();
    expect(await title(again).inputValue()).toBe('old, changed');
  });

  it('a record of a newer version: read-only, said so, given out as it is, and never written over', async () => {
    const { page, context } = await bench.open();
    await startJob(page, 'of today');
    const { page: other } = await bench.openIn(context, '#job-book');
    await opened(other).waitFor();
    const newer = await withSchema(other, 99);
    // The page that has it open still works on it: its change may not take the place of the newer record.
    await title(page).fill('typed into the old page');
    await page.getByText('kept as a job of its own').waitFor();
    await saved(page);
    await other.reload();
    await other.getByText('read-only here').waitFor();
    expect(await opened(other).count()).toBe(1);
    expect(await other.getByRole('button', { name: /^Delete: / }).count()).toBe(1);
    const [download] = await Promise.all([
      other.waitForEvent('download'),
      other.getByRole('button', { name: 'Save raw content' }).click(),
    ]);
    expect(JSON.parse(readFileSync(await download.path(), 'utf8'))).toEqual(newer);
  });

  it('a data base of a newer version: it is said that nothing is kept, and the work goes on', async () => {
    const { page, context } = await bench.open();
    await page.goto(`${bench.server.url}manifest.webmanifest`);
    await page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const request = indexedDB.open('perrev', 99);
          request.onsuccess = () => {
            request.result.close();
            resolve();
          };
        }),
    );
    const { page: app } = await bench.openIn(context);
    await openRecordings(app, 'joint-replaced-cruise.csv');
    await app.getByText('40 s ·').waitFor();
    await app.getByText('Not kept: this browser stores nothing').waitFor();
    await app.getByText('Save the job as one file before closing').waitFor();
  });
});
