import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { expectedLines, linesAt } from '../../../src/core/vehicle/expected-lines.ts';
import type { ExpectedLinesOptions } from '../../../src/core/vehicle/expected-lines.ts';
import type { ExpectedLines, Line } from '../../../src/core/vehicle/line.ts';
import type { RunCondition, Vehicle } from '../../../src/core/vehicle/vehicle.ts';
import { without } from './without.ts';
import { mpsFromKmh } from '../../../src/core/units.ts';
import { must } from '../../support/must.ts';

const linesOf = (vehicle: Vehicle, condition: RunCondition, options?: ExpectedLinesOptions): ExpectedLines =>
  must(expectedLines(vehicle, condition, options));
const lineOf = (expected: ExpectedLines, label: string): Line => {
  const found = expected.lines.filter((line) => line.label === label);
  const [line] = found;
  if (line === undefined || found.length > 1) {
    throw new Error(`${found.length} × "${label}" among ${expected.lines.map((one) => one.label).join(', ')}`);
  }
  return line;
};
const labels = (expected: ExpectedLines): string[] => expected.lines.map((line) => line.label);

const tire = { kind: 'size', size: '205/55R16' } as const;
const rear: Vehicle = { layout: 'rear-drive', tire, axleRatio: 3.73, cylinders: 8, converter: false };
const at100: RunCondition = { speedMps: mpsFromKmh(100), speedSource: 'gps', load: 'cruise' };

