import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { useBrowser, withProfileOnDisk } from './support/browser.ts';
import { openShortRun } from './support/short-job.ts';
import { axeViolations, openRecordings, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

const saved = (page: Page) => page.getByText('Saved in this browser').waitFor();
const openRecording = (page: Page): Promise<void> => openRecordings(page, 'joint-replaced-cruise.csv');
const title = (page: Page) => page.getByRole('textbox', { name: 'Job' });

async function startJob(page: Page, name: string, open = openRecording): Promise<void> {
  await open(page);
  await title(page).fill(name);
  await saved(page);
}

/** Writes into the data base behind the app's back. */
async function meddle(page: Page, change: string): Promise<void> {
  await page.evaluate(async (source) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open('perrev');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const store = database.transaction('jobs', 'readwrite').objectStore('jobs');
    const all = await new Promise<Record<string, unknown>[]>((resolve) => {
      const request = store.getAll();
      request.onsuccess = () => resolve(request.result);
    });
    const record = all[0] ?? {};
    if (source === 'damage') store.put({ ...record, jobText: '{"vehicle": {' });
    if (source === 'newer') store.put({ ...record, schema: 99 });
    if (source === 'garbage') store.put({ id: 'garbage', nonsense: true });
    await new Promise((resolve) => (store.transaction.oncomplete = resolve));
    database.close();
  }, change);
}

