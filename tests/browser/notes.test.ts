import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { SHORT_RUN } from './support/short-job.ts';
import { axeViolations, recordingPath, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

const NOTES = 'Customer waits.\n<img src=x onerror="document.title=\'owned\'"> & <b>bold</b>';

describe('the notes of a job file', () => {
  it('stand on the answer sheet and in print letter by letter, can be changed, and are kept', async () => {
    const { page, complaints } = await bench.open();
    const job = JSON.parse(readFileSync(recordingPath('joint-replaced.job.json'), 'utf8')) as object;
    await page.setInputFiles('input[type=file]', [
      {
        name: 'a.job.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify({ ...job, notes: NOTES })),
      },
      SHORT_RUN,
    ]);
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await waitForAnswer(page);
    const notes = page.getByRole('textbox', { name: 'Notes' });
    expect(await notes.inputValue()).toBe(NOTES);
    expect(await axeViolations(page)).toEqual([]);
    await notes.fill(`${NOTES}\nCalled back.`);
    await page.getByText('Saved in this browser').waitFor();
    // The notes change nothing the answer stands on.
    expect(await page.getByText('changed since this answer').count()).toBe(0);
    await page.locator('summary', { hasText: /^Print$/u }).click();
    await page.getByRole('button', { name: 'All pages for the file' }).click();
    const printed = page.locator('.paper p', { hasText: 'Customer waits.' });
    expect(await printed.textContent()).toBe(`${NOTES}\nCalled back.`);
    expect(await page.locator('.paper img[src="x"]').count()).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
    // The paper has an address of its own.
    await page.goBack();
    await page.reload();
    await waitForAnswer(page);
    expect(await notes.inputValue()).toBe(`${NOTES}\nCalled back.`);
    expect(complaints).toEqual([]);
  });
});
