import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import * as q from '../../../src/core/quantity/quantity.ts';
import * as kinds from '../../../src/core/quantity/quantity-kinds.ts';
import type { Result } from '../../../src/core/note.ts';

const valueOf = (result: Result<number>): number => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const codeOf = (result: Result<unknown>): string => (result.ok ? 'read' : result.problem.code);

describe('quantities as people type them', () => {
  test.each([
    ['62 mph', 27.71648],
    ['62mph', 27.71648],
    ['62 MPH', 27.71648],
    ['62 m.p.h.', 27.71648],
    ['62 mi/h', 27.71648],
    ['100 km/h', 27.7777777778],
    ['100 km / h', 27.7777777778],
    ['100 kph', 27.7777777778],
    ['99,8 km/h', 27.7222222222],
    ['27.7 m/s', 27.7],
    ['10 kn', 5.1444444444],
    ['0 mph', 0],
  ])('the speed "%s"', (text, mps) => {
    expect(valueOf(q.parseSpeedMps(text))).toBeCloseTo(mps, 9);
  });

  test.each([
    ['2.36m', 2.36],
    ['2,36 m', 2.36],
    ['92.9 in', 2.35966],
    ['92 7/8 in', 2.359025],
    ['92-7/8"', 2.359025],
    ['7.75 ft', 2.3622],
    ['236 cm', 2.36],
    ['2360 mm', 2.36],
    ['2 360 mm', 2.36],
  ])('the length "%s" in meters', (text, metres) => {
    expect(valueOf(q.parseLengthM(text))).toBeCloseTo(metres, 9);
  });

  test.each([
    ['0.0019 in', 0.04826],
    ['2 thou', 0.0508],
    ['1/16 in', 1.5875],
    ['50 µm', 0.05],
    ['50 μm', 0.05],
    ['-0.5 mm', -0.5],
    ['−0.5 mm', -0.5],
  ])('the length "%s" in millimeters', (text, mm) => {
    expect(valueOf(q.parseLengthMm(text))).toBeCloseTo(mm, 9);
  });

  test('engine speed, frequency, mass, angle, torque, unbalance, acceleration and time in their usual units', () => {
    expect(valueOf(q.parseRpm('1850 rpm'))).toBe(1850);
    expect(valueOf(q.parseRpm('700 1/min'))).toBe(700);
    expect(valueOf(q.parseRpm('30 Hz'))).toBe(1800);
    expect(valueOf(q.parseFrequencyHz('1 kHz'))).toBe(1000);
    expect(valueOf(q.parseMassKg('20 lb'))).toBeCloseTo(9.0718474, 9);
    expect(valueOf(q.parseMassKg('25 g'))).toBeCloseTo(0.025, 12);
    expect(valueOf(q.parseAngleDeg('3,5°'))).toBe(3.5);
    expect(valueOf(q.parseAngleDeg('-2.4 deg'))).toBe(-2.4);
    expect(valueOf(q.parseTorqueNm('300 N·m'))).toBe(300);
    expect(valueOf(q.parseTorqueNm('100 lb-ft'))).toBeCloseTo(135.58179483, 7);
    expect(valueOf(q.parseTorqueNm('1200 lb·in'))).toBeCloseTo(135.58179483, 7);
    expect(valueOf(q.parseUnbalanceGmm('1 oz·in'))).toBeCloseTo(720.0778874, 6);
    expect(valueOf(q.parseAccelerationMps2('0.1 g'))).toBeCloseTo(0.980665, 9);
    expect(valueOf(q.parseAccelerationMps2('50 mg'))).toBeCloseTo(0.4903325, 9);
    expect(valueOf(q.parseTimeS('2 min'))).toBe(120);
    expect([' 2:20 ', '0:05', '75:00'].map((text) => valueOf(q.parseTimeS(text)))).toEqual([140, 5, 4500]);
    expect(q.parseTimeS('2:70').ok).toBe(false);
    expect(valueOf(q.parseRatio('3,73'))).toBe(3.73);
    expect(valueOf(q.parseRatio('3.73:1'))).toBe(3.73);
  });

  test('the default unit holds only where none is typed', () => {
    expect(valueOf(q.parseSpeedMps('62', 'mph'))).toBeCloseTo(27.71648, 9);
    expect(valueOf(q.parseSpeedMps('62', 'km/h'))).toBeCloseTo(17.2222222222, 9);
    expect(valueOf(q.parseSpeedMps('62 mph', 'km/h'))).toBeCloseTo(27.71648, 9);
  });
});

describe('comma and dot', () => {
  test('both signs together: the last is the decimal sign', () => {
    expect(valueOf(q.parseLengthMm('1,320.5 mm'))).toBe(1320.5);
    expect(valueOf(q.parseLengthMm('1.320,5 mm'))).toBe(1320.5);
  });
  test('one comma before three digits is read the only possible way', () => {
    expect(valueOf(q.parseRpm('1,850 rpm'))).toBe(1850);
    expect(valueOf(q.parseRpm('1.850 rpm'))).toBe(1850);
    expect(valueOf(q.parseLengthM('2,360 mm', undefined, { range: [0.7, 5] }))).toBe(2.36);
    expect(valueOf(q.parseRatio('3,730', { range: [1, 20] }))).toBe(3.73);
  });
  test('where two readings are possible the text is refused with both ways', () => {
    const result = q.parseLengthMm('1,320 mm');
    expect(codeOf(result)).toBe('two-readings');
    if (result.ok) return;
    expect(result.problem.message).toBe('"1,320 mm" can be read in two ways: 1.32 or 1320.');
    expect(result.problem.remedy).toBe('Write 1.32 or 1320 without the comma.');
  });
  test('a dot before three digits stays a decimal dot where that is possible', () => {
    expect(valueOf(q.parseLengthMm('1.320 mm'))).toBe(1.32);
  });
  test('digits that make no number are refused', () => {
    for (const text of ['1,2,3 mm', '1.2.3 mm', '1,5 200 mm', '12,34,567 mm', '1 85 mm']) {
      expect(q.parseLengthMm(text).ok, text).toBe(false);
    }
    expect(valueOf(q.parseLengthMm('12,345,678 µm'))).toBeCloseTo(12345.678, 9);
  });
});

