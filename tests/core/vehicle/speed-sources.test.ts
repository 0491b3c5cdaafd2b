import { describe, expect, test } from 'vitest';
import { leastTrueOverShown, readingStepMps, speedPrior } from '../../../src/core/vehicle/speed-sources.ts';
import type { SpeedPrior } from '../../../src/core/vehicle/speed-sources.ts';
import type { RunCondition } from '../../../src/core/vehicle/vehicle.ts';
import { mpsFromKmh, mpsFromMph } from '../../../src/core/units.ts';

const priorOf = (condition: RunCondition): SpeedPrior => {
  const prior = speedPrior(condition);
  if (prior === null) throw new Error('no prior');
  return prior;
};
const dial = (kmh: number): SpeedPrior => priorOf({ speedMps: mpsFromKmh(kmh), speedSource: 'dial' });

describe('a dial reads high, by at most a tenth and 4 km/h (UN R39 §5.3)', () => {
  // Shown 50: true from (50 − 4)/1.1 = 41.818 km/h, and so on.
  test.each([
    [50, 41.818],
    [80, 69.091],
    [100, 87.273],
    [120, 105.455],
  ])('shown %d km/h may be %d km/h', (shown, least) => {
    expect(leastTrueOverShown(mpsFromKmh(shown)) * shown).toBeCloseTo(least, 3);
  });

  test('the expected true speed lies below the shown one, inside the legal window', () => {
    for (const shown of [20, 50, 80, 100, 120, 200]) {
      const { centreRelative, sdRelative } = dial(shown);
      expect(centreRelative).toBeLessThan(1);
      expect(centreRelative).toBeGreaterThan(leastTrueOverShown(mpsFromKmh(shown)));
      expect(sdRelative).toBeGreaterThan(0.02);
    }
    // A quarter of the 12.73 % window at 100 km/h.
    expect(dial(100).centreRelative).toBeCloseTo(1 - 0.127273 / 4, 6);
  });

  test('both ends of the window are within the limits of the prior, with the reading on top', () => {
    const { lower = 1, upper = 1 } = dial(100);
    expect(lower).toBeLessThan(0.87273);
    expect(lower).toBeGreaterThan(0.8);
    expect(upper).toBeGreaterThan(1);
    expect(upper).toBeLessThan(1.15);
  });

  test('a speed below 4 km/h still has a prior', () => {
    const { centreRelative, lower = 0 } = dial(3);
    expect(centreRelative).toBeCloseTo(0.75, 9);
    expect(lower).toBeGreaterThan(0);
  });
});

describe('how finely a person read it', () => {
  test.each([
    ['60 mph', mpsFromMph(60), mpsFromMph(5)],
    ['62 mph', mpsFromMph(62), mpsFromMph(1)],
    ['100 km/h', mpsFromKmh(100), mpsFromKmh(10)],
    ['97 km/h', mpsFromKmh(97), mpsFromMph(1)],
  ])('%s', (_, mps, step) => {
    expect(readingStepMps(mps)).toBeCloseTo(step, 12);
  });

  test('a speed on a mark of the dial is less certain than one between', () => {
    const onMark = priorOf({ speedMps: mpsFromMph(60), speedSource: 'dial' });
    const between = priorOf({ speedMps: mpsFromMph(61), speedSource: 'dial' });
    expect(onMark.sdRelative).toBeGreaterThan(between.sdRelative);
  });
});

describe('other sources are taken as they are', () => {
  const at100 = (speedSource: NonNullable<RunCondition['speedSource']>): SpeedPrior =>
    priorOf({ speedMps: mpsFromKmh(100), speedSource });

  test('satellite speed: no less than 0.367 % at 100 km/h (0.2 m/s per axis at 95 %, NAVSTAR guide), no more than 0.8 %', () => {
    expect(at100('gps').centreRelative).toBe(1);
    expect(at100('gps').sdRelative).toBeGreaterThan(0.003673);
    expect(at100('gps').sdRelative).toBeLessThan(0.008);
  });
  test('diagnostic socket: no less than its 1 km/h step, 0.2887 % at 100 km/h (SAE J1979)', () => {
    expect(at100('obd').sdRelative).toBeGreaterThan(0.002887);
    expect(at100('obd').sdRelative).toBeLessThan(0.015);
  });
  test('a logged speed is the surest, an unknown source no surer than a dial but not shifted', () => {
    const unknown = priorOf({ speedMps: mpsFromKmh(100) });
    expect(at100('logged').sdRelative).toBeLessThan(at100('obd').sdRelative);
    expect(unknown.centreRelative).toBe(1);
    expect(unknown.sdRelative).toBeGreaterThan(0.03);
  });
  test('the slower, the less certain', () => {
    for (const speedSource of ['gps', 'obd', 'dial'] as const) {
      const slow = priorOf({ speedMps: mpsFromKmh(23), speedSource }).sdRelative;
      expect(slow).toBeGreaterThan(priorOf({ speedMps: mpsFromKmh(123), speedSource }).sdRelative);
    }
  });
  test('every source says why', () => {
    for (const speedSource of ['gps', 'obd', 'dial', 'logged'] as const) {
      expect(at100(speedSource).because).toMatch(/^[A-Z].*\.$/u);
    }
  });
});

test('without a speed, or standing, there is no prior', () => {
  expect(speedPrior({})).toBeNull();
  expect(speedPrior({ speedMps: 0 })).toBeNull();
  expect(speedPrior({ speedMps: NaN })).toBeNull();
  expect(speedPrior({ speedMps: -20 })).toBeNull();
});