describe('the job book', () => {
  it('has everything again after a reload, half-typed text and the answer too', async () => {
    const { page } = await bench.open();
    await startJob(page, 'Job 114', openShortRun);
    await page.getByRole('textbox', { name: 'Tires' }).fill('LT245/75R16');
    await page.getByRole('textbox', { name: 'Axle ratio' }).fill('3.4 or so');
    await page.reload();
    await title(page).waitFor();
    expect(await title(page).inputValue()).toBe('Job 114');
    expect(await page.getByRole('textbox', { name: 'Axle ratio' }).inputValue()).toBe('3.4 or so');
    await page.getByRole('textbox', { name: 'Axle ratio' }).fill('3.73');
    await page.getByRole('textbox', { name: 'Road speed' }).fill('62 mph');
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await waitForAnswer(page);
    const answer = await page.locator('#answer').textContent();
    await saved(page);
    await page.reload();
    await waitForAnswer(page);
    expect(await page.locator('#answer').textContent()).toBe(answer);
  });

  it('keeps the last key stroke of a tab that is closed at once', async () => {
    const { page, context } = await bench.open();
    await startJob(page, 'before');
    await title(page).fill('last words');
    await page.close({ runBeforeUnload: false });
    const { page: again } = await bench.openIn(context);
    await again.getByRole('button', { name: /last words/u }).click();
    expect(await title(again).inputValue()).toBe('last words');
    await again.getByText('40 s ·').waitFor();
  });

  it('lists, searches, deletes and takes back', async () => {
    const { page, complaints } = await bench.open();
    await startJob(page, 'Truck that hums');
    await page.getByRole('button', { name: 'New job' }).click();
    await startJob(page, 'Van that shakes');
    await page.getByRole('link', { name: 'Job book' }).click();
    await page.getByText('2 jobs').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('searchbox', { name: 'Search' }).fill('shakes');
    await page.getByText('1 job', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Delete: Van that shakes' }).click();
    await page.getByText('Van that shakes was deleted.').waitFor();
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByRole('button', { name: 'Delete: Van that shakes' }).waitFor();
    await page.getByRole('searchbox', { name: 'Search' }).fill('hums');
    await page.getByRole('button', { name: 'Open: Truck that hums' }).click();
    expect(await title(page).inputValue()).toBe('Truck that hums');
    expect(complaints).toEqual([]);
  });

  it('says of the open job that it was deleted, here and in another tab; the next change brings it back', async () => {
    const { page, context, complaints } = await bench.open();
    await startJob(page, 'Truck that hums');
    const { page: other } = await bench.openIn(context);
    await other.getByRole('button', { name: /Truck that hums/u }).click();
    await saved(other);
    // A tab behind another draws, and so lets itself be pressed, but once a second.
    await page.bringToFront();
    await page.getByRole('link', { name: 'Job book' }).click();
    const remove = page.getByRole('button', { name: 'Delete: Truck that hums' });
    const deleted = (tab: Page) => tab.getByText('Not saved: deleted from the job book').waitFor();
    await remove.click();
    await deleted(page);
    await deleted(other);
    await page.getByRole('button', { name: 'Take back' }).click();
    await saved(page);
    await saved(other);
    await remove.click();
    await deleted(page);
    await page.getByRole('link', { name: 'Road test' }).click();
    await title(page).fill('Truck that hums loudly');
    await saved(page);
    expect(await page.getByText('another tab').count()).toBe(0);
    await page.getByRole('link', { name: 'Job book' }).click();
    await page.getByText('1 job', { exact: true }).waitFor();
    await page
      .getByRole('button', { name: /Truck that hums loudly/u })
      .first()
      .waitFor();
    expect(complaints).toEqual([]);
  });

  it('begins without a job that was deleted while it was open, once the page is loaded again', async () => {
    const { page } = await bench.open();
    await startJob(page, 'Truck that hums');
    await page.getByRole('link', { name: 'Job book' }).click();
    await page.getByRole('button', { name: 'Delete: Truck that hums' }).click();
    await page.getByText('Not saved: deleted').waitFor();
    await page.reload();
    await page.getByText('No jobs yet').waitFor();
    await page.getByRole('link', { name: 'Road test' }).click();
    expect(await title(page).count()).toBe(0);
  });

  it('saves a job with its recordings as one file that opens elsewhere', async () => {
    const { page } = await bench.open();
    await startJob(page, 'To go');
    await page.getByRole('link', { name: 'Job book' }).click();
    await page.getByRole('textbox', { name: 'Note', exact: true }).fill('Joint greased');
    await page.getByRole('button', { name: 'Add a note' }).click();
    await page.getByText('Joint greased').waitFor();
    await saved(page);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as one file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('To go.perrev.zip');
    const { page: other } = await bench.open();
    const buffer = readFileSync(await download.path());
    await other.setInputFiles('input[type=file]', [{ name: 'To go.perrev.zip', mimeType: 'application/zip', buffer }]);
    expect(await title(other).inputValue()).toBe('To go');
    await other.getByText('40 s ·').waitFor();
    // Its history came along, and nothing in it is said twice.
    await other.getByRole('link', { name: 'Job book' }).click();
    const history = other.getByRole('region', { name: 'From complaint to proof' }).getByRole('listitem');
    await history.getByText('Joint greased').waitFor();
    expect(await history.locator('p').allTextContents()).toEqual([
      'Job begun',
      'Recording added: joint-replaced-cruise.csv',
      'Joint greased',
    ]);
  });

  it('undoes and redoes, also what was typed', async () => {
    const { page } = await bench.open();
    await startJob(page, 'first');
    await page.getByRole('radio', { name: 'Front drive' }).check({ force: true });
    await page.getByRole('textbox', { name: 'Final drive' }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('textbox', { name: 'Axle ratio' }).waitFor();
    await page.getByRole('button', { name: 'Redo' }).click();
    await page.getByRole('textbox', { name: 'Final drive' }).waitFor();
  });

  it('with two tabs: a change shows in the other, and edits in both end as two jobs, neither lost', async () => {
    const { page: one, context } = await bench.open();
    await startJob(one, 'shared');
    const { page: two } = await bench.openIn(context);
    await two.getByRole('button', { name: /shared/u }).click();
    await two.getByText('40 s ·').waitFor();
    await saved(two);
    await title(one).fill('shared, changed');
    await saved(one);
    await two.getByText('Changed in another tab').waitFor();
    expect(await title(two).inputValue()).toBe('shared, changed');

    // Both typed before either was told: the second to save becomes a job of its own.
    await two.evaluate(() => {
      BroadcastChannel.prototype.postMessage = () => undefined;
    });
    await title(two).fill('from two');
    await saved(two);
    await title(one).fill('from one');
    await one.getByText('kept as a job of its own').waitFor();
    await one.getByRole('link', { name: 'Job book' }).click();
    await one.getByRole('button', { name: 'Open: from two' }).waitFor();
    await one.getByText('from one (from another tab)').first().waitFor();
  });

  it('says when the store is full, keeps what it had, and goes on', () =>
    withProfileOnDisk(async (context) => {
      const devtools = await context.newCDPSession(await context.newPage());
      const { origin } = new URL(bench.server.url);
      // The browser's own quota, set before the store is first used: room for one recording, not for two.
      await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 500_000 });
      const { page } = await bench.openIn(context);
      await startJob(page, 'small');
      await openRecordings(page, 'coast-down.csv');
      await page.getByText('store is full').waitFor();
      await page.getByText('Save the job as one file now').waitFor();
      await page.getByText('Not saved').waitFor();
      // What was kept before is still there for another tab.
      const { page: other } = await bench.openIn(context, '#job-book');
      await other.getByRole('button', { name: 'Open: small' }).waitFor();
      await other.close();
      await devtools.send('Storage.overrideQuotaForOrigin', { origin });
      await title(page).fill('saved after all');
      await saved(page);
      await page.reload();
      await page.getByText('44 s ·').waitFor();
      expect(await title(page).inputValue()).toBe('saved after all');
    }));

  it.each([
    ['damage', 'not a job file'],
    ['newer', 'newer version'],
    ['garbage', 'damaged'],
  ])('a record with %s does not stop the others: it says “%s”', async (change, words) => {
    const { page, context } = await bench.open();
    await startJob(page, 'good');
    if (change !== 'garbage') {
      await page.getByRole('button', { name: 'New job' }).click();
      await startJob(page, 'other');
    }
    await page.close();
    const { page: again } = await bench.openIn(context, '#job-book');
    await again
      .getByRole('button', { name: /^Open: / })
      .first()
      .waitFor();
    await meddle(again, change);
    await again.reload();
    await again.getByText(words).first().waitFor();
    expect(await again.getByRole('button', { name: /^Open: / }).count()).toBe(1);
    expect(await axeViolations(again)).toEqual([]);
  });
});
