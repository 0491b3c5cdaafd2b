import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockFromText, ClockScan, daysFromCivil } from '../../../src/core/reading/scan/clock-scan.ts';
import { numberFromText, scanNumber } from '../../../src/core/reading/scan/number-scan.ts';
import { StampScan } from '../../../src/core/reading/scan/stamp-scan.ts';
import { bytesOf } from './fixture.ts';

const scan = (text: string, decimal = '.'): number => {
  const bytes = bytesOf(text);
  return scanNumber(bytes, 0, bytes.length, decimal.charCodeAt(0));
};

describe('numbers out of bytes', () => {
  it('gives the very double the language gives, for any double printed in any usual way', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.integer({ min: 0, max: 20 }),
        (value, digits) => {
          for (const text of [
            String(value),
            value.toFixed(digits),
            value.toExponential(digits),
            value.toPrecision(digits + 1),
          ])
            expect(Object.is(scan(text), Number(text))).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('reads a decimal comma as the point it stands for', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        // String(−0) is '0'.
        const text = Object.is(value, -0) ? '-0' : String(value);
        expect(Object.is(scan(text.replace('.', ','), ','), value)).toBe(true);
      }),
    );
  });

  it('takes blanks around, signs and bare fractions', () => {
    expect([scan('  1.5 '), scan('+2'), scan('-.5'), scan('7.'), scan('-0')]).toEqual([1.5, 2, -0.5, 7, -0]);
  });

  it('refuses what is not plainly one number', () => {
    for (const text of ['', ' ', '.', '-', '1.2.3', '1,5', '0x10', '1 2', '12a', '1e', '--1', '1_000', '1,234', '١'])
      expect(scan(text), text).toBeNaN();
    for (const text of ['1.5', '1,', ',', '1,2,3', '1.234']) expect(scan(text, ','), text).toBeNaN();
  });

  it('knows infinity by word and by size', () => {
    for (const text of ['inf', '+Inf', 'Infinity', '1e999', '1.#INF']) expect(scan(text)).toBe(Infinity);
    expect(scan('-infinity')).toBe(-Infinity);
  });

  it('reads thousands in groups only where nothing else can be meant', () => {
    expect(numberFromText('1,234.5', '.')).toBe(1234.5);
    expect(numberFromText('1,234,567', '.')).toBe(1234567);
    expect(numberFromText("1'234.5", '.')).toBe(1234.5);
    expect(numberFromText('1.234.567,5', ',')).toBe(1234567.5);
    expect(numberFromText('1 234,5', ',')).toBe(1234.5);
    for (const text of ['1,234', '12,34.5', '1,2345.6', '1234,567.8'])
      expect(numberFromText(text, '.'), text).toBeNaN();
  });
});

describe('time stamps out of bytes', () => {
  const differences = (texts: readonly string[], decimal = '.'): number[] => {
    const stamps = new StampScan(decimal.charCodeAt(0));
    return texts.map((text) => stamps.scan(bytesOf(text), 0, text.length));
  };

  it('keeps every digit of an epoch in nanoseconds', () => {
    // As doubles these two stamps are 1714564800123456800 and 1714564800123457000: 243 ns would become 256.
    expect(differences(['1714564800123456789', '1714564800123457032', '1714564801123456788'])).toEqual([
      0, 243, 999999999,
    ]);
  });

  it('agrees with exact whole-number arithmetic on stamps of up to 24 digits', () => {
    const stamp = fc.bigInt({ min: 0n, max: 10n ** 24n - 1n });
    const near = fc.bigInt({ min: -(10n ** 14n), max: 10n ** 14n });
    fc.assert(
      fc.property(stamp, near, (first, by) => {
        const second = first + by;
        fc.pre(second >= 0n && second < 10n ** 24n);
        expect(differences([String(first), String(second)])[1]).toBe(Number(by));
      }),
    );
  });

  it('keeps microseconds of an epoch in seconds', () => {
    expect(differences(['1714564800.123456', '1714564800.123457'])[1]).toBeCloseTo(1e-6, 15);
    expect(differences(['1714564799,999999', '1714564800,000001'], ',')[1]).toBeCloseTo(2e-6, 15);
  });

  it('reads negative stamps before a trigger', () => {
    const [, second, third] = differences(['-0.02', '-0.01', '0.01']);
    expect(second).toBeCloseTo(0.01, 15);
    expect(third).toBeCloseTo(0.03, 15);
  });

  it('reads an exponent, and refuses words', () => {
    expect(differences(['1.0E+03', '1.001E+03'])[1]).toBeCloseTo(1, 9);
    expect(differences(['x', '', '1-2', '.']).every(Number.isNaN)).toBe(true);
  });
});

describe('clock times out of text', () => {
  const secondsOf = (text: string): number => {
    const time = clockFromText(text);
    return time ? time.wholeS + time.fractionS : NaN;
  };

  it('reads the date as the language does', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1970-01-01'), max: new Date('2100-01-01'), noInvalidDate: true }),
        (date) => {
          expect(secondsOf(date.toISOString())).toBeCloseTo(date.getTime() / 1000, 6);
          expect(daysFromCivil(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate())).toBe(
            Math.floor(date.getTime() / 86400000),
          );
        },
      ),
    );
  });

  it('reads time zones, decimal commas, half days and milliseconds after a colon', () => {
    const noon = Date.UTC(2024, 4, 1, 12) / 1000;
    expect(secondsOf('2024-05-01T14:00:00.5+02:00')).toBe(noon + 0.5);
    expect(secondsOf('2024-05-01 12:00:00,250')).toBe(noon + 0.25);
    expect(secondsOf('2024/05/01 12:00:00:250')).toBe(noon + 0.25);
    expect(secondsOf('5/1/2024 1:02:03.5 PM')).toBe(13 * 3600 + 123.5);
    expect(secondsOf('12:00:00 AM')).toBe(0);
    expect(secondsOf('01.05.2024 12:00:01,5')).toBe(43201.5);
    expect(secondsOf('00:01.25')).toBe(1.25);
    expect(secondsOf('12:34')).toBe(12 * 3600 + 34 * 60);
  });

  it('refuses what is no time', () => {
    for (const text of ['', '12', '12:60:00', '12:00:61', '2024-05-01', 'noon', '1:2:3', '2024-05-01T25:00:00'])
      expect(secondsOf(text), text).toBeNaN();
  });

  it('keeps nanoseconds after the second', () => {
    const clock = new ClockScan();
    const at = (text: string): number => clock.scan(bytesOf(text), 0, text.length);
    at('2024-05-01T12:00:00.000000001');
    expect(at('2024-05-01T12:00:01.000000003')).toBeCloseTo(1.000000002, 15);
  });
});
