import { describe, expect, it } from 'vitest';
import { PHONE, useBrowser } from './support/browser.ts';
import { axeViolations, openDemo, openRecordings } from './support/tasks.ts';

const bench = useBrowser();

describe('axe finds nothing', () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    it(`on the empty state, the form and the answer, ${colorScheme}`, async () => {
      const { page } = await bench.open({ colorScheme });
      await page.getByRole('button', { name: /joint replacement/iu }).waitFor();
      expect(await axeViolations(page)).toEqual([]);
      await openRecordings(page, 'joint-replaced-cruise.csv');
      await page.getByText('40 s ·').waitFor();
      expect(await axeViolations(page)).toEqual([]);
      await page.getByRole('button', { name: 'New job' }).click();
      await openDemo(page, /joint replacement/iu);
      expect(await axeViolations(page)).toEqual([]);
    });
  }

  it('on a phone, with every part of the answer unfolded', async () => {
    const { page } = await bench.open(PHONE);
    await openDemo(page, /joint replacement/iu);
    await page.evaluate(() =>
      document.querySelectorAll('main details').forEach((part) => part.setAttribute('open', '')),
    );
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('the pictures by keyboard', () => {
  it('move a cursor, step to peaks and zoom', async () => {
    const { page } = await bench.open();
    await openDemo(page, /joint replacement/iu);
    const cursor = page.getByRole('slider').first();
    await cursor.focus();
    await page.keyboard.press('ArrowRight');
    expect(await cursor.getAttribute('aria-valuetext')).toMatch(/Hz.*driveshaft .*×/u);
    await page.keyboard.press('Home');
    await page.keyboard.press('n');
    await page.getByText(/^This peak:/u).waitFor();
    const before = Number(await cursor.getAttribute('aria-valuenow'));
    await page.keyboard.press('n');
    expect(Number(await cursor.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
    const all = page.getByRole('button', { name: 'Show all' }).first();
    await page.keyboard.press('+');
    expect(await all.isEnabled()).toBe(true);
    await page.keyboard.press('0');
    expect(await all.isDisabled()).toBe(true);
  });
});

describe('on a phone', () => {
  it('every control is at least 44 px high', async () => {
    const { page } = await bench.open(PHONE);
    await openDemo(page, /joint replacement/iu);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, summary, select, nav a, input:not(.visually-hidden)')]
        .filter((element) => element.checkVisibility() && element.getBoundingClientRect().height < 43.5)
        .map((element) => element.outerHTML.slice(0, 120)),
    );
    expect(small).toEqual([]);
  });
});
