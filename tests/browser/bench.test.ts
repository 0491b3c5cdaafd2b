import { Buffer } from 'node:buffer';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { OpenedPage } from './support/browser.ts';
import { PHONE, useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { axeViolations } from './support/tasks.ts';

const bench = useBrowser();

/** The value beside a name among the figures of a result. */
const figure = async (page: Page, name: RegExp): Promise<string> =>
  ((await page.locator('dl > div').filter({ hasText: name }).first().locator('dd').textContent()) ?? '').replaceAll(
    '\u00a0',
    ' ',
  );

const fill = async (page: Page, group: string, texts: readonly (readonly [RegExp, string])[]): Promise<void> => {
  const fields = page.getByRole('group', { name: group, exact: true });
  for (const [label, text] of texts) await fields.getByRole('textbox', { name: label }).fill(text);
};

const openForm = async (page: Page, id: string): Promise<void> => {
  await page.goto(`${bench.server.url}#measurements/${id}`);
  await page.locator('#measure-title').waitFor();
};

const fillAngles = async (page: Page, pinion = '2.4'): Promise<void> => {
  await fill(page, 'Transmission', [[/^Slope/u, '3']]);
  await fill(page, 'Shaft', [
    [/^Slope/u, '6,2'],
    [/^Sideways/u, '1.5'],
  ]);
  await fill(page, 'Pinion', [[/^Slope/u, pinion]]);
};

const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => document.querySelectorAll('main details').forEach((part) => part.setAttribute('open', '')));

/** Nothing for axe to say, nothing wider than the screen, nothing complained of. */
async function expectSound({ page, complaints }: OpenedPage): Promise<void> {
  await unfold(page);
  expect(await axeViolations(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect(complaints).toEqual([]);
}

describe('working angles', () => {
  it('are worked out, moved by keyboard, and the least change is found and tried', async () => {
    const opened = await bench.open({ colorScheme: 'dark' });
    const { page } = opened;
    await openForm(page, 'working-angles');
    await fillAngles(page, '1.2');
    await page.getByText('What else is known').click();
    await page.getByLabel(/^Driveshaft speed/u).fill('3000 rpm');
    await page.getByText(/^Turn the axle by .* pinion nose up: leaves/u).waitFor();
    // The residual of the angles as measured, by the squared-angle rule: √|3.532² − 5.216²| within the turn of planes.
    expect(await figure(page, /^Left at the far end/u)).toMatch(/^3\.97°, 47\d rad\/s²$/u);
    const shim = page.getByRole('slider', { name: /^Axle shim/u });
    await shim.focus();
    for (let step = 0; step < 10; step++) await page.keyboard.press('ArrowRight');
    expect(await shim.getAttribute('aria-valuetext')).toBe('+1.0°');
    await page.getByText(/^Residual 3\.97°.* → /u).waitFor();
    await page.getByRole('button', { name: 'Try it' }).first().press('Enter');
    await page.getByText(/Everything that decides is then inside its limits/u).waitFor();
    await page.getByRole('button', { name: 'Back to as measured' }).click();
    await expectSound(opened);
  });

  it('are kept, and show how the causes of the complaint move', async () => {
    const opened = await bench.open();
    const { page } = opened;
    await openShortJob(page, 'joint-replaced');
    await openForm(page, 'rings');
    await fill(page, 'Axis 1', [
      [/^Groove to/u, '81.85 mm'],
      [/^Cross/u, '78.60 mm'],
      [/^Ring 1/u, '1,50 mm'],
      [/^Ring 2/u, '1.70 mm'],
    ]);
    const shift = page.locator('section:has(#shift-title) li').filter({ hasText: 'unequal retaining rings' });
    await shift.waitFor();
    const [before = 0, after = 0] = ((await shift.textContent()) ?? '').match(/\d+/gu)?.map(Number) ?? [];
    expect(after).toBeGreaterThan(before);
    await page.getByRole('button', { name: 'Keep this measurement' }).click();
    await page.getByText('Kept with the job').waitFor();
    const now = page.locator('section:has(#now-title) li').filter({ hasText: 'unequal retaining rings' });
    await expect.poll(() => now.textContent()).toContain(`${after}`);
    await page.getByRole('button', { name: 'Clear the form' }).click();
    await page.getByRole('button', { name: 'Open: Retaining rings and centering: front' }).click();
    await page.getByText('Kept with the job').waitFor();
    await expectSound(opened);
  });
});

describe('rings', () => {
  it('tell offset, unbalance and force, and which of those at hand to fit, on a phone', async () => {
    const opened = await bench.open(PHONE);
    const { page } = opened;
    await openForm(page, 'rings');
    await fill(page, 'Axis 1', [
      [/^Groove to/u, '81.85 mm'],
      [/^Cross/u, '78.60 mm'],
      [/^Ring 1/u, '1.55 mm'],
      [/^Ring 2/u, '1.65 mm'],
    ]);
    await page.getByText('What else is known').click();
    await page.getByLabel(/^Mass of the shaft piece/u).fill('9 kg');
    await page.getByLabel(/^Driveshaft speed/u).fill('3000');
    await page.getByLabel(/^Thicknesses/u).fill('1.55/1.60x2/1.65 mm');
    // 9 kg held 0.05 mm off center at one end: 150 + 75 g·mm, 65 % of the G 16 allowance of 229.2 g·mm a plane.
    expect(await figure(page, /^Unbalance at this joint/u)).toContain('(150 g·mm)');
    expect(await figure(page, /^Share of the allowance, here/u)).toBe('65 %');
    // 14.8 N over 4.448 N for a pound-force, 0.45359237 kg times 9.80665 m/s² by definition.
    expect(await figure(page, /^Force at this joint/u)).toBe('3.33 lbf (14.8 N)');
    await page.getByText(/^Axis 1: .*1\.600\smm\) at ring 1 and .*1\.600\smm\) at ring 2/u).waitFor();
    await expectSound(opened);
  });
});