describe('frequencies at 100 km/h on 205/55R16 (kinematic identities; values computed apart from this program)', () => {
  test('rear drive, axle 3.73, gear 0.69, lock-up closed', () => {
    const expected = linesOf(rear, { ...at100, gearRatio: 0.69 });
    expect(expected.wheelHz).toBeCloseTo(14.412831340182889, 10);
    expect(expected.engineHz).toBeCloseTo(37.0943040202287, 10);
    expect(expected.engineTiedToRoad).toBe(true);
    expect(expected.engineTurnsPerWheelTurn).toBeCloseTo(3.73 * 0.69, 12);
    for (const [label, hz] of [
      ['tire 1×', 14.412831340182889],
      ['tire 2×', 28.825662680365777],
      ['tire 3×', 43.238494020548664],
      ['tire 4×', 57.651325360731555],
      ['driveshaft 1×', 53.759860898882174],
      ['driveshaft 2×', 107.51972179776435],
      ['driveshaft 4×', 215.0394435955287],
      ['engine ½×', 18.54715201011435],
      ['engine 1×', 37.0943040202287],
      ['engine 1½×', 55.64145603034305],
      ['engine 4× (firing)', 148.3772160809148],
      ['engine 8× (firing)', 296.7544321618296],
    ] as const) {
      expect(lineOf(expected, label).frequencyHz, label).toBeCloseTo(hz, 9);
    }
  });

  test('front drive, final drive 3.94, gear 0.81: no driveshaft, half-shafts turn with the wheel', () => {
    const expected = linesOf(
      { layout: 'front-drive', tire, finalDrive: 3.94, cylinders: 4 },
      { ...at100, gearRatio: 0.81 },
    );
    expect(expected.engineHz).toBeCloseTo(45.99711, 6);
    expect((expected.engineHz ?? 0) * 60).toBeCloseTo(2759.827, 3);
    expect(lineOf(expected, 'half-shaft 3×').frequencyHz).toBeCloseTo(43.238494, 6);
    expect(labels(expected).join()).not.toContain('driveshaft');
  });

  test('electric, reduction 9.04, three pole pairs', () => {
    const expected = linesOf({ layout: 'electric', tire, finalDrive: 9.04, polePairs: 3 }, at100);
    expect(lineOf(expected, 'motor 1×').frequencyHz).toBeCloseTo(130.291995, 6);
    expect(lineOf(expected, 'motor 2×').frequencyHz).toBeCloseTo(260.58399, 5);
    expect(lineOf(expected, 'motor 3× (electrical)').frequencyHz).toBeCloseTo(390.875986, 6);
    expect(lineOf(expected, 'motor 18× (electrical)').frequencyHz).toBeCloseTo(2345.256, 3);
    expect(lineOf(expected, 'motor 1×')).toMatchObject({ part: 'engine', name: 'motor', group: 'engine' });
    expect(lineOf(expected, 'motor 3× (electrical)').role).toBe('electric');
    expect(labels(expected).join()).not.toMatch(/engine|firing|driveshaft/u);
  });

  test('transfer case in low range at 20 km/h, 2.72, gear 4.17: driveshaft as ever, engine 7317 rpm', () => {
    const expected = linesOf(
      { ...rear, layout: 'four-wheel-drive', transferRatio: 2.72 },
      { speedMps: mpsFromKmh(20), speedSource: 'gps', gearRatio: 4.17 },
    );
    expect(expected.wheelHz).toBeCloseTo(2.882566, 6);
    expect(lineOf(expected, 'driveshaft 1×').frequencyHz).toBeCloseTo(10.751972, 6);
    expect((expected.engineHz ?? 0) * 60).toBeCloseTo(7317.19, 2);
  });

  test('pinion mesh of 41 over 11 teeth, where 3.73 is the ratio rounded', () => {
    const expected = linesOf({ ...rear, pinionTeeth: 11, ringTeeth: 41 }, at100);
    expect(lineOf(expected, 'driveshaft 1×').frequencyHz).toBeCloseTo(53.720553, 6);
    const mesh = lineOf(expected, 'driveshaft 11× (gear mesh)');
    expect(mesh.frequencyHz).toBeCloseTo(590.926085, 6);
    expect(mesh.role).toBe('mesh');
    expect(mesh.perTurn).toBeCloseTo(41, 12);
  });

  test('tooth counts that contradict the ratio leave the ratio as it was entered', () => {
    const expected = linesOf({ ...rear, axleRatio: 4.1, pinionTeeth: 11, ringTeeth: 41 }, at100);
    expect(lineOf(expected, 'driveshaft 1×').perTurn).toBe(4.1);
  });

  test('tooth counts alone make the ratio; the ring gear alone makes the mesh', () => {
    const bare = without(rear, 'axleRatio');
    const byTeeth = linesOf({ ...bare, pinionTeeth: 11, ringTeeth: 41 }, at100);
    expect(lineOf(byTeeth, 'driveshaft 1×').perTurn).toBeCloseTo(41 / 11, 12);
    const ringOnly = linesOf({ layout: 'front-drive', tire, finalDrive: 3.94, ringTeeth: 67 }, at100);
    expect(lineOf(ringOnly, 'half-shaft 67× (gear mesh)').frequencyHz).toBeCloseTo(67 * 14.412831340182889, 8);
  });

  test('an alternator on a 165 over 58 mm pulley pair turns 2.844828 times the crankshaft', () => {
    const accessories = [{ name: 'alternator', ratio: 165 / 58 }];
    const expected = linesOf({ ...rear, accessories }, { ...at100, engineRpm: 1800 });
    const line = lineOf(expected, 'alternator 1×');
    expect(line).toMatchObject({ part: 'accessory', name: 'alternator', order: 1, group: 'engine' });
    expect(line.frequencyHz).toBeCloseTo(85.344828, 6);
  });

  test('four-wheel drive has a front driveshaft by its own ratio, or by the rear one', () => {
    const same = linesOf({ ...rear, layout: 'four-wheel-drive' }, at100);
    expect(lineOf(same, 'front driveshaft 1×').frequencyHz).toBe(lineOf(same, 'driveshaft 1×').frequencyHz);
    const other = linesOf({ ...rear, layout: 'four-wheel-drive', frontAxleRatio: 3.9 }, at100);
    expect(lineOf(other, 'front driveshaft 2×').frequencyHz).toBeCloseTo(2 * 3.9 * 14.412831340182889, 9);
    // Both axles quoted as 3.73: the rear's 41 over 11 teeth, 3.727, must not part the two shafts.
    const teeth = { pinionTeeth: 11, ringTeeth: 41, axleRatio: 3.73, frontAxleRatio: 3.73 };
    const quoted = linesOf({ ...rear, ...teeth, layout: 'four-wheel-drive' }, at100);
    expect(lineOf(quoted, 'front driveshaft 1×').frequencyHz).toBe(lineOf(quoted, 'driveshaft 1×').frequencyHz);
    expect(lineOf(other, 'front driveshaft 2×')).toMatchObject({ part: 'driveshaft', name: 'front driveshaft' });
    expect(labels(linesOf(rear, at100)).join()).not.toContain('front');
  });
});

