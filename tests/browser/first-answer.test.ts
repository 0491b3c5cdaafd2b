import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PHONE, useBrowser } from './support/browser.ts';
import { openShortRun } from './support/short-job.ts';
import { openDemo, openRecordings, overflowPx, recordingPath, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

describe('from a file to the answer', () => {
  it('a new vehicle is typed the way people type it', async () => {
    const { page, complaints } = await bench.open();
    await openShortRun(page);
    await page.getByRole('textbox', { name: 'Tires' }).fill('LT245/75 r16');
    await page.getByRole('textbox', { name: 'Axle ratio' }).fill('3,73');
    await page.getByRole('textbox', { name: 'Road speed' }).fill('62');
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await waitForAnswer(page);
    expect(await page.locator('#answer').textContent()).toMatch(/driveshaft 1×/iu);
    expect(complaints).toEqual([]);
  });

  it('opens a demo job with one click, on a phone too, where every control is at least 44 px high', async () => {
    const { page, complaints } = await bench.open(PHONE);
    await openDemo(page, /shake after a joint replacement/iu);
    expect(await page.locator('#answer').textContent()).toMatch(/driveshaft 1×/iu);
    expect(await overflowPx(page)).toBeLessThanOrEqual(0);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, summary, select, nav a, input:not(.visually-hidden)')]
        .filter((element) => element.checkVisibility() && element.getBoundingClientRect().height < 43.5)
        .map((element) => element.outerHTML.slice(0, 120)),
    );
    expect(small).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('says what is wrong in a field once it is left, and what it understood', async () => {
    const { page } = await bench.open();
    await openRecordings(page, 'joint-replaced-cruise.csv');
    const tires = page.getByRole('textbox', { name: 'Tires' });
    await tires.fill('265/70 r17');
    await tires.blur();
    expect(await tires.inputValue()).toBe('265/70R17');
    const axle = page.getByRole('textbox', { name: 'Axle ratio' });
    await axle.fill('banana');
    await axle.blur();
    expect(await axle.getAttribute('aria-invalid')).toBe('true');
    await page.getByRole('button', { name: 'Diagnose' }).click();
    expect(await page.locator('.told').textContent()).toMatch(/axle ratio/iu);
  });

  it('says why a file without acceleration cannot be used, and lets it be removed', async () => {
    const { page } = await bench.open();
    await page.setInputFiles('input[type=file]', [
      { name: 'gyro.csv', mimeType: 'text/csv', buffer: Buffer.from(gyroscopeOnly()) },
    ]);
    const problem = page.locator('.problem').first();
    await problem.waitFor();
    expect(await problem.textContent()).toMatch(/acceleration/iu);
    await page.getByRole('button', { name: /^Remove/u }).click();
    expect(await page.locator('.problem').count()).toBe(0);
  });
});

describe('files opened together', () => {
  it('two jobs: each has its own recordings, one is shown and the other is in the job book', async () => {
    const { page, complaints } = await bench.open();
    const [comeback, joint] = ['comeback', 'joint-replaced'];
    const runs = [`${comeback}-cruise.csv`, `${comeback}-pull.csv`, `${comeback}-proof.csv`, `${joint}-cruise.csv`];
    await openRecordings(page, ...runs, `${comeback}.job.json`, `${joint}.job.json`);
    await page.getByText('Also opened and put into the job book: Monday: shake after a joint replacement.').waitFor();
    const remove = page.getByRole('button', { name: /^Remove / });
    expect(await remove.count()).toBe(3);
    await page.getByRole('link', { name: 'Job book' }).click();
    await page.getByRole('button', { name: 'Open: Monday: shake after a joint replacement' }).click();
    await page.getByText(/joint-replaced-cruise\.csv · 40\ss/u).waitFor();
    expect(await remove.count()).toBe(1);
    expect(complaints).toEqual([]);
  });

  it('a damaged job: said at the top before anything is made or kept, and the recording can be opened without it', async () => {
    const { page, complaints } = await bench.open();
    const job = readFileSync(recordingPath('joint-replaced.job.json'), 'utf8').replace(
      /"axleRatio": [^,]+/u,
      '"axleRatio": "three"',
    );
    await page.setInputFiles('input[type=file]', [
      { name: 'damaged.job.json', mimeType: 'application/json', buffer: Buffer.from(job) },
      { name: 'run.csv', mimeType: 'text/csv', buffer: readFileSync(recordingPath('joint-replaced-cruise.csv')) },
    ]);
    const told = page.getByRole('alert');
    await told.getByText('The job file was not opened').waitFor();
    expect(await told.textContent()).toContain('Axle ratio: “three” is not a ratio.');
    expect(await page.getByText('Saved in this browser').count()).toBe(0);
    await told.getByRole('button', { name: 'Open the recording without it' }).click();
    await page.getByText('Saved in this browser').waitFor();
    expect(await told.count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

function gyroscopeOnly(): string {
  const rows = Array.from({ length: 500 }, (_, index) => `${(index / 100).toFixed(2)},0.1,0.2,0.1`);
  return `time (s),gyro x (rad/s),gyro y (rad/s),gyro z (rad/s)\n${rows.join('\n')}\n`;
}