describe('runout', () => {
  it('is told from ovality, and every bolt position foretold from what was kept', async () => {
    const opened = await bench.open();
    const { page } = opened;
    await openForm(page, 'runout');
    const read = async (place: string, offset: (degrees: number) => number): Promise<void> => {
      await page.getByLabel('Where').selectOption(place);
      for (let degrees = 0; degrees < 360; degrees += 45)
        await page.getByLabel(new RegExp(`^${degrees}°`, 'u')).fill(`${(0.5 + offset(degrees)).toFixed(6)} mm`);
    };
    const wave = (size: number, high: number) => (degrees: number) =>
      size * Math.cos(((degrees - high) * Math.PI) / 180);
    await read('companion-flange-radial', wave(0.05, 0));
    await page.getByRole('button', { name: 'Keep this measurement' }).click();
    // Flange 0.05 mm at 0° and shaft 0.05 mm at 90°: together 0.0707 mm; three of four bolts on they add up, one they cancel.
    const both = (degrees: number): number => wave(0.05, 0)(degrees) + wave(0.05, 90)(degrees);
    await read('tube-rear', both);
    await page.getByText('What else is known').click();
    await page.getByLabel(/^Bolts of the flange/u).fill('4');
    await page.getByText(/^Turn the shaft on by 1 of 4/u).waitFor();
    expect(await figure(page, /^Once round/u)).toContain('(0.141 mm)');
    const rows = await page.locator('tbody tr').allTextContents();
    expect(rows.map((row) => /\((0\.\d{3})\smm\)/u.exec(row)?.[1])).toEqual(['0.141', '0.000', '0.141', '0.200']);
    await expectSound(opened);
  });
});

