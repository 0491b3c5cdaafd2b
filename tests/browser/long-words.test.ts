import { expect, it } from 'vitest';
import { texts } from '../../src/app/texts.ts';
import { PHONE, useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { go, unfold } from './support/tasks.ts';

const bench = useBrowser();
const LONG = 'W'.repeat(120);

it('a long word without a blank, wherever it was written, does not widen the screen of a phone', async () => {
  const { page, complaints } = await bench.open(PHONE);
  const over: string[] = [];
  const look = async (where: string): Promise<void> => {
    await unfold(page);
    const px = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (px > 0) over.push(`${where}: ${px} px`);
  };
  await openShortJob(page, 'joint-replaced');
  await page.getByRole('button', { name: texts.sheet.editVehicle }).click();
  await unfold(page);
  const write = (label: string): Promise<void> =>
    page.getByRole('textbox', { name: label, exact: true }).first().fill(LONG);
  await write(texts.form.description);
  await write(texts.form.complaint);
  await write(texts.form.jobTitle);
  await write(texts.form.fields.runName.label);
  await page.getByRole('textbox', { name: texts.form.fields.accessories.label, exact: true }).fill(`${LONG} 2.8`);
  await look('form');
  await page.getByRole('button', { name: texts.form.again }).click();
  await page.locator('#answer').waitFor();
  await look('answer');
  await go(page, 'job-book');
  await page.getByRole('textbox', { name: texts.book.note, exact: true }).fill(LONG);
  await page.getByRole('button', { name: texts.book.addNote }).click();
  await page.locator('ol').getByText(LONG).waitFor();
  await look('job book');
  for (const screen of ['measurements', 'before-and-after']) {
    await go(page, screen);
    await look(screen);
  }
  await page.locator('#print-menu').click();
  await page.getByRole('button', { name: texts.frame.printCustomer }).click();
  await page.getByRole('button', { name: texts.print.close }).waitFor();
  await look('paper for the customer');
  expect(over).toEqual([]);
  expect(complaints).toEqual([]);
});
