import { Buffer } from 'node:buffer';
import { expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { SHORT_RUN_LENGTH, openShortRun } from './support/short-job.ts';
import { axeEverywhere, openRecordings, waitForAnswer } from './support/tasks.ts';

const bench = useBrowser();

it('a word of the trade on the vehicle form is told by keyboard, and the form stays free of barriers', async () => {
  const { page, complaints } = await bench.open();
  await openRecordings(page, 'joint-replaced-cruise.csv');
  await page.getByRole('button', { name: 'What is “Axle ratio”?' }).press('Enter');
  const told = page.getByRole('dialog', { name: 'Axle ratio' });
  await told.waitFor();
  expect(await told.textContent()).toContain('ring gear teeth divided by pinion teeth');
  await page.keyboard.press('Escape');
  await told.waitFor({ state: 'hidden' });
  // The mark beside the label takes nothing from the field: the label still leads into it.
  await page.getByText('Axle ratio', { exact: true }).first().click();
  await page.keyboard.type('3,73');
  expect(await page.getByRole('textbox', { name: 'Axle ratio', exact: true }).inputValue()).toBe('3,73');
  await page.getByText('Work done before the complaint').click();
  await page.getByRole('button', { name: 'What is “Companion flange”?' }).waitFor();
  expect(await axeEverywhere(page, 'job form')).toEqual([]);
  expect(complaints).toEqual([]);
});

it('a recording without unit and gravity is refused, and read once its unit is chosen', async () => {
  const { page, complaints } = await bench.open();
  const rows = Array.from({ length: 2000 }, (_, i) => `${i / 200},${Math.sin(1.7 * i)},${Math.cos(2.3 * i)},0.01`);
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'taken-out.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(`t,x,y,z\n${rows.join('\n')}\n`),
    });
  await page.getByText('or give the unit by hand').waitFor();
  const unit = page.getByRole('combobox', { name: 'Unit of acceleration' });
  await unit.selectOption('m/s²');
  await page.getByText(/^10(?:\.0)?\s*s\s*·\s*200\s*Hz\s*·\s*3 axes$/u).waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await unit.count()).toBe(0);
  expect(complaints).toEqual([]);
});

it('a measurement form tells each word once, and asks only what the chosen place needs', async () => {
  const { page, complaints } = await bench.open({ hash: '#/measurements/runout' });
  await page.getByRole('button', { name: 'What is “Whole movement of the dial”?' }).waitFor();
  const material = page.getByRole('combobox', { name: 'Wheel made of' });
  expect(await material.count()).toBe(0);
  await page.getByRole('combobox', { name: 'Where', exact: true }).selectOption({ label: 'Wheel, radially' });
  await material.waitFor();
  await page.goto(`${bench.server.url}#/measurements/working-angles`);
  await page.getByRole('heading', { name: 'Working angles' }).waitFor();
  expect(await page.getByRole('button', { name: 'What is “Sideways angle”?' }).count()).toBe(1);
  expect(await page.getByRole('textbox', { name: /^Sideways/u }).count()).toBe(3);
  expect(complaints).toEqual([]);
});

it('whether there is a torque converter can be said, and is still there after a reload', async () => {
  const { page, complaints } = await bench.open();
  await openRecordings(page, 'joint-replaced-cruise.csv');
  await page.getByText('More about the vehicle').click();
  const converter = page.getByRole('combobox', { name: 'Torque converter' });
  await converter.selectOption('No');
  await page.getByRole('combobox', { name: /^Tripod inner joints/u }).selectOption('Yes');
  await page.getByText('Saved in this browser').waitFor();
  await page.reload();
  await page.getByText('More about the vehicle').click();
  expect(await converter.inputValue()).toBe('no');
  await page.getByText('Electric', { exact: true }).click();
  await converter.waitFor({ state: 'detached' });
  expect(await page.getByRole('combobox', { name: /^Tripod inner joints/u }).inputValue()).toBe('yes');
  expect(complaints).toEqual([]);
});

it('Enter in a field of the job form diagnoses; it neither takes the recording out nor opens the choice of files', async () => {
  const { page, complaints } = await bench.open();
  await openShortRun(page);
  await page.getByText(SHORT_RUN_LENGTH).waitFor();
  const speed = page.getByRole('textbox', { name: 'Road speed', exact: true });
  await speed.fill('fast');
  await speed.press('Enter');
  await page.getByText('To be put right first: Road speed.').waitFor();
  await page.getByText(SHORT_RUN_LENGTH).waitFor();
  await speed.fill('62 mph');
  await speed.press('Enter');
  await waitForAnswer(page);
  expect(complaints).toEqual([]);
});
