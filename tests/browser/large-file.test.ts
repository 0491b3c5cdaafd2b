import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { axeViolations } from './support/tasks.ts';

const bench = useBrowser();
const folder = mkdtempSync(join(tmpdir(), 'perrev-large-'));
const path = join(folder, 'large.csv');
const ROWS = 2_700_000;
/** After 373 turns of the driveshaft, 100 of the tire, both shakes are where they began. */
const ROWS_OF_PERIOD = 37_300;

/** About 100 MB: 4 kHz, three axes, driveshaft 1× at 40 Hz and tire 1× at one steady speed. */
beforeAll(() => {
  const shaken = Array.from({ length: ROWS_OF_PERIOD }, (_, row) => {
    const turns = (40 * row) / 4000;
    const shake = 0.3 * Math.sin(2 * Math.PI * turns) + 0.05 * Math.sin((2 * Math.PI * turns) / 3.73);
    return `${shake.toFixed(6)},${(0.1 - shake).toFixed(6)},${(9.81 + shake).toFixed(6)}\n`;
  });
  const parts = ['time (s),x (m/s2),y (m/s2),z (m/s2)\n'];
  for (let row = 0; row < ROWS; row++) parts.push(`${(row / 4000).toFixed(5)},${shaken[row % ROWS_OF_PERIOD]!}`);
  writeFileSync(path, parts.join(''));
});
afterAll(() => rmSync(folder, { recursive: true }));

interface TraceEvent {
  readonly name: string;
  /** Phase: 'I' of an instant, which no task is, whatever its name. */
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Begin on the clock, µs. */
  readonly ts: number;
  /** Time on the clock, and processor time of the thread where the trace knows it, µs. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/**
 * Longest task of any page's main thread, ms of its own processor time: what the page freezes for, without what
 * other programs take from it.
 */
function longestTaskMs(trace: Buffer): number {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: TraceEvent[] };
  const mains = traceEvents.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain');
  const isMain = (event: TraceEvent): boolean => mains.some(({ pid, tid }) => event.pid === pid && event.tid === tid);
  const tasks = traceEvents.filter((event) => event.name.endsWith('RunTask') && event.ph !== 'I' && isMain(event));
  expect(tasks.length).toBeGreaterThan(10);
  // A task that was cut off by the end of the trace has no length of its own.
  const endUs = traceEvents.reduce((last, { ts }) => Math.max(last, ts), 0);
  return Math.max(...tasks.map(({ ts, dur, tdur }) => (tdur ?? dur ?? endUs - ts) / 1000));
}

describe('a file of 100 MB', () => {
  it('is read to its end without freezing the page', async () => {
    const { page } = await bench.open();
    await bench.browser.startTracing(page, { categories: ['toplevel'] });
    await page.setInputFiles('input[type=file]', [path]);
    await page.getByRole('button', { name: 'Stop reading' }).waitFor();
    await page.getByText(/^11\smin · /u).waitFor();
    expect(longestTaskMs(await bench.browser.stopTracing())).toBeLessThan(100);
  });

  it('is diagnosed, and its pictures zoom and pan within a frame at the eye', async () => {
    const { page } = await bench.open();
    await page.setInputFiles('input[type=file]', [path]);
    await page.getByText(/^11\smin · /u).waitFor();
    await page.getByRole('textbox', { name: 'Tires' }).fill('265/70R17');
    await page.getByRole('textbox', { name: 'Axle ratio' }).fill('3.73');
    await page.getByRole('textbox', { name: 'Road speed' }).fill('60');
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await page.getByRole('heading', { name: 'Working on it' }).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await page.locator('#answer').waitFor();
    const spectrum = page.getByRole('slider', { name: /^Cursor/u }).first();
    await spectrum.focus();
    await bench.browser.startTracing(page, { categories: ['toplevel'] });
    for (const key of ['+', '+', '+', 'ArrowRight', '+', '-', '-', '0', '+', '+']) await page.keyboard.press(key);
    const box = (await spectrum.boundingBox())!;
    for (let step = 0; step < 20; step++) {
      await page.mouse.move(box.x + 200 + 10 * step, box.y + 100);
      await page.mouse.wheel(step % 4 === 3 ? 40 : 0, step % 2 === 0 ? -120 : 90);
    }
    expect(longestTaskMs(await bench.browser.stopTracing())).toBeLessThan(50);
  });

  it('stops being read at once when told to', async () => {
    const { page } = await bench.open();
    await page.setInputFiles('input[type=file]', [path]);
    await expect.poll(() => page.locator('.reading progress').getAttribute('value').then(Number)).toBeGreaterThan(0.1);
    const tookMs = await page.evaluate(async () => {
      const button = [...document.querySelectorAll('button')].find((one) => one.textContent?.trim() === 'Stop reading');
      const start = performance.now();
      button?.click();
      while (document.querySelector('.reading')) await new Promise((resolve) => setTimeout(resolve, 2));
      return performance.now() - start;
    });
    expect(tookMs).toBeLessThan(200);
  });

  it('would be told apart from a page that freezes', async () => {
    const { page } = await bench.open();
    await bench.browser.startTracing(page, { categories: ['toplevel'] });
    await page.evaluate(() => {
      const end = performance.now() + 1000;
      while (performance.now() < end);
    });
    expect(longestTaskMs(await bench.browser.stopTracing())).toBeGreaterThan(100);
  });
});
