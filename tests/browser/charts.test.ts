import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenedPage, useBrowser } from './support/browser.ts';
import { openDemo } from './support/tasks.ts';

const bench = useBrowser();

const layers = (page: Page): Locator => page.getByRole('slider', { name: /^Cursor/u });

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const boxOf = async (layer: Locator): Promise<Box> => {
  await layer.scrollIntoViewIfNeeded();
  const box = await layer.boundingBox();
  if (!box) throw new Error('the picture is not on the screen');
  return box;
};

/** Frequencies that a picture shows from edge to edge, read off its own cursor. */
async function edges(page: Page, layer: Locator): Promise<[number, number]> {
  const { x, y, width, height } = await boxOf(layer);
  const at = async (px: number): Promise<number> => {
    await page.mouse.move(px, y + height / 2);
    return Number(await layer.getAttribute('aria-valuenow'));
  };
  return [await at(x + 1), await at(x + width - 2)];
}

describe('the pictures of one run', () => {
  let opened: OpenedPage;
  beforeAll(async () => {
    opened = await bench.open();
    await openDemo(opened.page, /joint replacement/iu);
  });

  it('are linked: pointed at in one, the frequency is marked in all and read as orders', async () => {
    const { page, complaints } = opened;
    const [spectrum, map] = [layers(page).nth(0), layers(page).nth(1)];
    const { x, y, width, height } = await boxOf(map);
    await page.mouse.move(x + 0.4 * width, y + 0.5 * height);
    const hz = Number(await map.getAttribute('aria-valuenow'));
    expect(Number(await spectrum.getAttribute('aria-valuenow'))).toBe(hz);
    const mark = (layer: Locator): Promise<number> =>
      layer.locator('i').evaluate((line) => Math.round(line.getBoundingClientRect().left));
    expect(await mark(spectrum)).toBe(await mark(map));
    expect(await page.locator('.readout').first().textContent()).toMatch(
      /Hz.*felt level \d.*rpm.*driveshaft \d+\.\d+×/su,
    );
    await page.mouse.move(5, 5);
    expect(await spectrum.locator('i').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it('zoom by a drawn stretch and by the wheel, pan by Shift, all together', async () => {
    const { page } = opened;
    const [spectrum, map] = [layers(page).nth(0), layers(page).nth(1)];
    const [from, to] = await edges(page, spectrum);
    const { x, y, width, height } = await boxOf(spectrum);
    const middle = y + height / 2;
    await page.mouse.move(x + 0.25 * width, middle);
    await page.mouse.down();
    await page.mouse.move(x + 0.5 * width, middle, { steps: 4 });
    await page.mouse.up();
    const [left, right] = await edges(page, spectrum);
    const pixelHz = (to - from) / width;
    expect(Math.abs(left - (from + 0.25 * (to - from)))).toBeLessThan(3 * pixelHz);
    expect(Math.abs(right - (from + 0.5 * (to - from)))).toBeLessThan(3 * pixelHz);
    const [mapLeft, mapRight] = await edges(page, map);
    expect(Math.abs(mapLeft - left) + Math.abs(mapRight - right)).toBeLessThan(4 * pixelHz);

    const again = await boxOf(spectrum);
    const level = again.y + again.height / 2;
    await page.keyboard.down('Shift');
    await page.mouse.move(again.x + 0.5 * width, level);
    await page.mouse.down();
    await page.mouse.move(again.x + 0.6 * width, level, { steps: 4 });
    await page.mouse.up();
    await page.keyboard.up('Shift');
    const [panned] = await edges(page, spectrum);
    expect(Math.abs(panned - (left - 0.1 * (right - left)))).toBeLessThan(3 * pixelHz);

    // The wheel scrolls the page until the picture was chosen; then it zooms where it stands.
    await spectrum.focus();
    await page.mouse.move(again.x + 0.5 * width, (await boxOf(spectrum)).y + 40);
    await page.mouse.wheel(0, -400);
    const [near, far] = await edges(page, spectrum);
    expect((far - near) / (right - left)).toBeLessThan(0.8);
    await page.getByRole('button', { name: 'Show all' }).first().click();
    expect((await edges(page, spectrum))[1]).toBeCloseTo(to, 0);
  });

  it('question a peak that is pointed at: why this part, and why not another', async () => {
    const { page } = opened;
    const spectrum = layers(page).nth(0);
    const [from, to] = await edges(page, spectrum);
    const { x, y, width, height } = await boxOf(spectrum);
    const row = page.getByRole('row', { name: /driveshaft 1×/u }).first();
    const hz = Number(/(\d+\.\d+)/u.exec((await row.textContent()) ?? '')?.[1]);
    await page.mouse.click(x + (width * (hz - from)) / (to - from), y + 0.5 * height);
    const panel = page.locator('section', { has: page.getByText(/^This peak:/u) }).last();
    await panel.waitFor();
    expect(await panel.textContent()).toMatch(/driveshaft 1×/u);
  });

  it('by keyboard move a cursor, step to peaks and zoom', async () => {
    const { page } = opened;
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