describe('which engine orders are expected', () => {
  const orders = (cylinders: number | undefined): number[] => {
    const bare = without(rear, 'cylinders');
    const vehicle = cylinders === undefined ? bare : { ...bare, cylinders };
    return linesOf(vehicle, { engineRpm: 2000 })
      .lines.filter((line) => line.part === 'engine')
      .map((line) => line.order);
  };
  test.each([
    [3, [0.5, 1, 1.5, 2, 2.5, 3, 4]],
    [4, [0.5, 1, 1.5, 2, 2.5, 3, 4]],
    [5, [0.5, 1, 1.5, 2, 2.5, 3, 4, 5]],
    [6, [0.5, 1, 1.5, 2, 2.5, 3, 4, 6]],
    [8, [0.5, 1, 1.5, 2, 2.5, 3, 4, 8]],
    [10, [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 10]],
    [12, [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 12]],
    [undefined, [0.5, 1, 1.5, 2, 2.5, 3, 4]],
  ])('of %s cylinders', (cylinders, expected) => {
    expect(orders(cylinders)).toEqual(expected);
  });

  test.each([
    [3, [1.5, 3]],
    [4, [2, 4]],
    [5, [2.5, 5]],
    [6, [3, 6]],
    [8, [4, 8]],
  ])('with %d cylinders firing and its double are marked', (cylinders, firing) => {
    const lines = linesOf({ ...rear, cylinders }, { engineRpm: 2000 }).lines;
    expect(lines.filter((line) => line.role === 'firing').map((line) => line.order)).toEqual(firing);
  });

  test('without the number of cylinders none is marked as firing', () => {
    const bare = without(rear, 'cylinders');
    expect(linesOf(bare, { engineRpm: 2000 }).lines.some((line) => line.role === 'firing')).toBe(false);
  });
});

