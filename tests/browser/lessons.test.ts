import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';

const bench = useBrowser();

const LESSONS = [
  'how-an-order-is-born',
  'lines-that-move',
  'one-joint-and-two',
  'two-near-lines',
  'sampled-too-slowly',
  'weights-as-vectors',
  'build-a-fault',
];

/** The value beside a name under 'What the numbers say'. */
const figure = async (page: Page, name: string | RegExp): Promise<string> =>
  (await page.locator('dl > div').filter({ hasText: name }).first().locator('dd').textContent()) ?? '';

async function openLesson(page: Page, id: string): Promise<void> {
  await page.goto(`${bench.server.url}#lessons/${id}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
}

describe('the lessons', () => {
  it('are found from the screens, one after the other, and fetched only then', async () => {
    const { page, complaints } = await bench.open();
    const before = bench.server.requests.length;
    await page.getByRole('link', { name: 'Lessons' }).click();
    await page.getByRole('link', { name: 'How an order is born' }).click();
    await page.getByRole('heading', { name: 'How an order is born' }).waitFor();
    for (const title of ['Lines that move', 'One joint and two', 'Two near lines', 'Sampled too slowly']) {
      await page.getByRole('link', { name: /Next/u }).click();
      await page.getByRole('heading', { name: title, level: 1 }).waitFor();
    }
    expect(bench.server.requests.slice(before).some((path) => path.includes('OrderBirth'))).toBe(true);
    expect(complaints).toEqual([]);
  });

  it('have a big type for the projector', async () => {
    const { page } = await bench.open({ hash: '#lessons/two-near-lines' });
    const size = (): Promise<number> =>
      page.evaluate(() => parseFloat(getComputedStyle(document.querySelector('h1') ?? document.body).fontSize));
    await page.getByRole('heading', { level: 1 }).waitFor();
    const before = await size();
    await page.getByRole('button', { name: 'Projector' }).click();
    expect(await size()).toBeGreaterThan(1.3 * before);
  });
});

describe('by keyboard', () => {
  it('every lesson but the last answers an arrow on its first slider, in figures and picture', async () => {
    const { page } = await bench.open({ hash: '#lessons' });
    for (const id of LESSONS.slice(0, -1)) {
      await openLesson(page, id);
      const slider = page.locator('main input[type=range]').first();
      await slider.focus();
      const shown = (): Promise<string> =>
        page.evaluate(() => {
          const drawn = [...document.querySelectorAll('main svg *')].map((part) => part.outerHTML);
          return [document.querySelector('main dl')?.textContent, ...drawn].join();
        });
      const [value, before] = [await slider.inputValue(), await shown()];
      await page.keyboard.press('ArrowRight');
      expect(await slider.inputValue(), id).not.toBe(value);
      await expect.poll(shown, { message: id }).not.toBe(before);
    }
  });

  it('a slider moves the lines, and the order stays', async () => {
    const { page } = await bench.open({ hash: '#lessons/how-an-order-is-born' });
    await page.getByRole('slider', { name: 'Shaft speed' }).focus();
    await page.keyboard.press('End');
    expect(await figure(page, 'Line driveshaft 1×')).toBe('60.0\u00a0Hz ÷ 60.0\u00a0Hz = 1.00×');
    expect(await figure(page, 'Line driveshaft 2×')).toBe('120.0\u00a0Hz ÷ 60.0\u00a0Hz = 2.00×');
  });

  it('the gear moves the engine only', async () => {
    const { page } = await bench.open({ hash: '#lessons/lines-that-move' });
    await page.getByRole('button', { name: /^Keep/u }).click();
    const [shaft, engine] = [await figure(page, 'Driveshaft turns'), await figure(page, 'Engine turns')];
    await page.getByRole('slider', { name: 'Gear' }).focus();
    await page.keyboard.press('ArrowLeft');
    expect(await figure(page, 'Driveshaft turns')).toBe(shaft);
    expect(await figure(page, 'Engine turns')).not.toBe(engine);
    await page.getByRole('slider', { name: 'Axle ratio' }).fill('3');
    expect(await figure(page, 'tire 3× and driveshaft 1×')).toBe('by no length of run');
  });

  it('joints are turned by steps, cancel, and add', async () => {
    const { page } = await bench.open({ hash: '#lessons/one-joint-and-two' });
    expect(await figure(page, 'Second joint')).toBe('cancels the first');
    const angle = page.getByRole('slider', { name: 'Shaft angle' });
    await page.getByRole('button', { name: 'Turn 15°' }).press('Enter');
    expect(await angle.inputValue()).toBe('35');
    await page.getByRole('button', { name: 'Equal, quarter turn out' }).press('Enter');
    expect(await figure(page, 'Second joint')).toBe('adds to the first');
  });

  it('nothing turns by itself, and with reduced motion it cannot be made to', async () => {
    const { page } = await bench.open({ hash: '#lessons/one-joint-and-two' });
    const angle = page.getByRole('slider', { name: 'Shaft angle' });
    await page.getByRole('button', { name: 'Let it turn' }).waitFor();
    await page.waitForTimeout(300);
    expect(await angle.inputValue()).toBe('20');
    await page.getByRole('button', { name: 'Let it turn' }).press('Enter');
    await expect.poll(() => angle.inputValue()).not.toBe('20');
    const still = await bench.open({ hash: '#lessons/one-joint-and-two', reducedMotion: 'reduce' });
    await still.page.getByRole('button', { name: 'Turn 15°' }).waitFor();
    expect(await still.page.getByRole('button', { name: 'Let it turn' }).count()).toBe(0);
  });

  it('the circles tell where the clamp belongs', async () => {
    const { page } = await bench.open({ hash: '#lessons/weights-as-vectors' });
    await page.getByRole('button', { name: 'Set the clamp there' }).press('Enter');
    expect(await figure(page, 'Level with your clamp')).toBe('0.00 mm/s');
  });
});