test('a fraction under one is one of a ruler, and a share is a part of one', () => {
  expect(valueOf(q.parseLengthMm('7/8 in'))).toBeCloseTo(22.225, 9);
  expect(valueOf(q.parseLengthMm('92 7/8 in'))).toBeCloseTo(2359.025, 9);
  expect(valueOf(q.parseRatio('41/11'))).toBeCloseTo(41 / 11, 12);
  expect(codeOf(q.parseLengthMm('82/79 mm'))).toBe('two-numbers');
  expect(codeOf(q.parseQuantity('5000 %', kinds.SHARE))).toBe('out-of-range');
  expect(valueOf(q.parseQuantity('75 %', kinds.SHARE))).toBe(0.75);
});

describe('refusals say what was found and show an example', () => {
  test.each([
    ['', 'not-a-number', '"" is not a speed.'],
    ['fast', 'not-a-number', '"fast" is not a speed.'],
    ['62', 'no-unit', '"62" has no unit, so the speed is not known.'],
    ['62 furlongs', 'unknown-unit', '"furlongs" is not a unit of speed.'],
    ['-5 mph', 'out-of-range', '"-5 mph" is outside what is possible for a speed, 0 to 335 mph (540 km/h).'],
    ['1e9 km/h', 'out-of-range', '"1e9 km/h" is outside what is possible for a speed, 0 to 335 mph (540 km/h).'],
    ['62/63 mph', 'two-numbers', '"62/63 mph" holds two numbers where one is wanted.'],
    ['NaN mph', 'not-a-number', '"NaN mph" is not a speed.'],
    ['Infinity', 'not-a-number', '"Infinity" is not a speed.'],
    ['1e999 mph', 'not-a-number', '"1e999 mph" is not a speed.'],
    ['constructor', 'not-a-number', '"constructor" is not a speed.'],
    ['5 constructor', 'unknown-unit', '"constructor" is not a unit of speed.'],
  ])('"%s" is refused as %s', (text, code, message) => {
    const result = q.parseSpeedMps(text);
    expect(codeOf(result)).toBe(code);
    if (result.ok) return;
    expect(result.problem.message).toBe(message);
    // Where the message tells what is possible, an example adds nothing.
    const remedy = code === 'out-of-range' ? 'Check the number and its unit.' : 'Write it like 62 mph or 100 km/h.';
    expect(result.problem.remedy).toBe(remedy);
  });

  test('the name the caller gives stands in the sentence', () => {
    const result = q.parseLengthM('9 m', undefined, { range: [0.7, 5], name: 'rolling circumference' });
    expect(result.ok ? '' : result.problem.message).toBe(
      '"9 m" is outside what is possible for a rolling circumference.',
    );
  });

  test('its article fits, and a number without a unit is told to be one', () => {
    const message = (result: Result<number>): string => (result.ok ? '' : result.problem.message);
    expect(message(q.parseRpm('fast', 'rpm', { name: 'engine speed' }))).toBe('"fast" is not an engine speed.');
    expect(message(q.parseAngleDeg('400°'))).toBe('"400°" is outside what is possible for an angle, -360° to 360°.');
    expect(message(q.parseRatio('1.5 mm'))).toBe('"mm" does not belong here: this number has no unit.');
  });

  test('a division by zero is no number', () => {
    expect(codeOf(q.parseLengthMm('1/0 in'))).toBe('not-a-number');
  });
});

describe('properties', () => {
  const all = Object.values(kinds);
  test('no text makes any parser throw, and what is read is finite and within the limits', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.stringMatching(/^[+-]?[0-9., e/'-]{0,20} ?[a-zµ°/·²"]{0,8}$/u),
    );
    fc.assert(
      fc.property(
        text,
        fc.constantFrom(...all),
        fc.option(fc.constantFrom('mph', 'mm', 'rpm', 'nonsense', '')),
        (typed, kind, unit) => {
          const result = q.parseQuantity(typed, kind, unit ?? undefined);
          if (!result.ok) {
            expect(result.problem.message.length).toBeGreaterThan(5);
            expect(result.problem.remedy.length).toBeGreaterThan(5);
            return;
          }
          expect(Number.isFinite(result.value)).toBe(true);
          expect(result.value).toBeGreaterThanOrEqual(kind.range[0]);
          expect(result.value).toBeLessThanOrEqual(kind.range[1]);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('a number written with dot or comma and unit is read again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 29_999 }), fc.integer({ min: 0, max: 99 }), (whole, hundredths) => {
        const typed = (whole + hundredths / 100).toFixed(2);
        const value = Number(typed);
        expect(valueOf(q.parseLengthMm(`${typed} mm`))).toBe(value);
        expect(valueOf(q.parseLengthMm(`${typed.replace('.', ',')}mm`))).toBe(value);
      }),
    );
  });

  test('every unit of every kind is understood in upper and lower case', () => {
    for (const kind of all) {
      for (const unit of Object.keys(kind.units)) {
        const lower = q.parseQuantity(`0.5 ${unit}`, kind);
        const upper = q.parseQuantity(`0.5 ${unit.toUpperCase()}`, kind);
        expect(lower.ok, `${kind.name} ${unit}`).toBe(true);
        expect(upper, `${kind.name} ${unit}`).toEqual(lower);
      }
    }
  });
});