describe('what can be had from what is known', () => {
  test('engine speed alone gives engine lines only', () => {
    const expected = linesOf({ layout: 'rear-drive', cylinders: 4 }, { engineRpm: 2225.658 });
    expect(expected).toMatchObject({ wheelHz: null, wheelRelativeSd: 0, engineTiedToRoad: false });
    expect(new Set(expected.lines.map((line) => line.group))).toEqual(new Set(['engine']));
    expect(lineOf(expected, 'engine ½×').frequencyHz).toBeCloseTo(18.547152, 5);
  });
  test('without gear and engine speed there are road lines only', () => {
    const expected = linesOf(rear, at100);
    expect(expected).toMatchObject({ engineHz: null, engineRelativeSd: 0, engineTurnsPerWheelTurn: null });
    expect(new Set(expected.lines.map((line) => line.group))).toEqual(new Set(['road']));
  });
  test('without the axle ratio there are tire lines only', () => {
    expect(labels(linesOf({ layout: 'rear-drive', tire }, at100))).toEqual([
      'tire 1×',
      'tire 2×',
      'tire 3×',
      'tire 4×',
    ]);
  });
  test('in neutral or standing the gear does not drive the engine', () => {
    for (const load of ['neutral', 'standing'] as const) {
      expect(linesOf(rear, { ...at100, gearRatio: 0.69, load }).engineHz).toBeNull();
      expect(linesOf(rear, { ...at100, gearRatio: 0.69, load, engineRpm: 700 }).engineHz).toBeCloseTo(700 / 60, 12);
    }
  });
  test('an engine speed that is given wins over the gear, and its own slip shows: 2.80968 %', () => {
    const expected = linesOf(rear, { ...at100, gearRatio: 0.69, engineRpm: 2290 });
    const turbine = (expected.wheelHz ?? 0) * (expected.engineTurnsPerWheelTurn ?? 0);
    expect(1 - turbine / (expected.engineHz ?? 0)).toBeCloseTo(0.0280968, 7);
    expect(expected.engineTiedToRoad).toBe(false);
  });
  test('one gear ratio alone is the gear in use', () => {
    expect(linesOf({ ...rear, gearRatios: [0.69] }, at100).engineHz).toBeCloseTo(37.0943040202287, 9);
    expect(linesOf({ ...rear, gearRatios: [1, 0.69] }, at100).engineHz).toBeNull();
  });
  test('where nothing can be computed the remedy says what to give', () => {
    const result = expectedLines({ layout: 'rear-drive' }, {});
    expect(result.ok ? '' : result.problem.code).toBe('no-lines');
    expect(result.ok ? '' : result.problem.message).toBe(
      'Not one expected frequency can be computed: neither wheel nor engine speed is known.',
    );
    expect(result.ok ? '' : result.problem.remedy).toMatch(
      /^Give the road speed: .*Give the tire size: .*engine speed/u,
    );
  });
  test('a tire that cannot be read is refused, not left out', () => {
    const result = expectedLines({ ...rear, tire: { kind: 'size', size: '265/70' } }, { ...at100, engineRpm: 2000 });
    expect(result.ok ? '' : result.problem.code).toBe('tire-size');
  });
});