describe('balancing', () => {
  /** 40 s at 200 Hz: driveshaft 1× at 50 Hz, a weak tire 1× at 12.5 Hz, noise. */
  function recording(amplitude: number): string {
    let seed = 4711;
    const uniform = (): number => (seed = (seed * 48271) % 2147483647) / 2147483647;
    const noise = (): number => 0.05 * (uniform() + uniform() + uniform() + uniform() - 2);
    const rows = Array.from({ length: 8000 }, (_, row) => {
      const turns = (row / 200) * 2 * Math.PI;
      const z = 9.81 + amplitude * Math.sin(50 * turns + 1) + 0.03 * Math.sin(12.5 * turns) + noise();
      return [(row / 200).toFixed(3), noise().toFixed(5), noise().toFixed(5), z.toFixed(5)].join();
    });
    return ['time (s),x (m/s²),y (m/s²),z (m/s²)', ...rows].join('\n');
  }

  it('takes the amplitudes out of recordings of the trial runs, and carries their uncertainty on', async () => {
    const opened = await bench.open();
    const { page } = opened;
    const vehicle = {
      layout: 'rear-drive',
      axleRatio: 4,
      tire: { kind: 'rolling-circumference', circumferenceM: 2 },
    };
    const runs = [{ file: 'complaint.csv', speedMps: 25, speedSource: 'gps' }];
    const job = { schemaVersion: 1, vehicle, work: [], runs, measurements: [] };
    const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
    const levels = [0.4, 0.5658349663, 0.6431792957, 0.1270873103];
    const [asFound = file('', ''), ...trials] = levels.map((level, run) =>
      file(run === 0 ? 'complaint.csv' : `run-${run}.csv`, recording(0.25 * level)),
    );
    await page.setInputFiles('input[type=file]', [file('a.job.json', JSON.stringify(job)), asFound]);
    await page.getByText('complaint.csv').first().waitFor();
    await openForm(page, 'balance-amplitudes');
    await page.getByLabel('Weights in').selectOption('g·mm');
    await page.getByRole('textbox', { name: 'Trial weight' }).fill('500 g·mm');
    for (const [index, angle] of ['0', '120', '240'].entries())
      await fill(page, `Position ${index + 1}`, [[/^Angle/u, angle]]);
    await page.getByRole('button', { name: 'Take complaint.csv as a trial run' }).click();
    await page.getByLabel('Choose recordings').setInputFiles(trials);
    await page.getByRole('button', { name: 'Read driveshaft 1×' }).click();
    await page.getByText(/^Levels of driveshaft 1× on axis z/u).waitFor({ timeout: 50_000 });
    // As it was put in: 666.67 g·mm at 253°.
    const answer = (await page.locator('.answer').textContent()) ?? '';
    const [, size = '', degrees = ''] = /\((\d+)\sg·mm\) at (\d+)° \(give or take/u.exec(answer) ?? [];
    expect(Math.abs(Number(size) - 667)).toBeLessThan(40);
    expect(Math.abs(Number(degrees) - 253)).toBeLessThan(4);
    await page.getByText('What else is known').click();
    await page.getByLabel(/^Two clamps of/u).fill('600 g·mm');
    await page.getByText(/^Two clamps, by their screws: .* at \d+° and /u).waitFor();
    await expectSound(opened);
  });

  it('with phase in two planes draws and tells the published correction', async () => {
    const opened = await bench.open({ ...PHONE, colorScheme: 'dark' });
    const { page } = opened;
    await openForm(page, 'balance-phasors');
    await page.getByLabel('Planes').selectOption('two');
    // MacCamhaoil, Static and Dynamic Balancing of Rigid Rotors, example 6.
    for (const [group, amplitude, phase] of [
      ['As found: sensor 1', '170', '112'],
      ['As found: sensor 2', '53', '78'],
      ['With it in plane 1: sensor 1', '235', '94'],
      ['With it in plane 1: sensor 2', '58', '68'],
      ['With it in plane 2: sensor 1', '185', '115'],
      ['With it in plane 2: sensor 2', '77', '104'],
    ] as const) {
      await fill(page, group, [
        [/^Amplitude/u, amplitude],
        [/^Phase/u, phase],
      ]);
    }
    for (const plane of [1, 2])
      await fill(page, `Trial weight in plane ${plane}`, [
        [/^Trial weight/u, '1.15 g'],
        [/^Angle/u, '0'],
      ]);
    await page.getByText(/^Plane 1: Add .*\(1\.98\sg\) at 236°/u).waitFor();
    await page.getByText(/^Plane 2: Add .*\(1\.07\sg\) at 122°/u).waitFor();
    await expectSound(opened);
  });
});

describe('critical speed', () => {
  it('is worked out from the tube, held to its limit, and the tube kept with the vehicle', async () => {
    const opened = await bench.open();
    const { page } = opened;
    await openForm(page, 'whirl');
    await fill(page, 'Piece 1', [
      [/^Joint to joint/u, '1524 mm'],
      [/^Tube/u, '3.5'],
      [/^Wall/u, '0.083'],
    ]);
    await page.getByLabel(/^Driveshaft speed at top speed/u).fill('5200');
    // 88.9 × 2.108 mm, 1524 mm, steel: 6396 rev/min by the formula, checked against Machinery's Handbook.
    expect(await figure(page, /^Critical speed/u)).toBe('6400 rpm');
    expect(await figure(page, /^At top speed/u)).toBe('81 % of critical, limit 75 %');
    await page.getByRole('button', { name: 'Keep the sizes with the vehicle' }).click();
    await page.getByText('Kept with the vehicle').waitFor();
    await expectSound(opened);
  });
});

describe('a word of the trade', () => {
  it('tells what it means, by keyboard, and where it comes from', async () => {
    const opened = await bench.open();
    const { page } = opened;
    await openForm(page, 'runout');
    const help = page.getByRole('button', { name: 'What is “Runout”?' });
    await help.press('Enter');
    const told = page.getByRole('dialog', { name: 'Runout' });
    await told.getByText(/under a dial in one turn/u).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await told.waitFor({ state: 'hidden' });
    await page.goto(`${bench.server.url}#lessons/words`);
    await page.getByRole('heading', { name: 'Words of the trade' }).waitFor();
    await expectSound(opened);
  });
});
