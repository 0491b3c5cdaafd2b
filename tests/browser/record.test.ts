import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { PHONE, useBrowser } from './support/browser.ts';
import { axeViolations } from './support/tasks.ts';

const bench = useBrowser();
const HASH = '#road-test/record';
/** A list of grants refuses all that is not in it: the motion sensor must be named beside the place. */
const ALLOWED = { ...PHONE, permissions: ['geolocation', 'accelerometer', 'gyroscope', 'screen-wake-lock'] };

/** A device that lies flat and shakes up and down at 12 Hz, heard of about 60 times a second. */
const shake = (page: Page): Promise<void> =>
  page.evaluate(() => {
    setInterval(() => {
      const z = 9.81 + 0.6 * Math.sin((2 * Math.PI * 12 * performance.now()) / 1000);
      const accelerationIncludingGravity = { x: 0.05, y: 0.1, z };
      dispatchEvent(new DeviceMotionEvent('devicemotion', { accelerationIncludingGravity, interval: 16 }));
    }, 16);
  });

/** Notes whether the page holds the screen on. */
const watchScreenLock = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { wakeLock } = navigator;
    const request = wakeLock.request.bind(wakeLock);
    wakeLock.request = async (type) => {
      const lock = await request(type);
      document.documentElement.dataset.screenLock = 'screen kept on';
      lock.addEventListener('release', () => (document.documentElement.dataset.screenLock = 'let go'));
      return lock;
    };
  });
const screenLock = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.screenLock);

const live = async (page: Page, name: string): Promise<string> =>
  (await page.locator('dl > div').filter({ hasText: name }).locator('dd').textContent()) ?? '';

/** Seconds recorded so far, as the page shows them. */
const recordedS = async (page: Page): Promise<number> =>
  Number(
    /(\d+) s/u.exec(
      (await page
        .getByText(/samples/u)
        .first()
        .textContent()) ?? '',
    )?.[1] ?? 0,
  );

describe('recording with the device', () => {
  it('goes from the start screen over level check and countdown into a run with road speed', async () => {
    const { page, context, complaints } = await bench.open(ALLOWED);
    const devtools = await context.newCDPSession(page);
    const drive = (speed: number): Promise<unknown> =>
      devtools.send('Emulation.setGeolocationOverride', { latitude: 44, longitude: -103, accuracy: 5, speed });
    await drive(27);
    await page.getByRole('link', { name: 'Record with this device' }).click();
    await page.getByRole('heading', { name: 'Record with this device' }).waitFor();
    await page.getByText(/The passenger records, the driver drives/u).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await shake(page);
    await watchScreenLock(page);
    await page.getByRole('button', { name: 'Use the sensor' }).click();
    const record = page.getByRole('button', { name: 'Record', exact: true });
    await expect.poll(() => record.isEnabled()).toBe(true);
    expect(await live(page, 'Level')).toBe('level');
    expect(await live(page, 'Measured rate')).toMatch(/^\d\d a second$/u);
    await expect.poll(() => live(page, 'Road speed')).toMatch(/^60\smph$/u);
    expect(await axeViolations(page)).toEqual([]);
    await record.click();
    await page.getByText(/Recording begins in \d s/u).waitFor();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    for (let speed = 27; (await recordedS(page)) < 11; speed += 0.02) await drive(speed);
    expect(await axeViolations(page)).toEqual([]);
    expect(await screenLock(page)).toBe('screen kept on');
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Use it as a run' }).click();
    await expect.poll(() => screenLock(page)).toBe('let go');
    await page
      .getByText(/\b\d\d\ss\s·/u)
      .first()
      .waitFor();
    expect(await page.getByRole('textbox', { name: 'Road speed' }).count()).toBe(0);
    expect(await page.locator('.problem').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it('says at once when it was stopped too soon', async () => {
    const { page } = await bench.open({ ...PHONE, hash: HASH });
    await shake(page);
    await page.getByRole('checkbox').uncheck();
    await page.getByRole('button', { name: 'Use the sensor' }).click();
    expect(await live(page, 'Road speed')).toBe('not recorded');
    const record = page.getByRole('button', { name: 'Record', exact: true });
    await expect.poll(() => record.isEnabled()).toBe(true);
    await record.click();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page
      .getByRole('alert')
      .getByText(/too short/u)
      .waitFor();
  });

  it('says when no reading comes', async () => {
    const { page } = await bench.open({ hash: HASH });
    await page.getByRole('button', { name: 'Use the sensor' }).click();
    await page
      .getByRole('alert')
      .getByText(/No reading came/u)
      .waitFor();
    expect(await axeViolations(page)).toEqual([]);
  });

  it('says when the sensor or the place is not allowed', async () => {
    const { page } = await bench.open({ ...PHONE, hash: HASH });
    await page.evaluate(() => {
      Object.assign(DeviceMotionEvent, { requestPermission: () => Promise.resolve('denied') });
    });
    await page.getByRole('button', { name: 'Use the sensor' }).click();
    await page
      .getByRole('alert')
      .getByText(/was not allowed/u)
      .waitFor();
    await page.evaluate(() => {
      Object.assign(DeviceMotionEvent, { requestPermission: () => Promise.resolve('granted') });
    });
    await shake(page);
    await page.getByRole('button', { name: 'Use the sensor' }).click();
    await expect.poll(() => live(page, 'Road speed')).toMatch(/not allowed|gives none/u);
  });

  it('offers no recording in a browser without a motion sensor', async () => {
    const { page } = await bench.open();
    await page.evaluate(() => Reflect.deleteProperty(globalThis, 'DeviceMotionEvent'));
    await page.getByRole('link', { name: 'Record with this device' }).click();
    await page
      .getByRole('alert')
      .getByText(/no motion sensor/u)
      .waitFor();
    expect(await page.getByRole('button', { name: 'Use the sensor' }).count()).toBe(0);
  });

  it('lets the sensor go when the screen is left', async () => {
    const { page } = await bench.open({ ...PHONE, hash: HASH });
    await page.evaluate(() => {
      const counted = { on: 0 };
      Object.assign(globalThis, { counted });
      const [add, remove] = [globalThis.addEventListener, globalThis.removeEventListener];
      globalThis.addEventListener = ((type: string, ...rest: [EventListener]) => {
        if (type === 'devicemotion') counted.on += 1;
        add.call(globalThis, type, ...rest);
      }) as typeof globalThis.addEventListener;
      globalThis.removeEventListener = ((type: string, ...rest: [EventListener]) => {
        if (type === 'devicemotion') counted.on -= 1;
        remove.call(globalThis, type, ...rest);
      }) as typeof globalThis.removeEventListener;
    });
    const listening = (): Promise<number> =>
      page.evaluate(() => (globalThis as unknown as { counted: { on: number } }).counted.on);
    await page.getByRole('button', { name: 'Use the sensor' }).click();
    await expect.poll(listening).toBe(1);
    await page.getByRole('link', { name: 'Back to the road test' }).click();
    await expect.poll(listening).toBe(0);
  });
});