describe('uncertainty', () => {
  test('it is the root-sum-square of its shares, times the frequency', () => {
    const expected = linesOf({ ...rear, converter: true }, { ...at100, gearRatio: 0.69 });
    for (const line of expected.lines) {
      const { speed, circumference, slip, engine } = line.uncertainty;
      expect(line.frequencySdHz).toBeCloseTo(line.frequencyHz * Math.hypot(speed, circumference, slip, engine), 12);
    }
    const wheel = lineOf(expected, 'tire 1×').uncertainty;
    expect(wheel.circumference).toBe(0.012);
    expect(wheel.slip).toBe(0.003);
    expect(wheel.engine).toBe(0);
    expect(expected.wheelRelativeSd).toBeCloseTo(Math.hypot(wheel.speed, 0.012, 0.003), 12);
    const crank = lineOf(expected, 'engine 1×').uncertainty;
    expect({ ...crank, engine: 0 }).toEqual(wheel);
    expect(crank.engine).toBeGreaterThan(0.01);
    expect(expected.engineRelativeSd).toBeCloseTo(Math.hypot(crank.speed, 0.012, 0.003, crank.engine), 12);
  });
  test('a clutch, an electric motor and a locked gear add nothing; a converter does, more under pull', () => {
    const engineShare = (vehicle: Vehicle, condition: RunCondition): number =>
      linesOf(vehicle, condition).lines.find((line) => line.part === 'engine')?.uncertainty.engine ?? NaN;
    const geared = { ...at100, gearRatio: 1 };
    const unknown = without(rear, 'converter');
    expect(engineShare(rear, geared)).toBe(0);
    expect(engineShare({ layout: 'electric', tire, finalDrive: 9.04 }, at100)).toBe(0);
    const converter = engineShare({ ...rear, converter: true }, geared);
    expect(converter).toBeCloseTo(0.03 / Math.sqrt(3), 12);
    expect(engineShare(unknown, geared)).toBeLessThan(converter);
    expect(engineShare(unknown, geared)).toBeGreaterThan(0.005);
    expect(engineShare({ ...rear, converter: true }, { ...geared, load: 'pull' })).toBeGreaterThan(converter);
  });
  test('an engine speed read to the nearest hundred is less certain than one off a screen, a logged one surest', () => {
    const sd = (engineRpm: number, engineLogged?: boolean): number =>
      linesOf(rear, { engineRpm }, engineLogged === undefined ? {} : { engineLogged }).engineRelativeSd;
    // 100/√12 rev/min of 2000 is 1.44 %.
    expect(sd(2000)).toBeGreaterThan(0.0144);
    expect(sd(2050)).toBeLessThan(sd(2000));
    expect(sd(2053)).toBeLessThan(sd(2050));
    expect(sd(2000, true)).toBe(0.002);
  });
  test('slip counts more under pull and braking, and not where the speed itself is counted from turning parts', () => {
    const slip = (condition: RunCondition): number => linesOf(rear, condition).lines[0]?.uncertainty.slip ?? NaN;
    expect(slip({ ...at100, load: 'pull' })).toBeGreaterThan(slip(at100));
    expect(slip({ ...at100, load: 'brake' })).toBeGreaterThan(slip(at100));
    // The values are judgment; a change should be made on purpose.
    const loads = ['cruise', 'pull', 'coast', 'neutral', 'brake'] as const;
    expect(loads.map((load) => slip({ ...at100, load }))).toEqual([0.003, 0.01, 0.003, 0.002, 0.01]);
    expect(slip({ ...at100, speedSource: 'obd' })).toBe(0);
  });
  test('a dial shifts all road lines down together', () => {
    const byDial = linesOf(rear, { ...at100, speedSource: 'dial' });
    const byGps = linesOf(rear, at100);
    const ratio = (byDial.wheelHz ?? 0) / (byGps.wheelHz ?? 1);
    expect(ratio).toBeCloseTo(1 - 0.127273 / 4, 6);
    expect(lineOf(byDial, 'driveshaft 2×').frequencyHz / lineOf(byGps, 'driveshaft 2×').frequencyHz).toBeCloseTo(
      ratio,
      12,
    );
  });
});

describe('lines above half the sampling rate', () => {
  test('driveshaft 2× at 107.5197 Hz shows at 7.5197 Hz when sampled at 100 Hz, 1× at 3.7599 Hz when at 50 Hz', () => {
    const at100Hz = linesOf(rear, at100, { samplingRateHz: 100 });
    expect(lineOf(at100Hz, 'driveshaft 2×')).toMatchObject({ visibility: 'above-half-rate' });
    expect(lineOf(at100Hz, 'driveshaft 2×').aliasHz).toBeCloseTo(7.5197, 4);
    expect(lineOf(at100Hz, 'tire 3×')).not.toHaveProperty('aliasHz');
    expect(lineOf(at100Hz, 'tire 3×').visibility).toBe('below-half-rate');
    expect(lineOf(linesOf(rear, at100, { samplingRateHz: 50 }), 'driveshaft 1×').aliasHz).toBeCloseTo(3.7599, 4);
  });
  test('without a rate every line counts as visible', () => {
    expect(linesOf(rear, at100).lines.every((line) => line.visibility === 'below-half-rate')).toBe(true);
  });
});

describe('the same lines at other speeds', () => {
  const expected = linesOf({ ...rear, converter: true }, { ...at100, gearRatio: 0.69 }, { samplingRateHz: 100 });
  const { wheelHz, engineHz } = expected;

  test('at the speeds they came from they are unchanged', () => {
    expect(linesAt(expected.lines, wheelHz, engineHz, 100)).toEqual(expected.lines);
  });
  test('each group follows its own speed, and visibility is judged anew', () => {
    const slower = linesAt(expected.lines, (wheelHz ?? 0) / 4, engineHz, 100);
    for (const [index, line] of slower.entries()) {
      const before = expected.lines[index];
      const factor = line.group === 'road' ? 0.25 : 1;
      expect(line.frequencyHz).toBeCloseTo((before?.frequencyHz ?? 0) * factor, 10);
      expect(line.frequencySdHz).toBeCloseTo((before?.frequencySdHz ?? 0) * factor, 10);
    }
    const twice = slower.find((line) => line.label === 'driveshaft 2×');
    expect(twice).toMatchObject({ visibility: 'below-half-rate' });
    expect(twice).not.toHaveProperty('aliasHz');
  });
  test('a group without a speed is left out', () => {
    expect(linesAt(expected.lines, null, engineHz).every((line) => line.group === 'engine')).toBe(true);
    expect(linesAt(expected.lines, wheelHz, null).every((line) => line.group === 'road')).toBe(true);
  });
});

describe('properties', () => {
  const number = fc.option(fc.oneof(fc.double({ min: 0.1, max: 60, noNaN: true }), fc.double()), { nil: undefined });
  const defined = <T extends object>(object: T): T =>
    Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as T;
  const vehicles = fc
    .record({
      layout: fc.constantFrom('rear-drive', 'front-drive', 'four-wheel-drive', 'electric'),
      tire: fc.option(fc.constantFrom(tire, { kind: 'rolling-circumference', circumferenceM: 2 }), { nil: undefined }),
      axleRatio: number,
      frontAxleRatio: number,
      finalDrive: number,
      transferRatio: number,
      cylinders: fc.option(fc.integer({ min: -2, max: 20 }), { nil: undefined }),
      converter: fc.option(fc.boolean(), { nil: undefined }),
      pinionTeeth: number,
      ringTeeth: number,
      polePairs: number,
      accessories: fc.option(fc.array(fc.record({ name: fc.string(), ratio: fc.double() })), { nil: undefined }),
    })
    .map((vehicle) => defined(vehicle) as Vehicle);
  const conditions = fc
    .record({
      speedMps: number,
      speedSource: fc.option(fc.constantFrom('dial', 'gps', 'obd', 'logged'), { nil: undefined }),
      gearRatio: number,
      engineRpm: fc.option(fc.double({ min: -10, max: 8000 }), { nil: undefined }),
      load: fc.option(fc.constantFrom('cruise', 'pull', 'coast', 'neutral', 'brake', 'standing'), { nil: undefined }),
    })
    .map((condition) => defined(condition) as RunCondition);

  test('whatever is missing or impossible, lines are positive and finite or there is a reason', () => {
    fc.assert(
      fc.property(vehicles, conditions, fc.option(fc.double(), { nil: undefined }), (vehicle, condition, rate) => {
        const result = expectedLines(vehicle, condition, rate === undefined ? {} : { samplingRateHz: rate });
        if (!result.ok) {
          expect(result.problem.remedy.length).toBeGreaterThan(10);
          return;
        }
        expect(result.value.lines.length).toBeGreaterThan(0);
        for (const line of result.value.lines) {
          const groupHz = line.group === 'road' ? result.value.wheelHz : result.value.engineHz;
          expect(line.frequencyHz).toBeGreaterThan(0);
          expect(line.frequencyHz).toBeCloseTo(line.perTurn * (groupHz ?? NaN), 3);
          expect(line.frequencySdHz).toBeGreaterThan(0);
          if (line.aliasHz !== undefined) expect(line.aliasHz).toBeLessThanOrEqual((rate ?? 0) / 2);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('no two lines of a run share their label', () => {
    fc.assert(
      fc.property(vehicles, conditions, (vehicle, condition) => {
        const rest = without(vehicle, 'accessories');
        const result = expectedLines(rest, condition);
        const all = result.ok ? labels(result.value) : [];
        expect(new Set(all).size).toBe(all.length);
      }),
      { numRuns: 200 },
    );
  });
});
