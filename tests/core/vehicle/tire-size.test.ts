import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { parseTireSize } from '../../../src/core/vehicle/tire-size.ts';
import type { TireSize } from '../../../src/core/vehicle/tire-parts.ts';
import { must } from '../../support/must.ts';

const sizeOf = (text: string): TireSize => must(parseTireSize(text));
const refusalOf = (text: string): string => {
  const result = parseTireSize(text);
  return result.ok ? `read as ${result.value.written}` : result.problem.message;
};
const noteCodes = (text: string): string[] => sizeOf(text).notes.map((note) => note.code);

describe('outer diameter is rim plus twice the section height (UN R30 §6.1.2, height not rounded)', () => {
  // By hand: 15·25.4 + 2·215·0.65 = 660.5 and so on.
  test.each([
    ['P215/65R15', 660.5],
    ['205/55R16', 631.9],
    ['245/40ZR18', 653.2],
    ['LT245/75R16', 773.9],
    ['275/60R20', 838.0],
    ['195/65R15', 634.5],
    ['T155/70D17', 648.8],
    ['225/75R16C', 743.9],
    ['HL245/40R19', 678.6],
    ['ST205/75R15', 688.5],
    ['245/45RF19', 703.1],
    ['285/75R24.5', 1049.8],
    // A rim number of 300 and more is in millimeters.
    ['190/65R390', 637.0],
    // No ratio: 80 %.
    ['165R15', 645.0],
    ['205R16', 734.4],
    // Flotation: the first number is the diameter in inches.
    ['33x12.50R15LT', 838.2],
    ['31x10.50R15LT', 787.4],
    ['33.5x12.5R15', 850.9],
  ])('%s is %d mm high', (text, diameterMm) => {
    expect(sizeOf(text).diameterMm).toBeCloseTo(diameterMm, 9);
  });
});

describe('sizes as people type them', () => {
  test.each([
    ['265/70 r17', '265/70R17'],
    ['265 / 70 R 17', '265/70R17'],
    ['265-70-17', '265/70R17'],
    ['265 70 17', '265/70R17'],
    ['265/70/17', '265/70R17'],
    ['265/7017', '265/70R17'],
    ['26570R17', '265/70R17'],
    ['2657017', '265/70R17'],
    ['  265/70R17  ', '265/70R17'],
    ['lt 245/75-16', 'LT245/75R16'],
    ['LT245/75 R16 120/116S', 'LT245/75R16'],
    ['p215/65r15', 'P215/65R15'],
    ['P 215 / 65 R 15', 'P215/65R15'],
    ['225/75 r 16 c 118/116R', '225/75R16C'],
    ['245/40ZR18', '245/40R18'],
    ['205/55 ZRF17 (91Y)', '205/55R17'],
    ['185/70HR14', '185/70R14'],
    ['165 SR 15', '165R15'],
    ['31 x 10.5 r15', '31x10.50R15LT'],
    ['31X10,50R15', '31x10.50R15LT'],
    ['31 × 10.5 R15', '31x10.50R15LT'],
    ['31*10.5R15', '31x10.50R15LT'],
    ['33x12.5-15', '33x12.50R15LT'],
    ['33X1250R15', '33x12.50R15LT'],
    ['37x13.50R20LT 127Q', '37x13.50R20LT'],
    ['215/60–16', '215/60R16'],
    ['245/70R19.5', '245/70R19.5'],
  ])('"%s" is %s', (text, written) => {
    expect(sizeOf(text).written).toBe(written);
  });

  test('load index and speed symbol are read and do not change the size', () => {
    expect(sizeOf('205/55R16 91V')).toMatchObject({ loadIndex: 91, speedSymbol: 'V', diameterMm: 631.9 });
    expect(sizeOf('LT245/75R16 120/116S')).toMatchObject({ loadIndex: 120, speedSymbol: 'S' });
    expect(sizeOf('275/60R20 115T XL')).toMatchObject({ loadIndex: 115, speedSymbol: 'T' });
    expect(sizeOf('275/60R20 115 T')).toMatchObject({ loadIndex: 115, speedSymbol: 'T' });
    expect(sizeOf('185/70HR14')).toMatchObject({ speedSymbol: 'H' });
    expect(sizeOf('37x13.50R20LT 127Q')).toMatchObject({ loadIndex: 127, speedSymbol: 'Q' });
    expect(sizeOf('31x10.50R15')).not.toHaveProperty('loadIndex');
    expect(sizeOf('LT265/70R17 10PR')).not.toHaveProperty('loadIndex');
  });

  test('form and construction follow from prefix, suffix and letter', () => {
    expect(sizeOf('P215/65R15').form).toBe('passenger');
    expect(sizeOf('LT245/75R16').form).toBe('light-truck');
    expect(sizeOf('225/75R16C').form).toBe('commercial');
    expect(sizeOf('ST205/75R15').form).toBe('trailer');
    expect(sizeOf('33x12.50R15').form).toBe('flotation');
    expect(sizeOf('T155/70D17')).toMatchObject({ form: 'spare', construction: 'diagonal' });
    expect(sizeOf('T155/70R17').construction).toBe('radial');
    expect(sizeOf('225/70B15').construction).toBe('bias-belted');
    expect(sizeOf('245/45RF19').construction).toBe('radial');
  });
});

describe('what is assumed is told', () => {
  test('a size without a ratio is taken as 80 %', () => {
    expect(sizeOf('165R15')).toMatchObject({ aspectPercent: 80, aspectAssumed: true });
    expect(noteCodes('165R15')).toEqual(['tire-ratio-assumed']);
    expect(sizeOf('165R15').notes[0]?.text).toContain('80 %');
  });
  test('a missing construction letter is taken as radial, for a temporary spare as diagonal', () => {
    expect(sizeOf('265/70-17').construction).toBe('radial');
    expect(noteCodes('265/70-17')).toEqual(['tire-construction-assumed']);
    expect(sizeOf('T155/70-17').construction).toBe('diagonal');
    expect(noteCodes('155-15')).toEqual(['tire-construction-assumed', 'tire-ratio-assumed']);
  });
  test('words that do not matter are named as unused', () => {
    expect(sizeOf('265/70R17 all terrain').notes[0]?.text).toBe('Not needed and not used: "all terrain".');
  });
  test('a full size needs no note', () => {
    expect(noteCodes('265/70R17 115T')).toEqual([]);
    expect(noteCodes('LT265/70R17 E')).toEqual([]);
  });
});

describe('refusals name what was understood and show an example', () => {
  test.each([
    ['', '"" is not a tire size that could be read: nothing was written.'],
    ['hello', '"hello" is not a tire size that could be read.'],
    [
      '265/70',
      '"265/70" is not a tire size that could be read: the width 265 mm and the ratio 70 % were understood, but the rim is missing.',
    ],
    ['265/7R17', '"265/7R17" is not a tire size that could be read: the width 265 mm was understood, but not "/7R17".'],
    [
      '265/70R47',
      '"265/70R47" is not a tire size that could be read: the rim diameter in inches was understood as 47, outside 8 to 30.',
    ],
    [
      '265/15R17',
      '"265/15R17" is not a tire size that could be read: the height ratio in % was understood as 15, outside 20 to 100.',
    ],
    [
      '95/70R17',
      '"95/70R17" is not a tire size that could be read: the outer diameter in inches was understood as 95, outside 20 to 60.',
    ],
    [
      '065/70R17',
      '"065/70R17" is not a tire size that could be read: the section width in mm was understood as 65, outside 105 to 455.',
    ],
    [
      '265/70R190',
      '"265/70R190" is not a tire size that could be read: the rim diameter in inches was understood as 190, outside 8 to 30.',
    ],
    [
      '15x10R15',
      '"15x10R15" is not a tire size that could be read: the outer diameter in inches was understood as 15, outside 20 to 60.',
    ],
    [
      '31x10.5R30',
      '"31x10.5R30" is not a tire size that could be read: the rim diameter in inches was understood as 30, outside 8 to 28.',
    ],
    [
      '7.50-16',
      '"7.50-16" is not a tire size that could be read: a size of this old kind does not say how tall the tire is, so its circumference must be given.',
    ],
    [
      'FR78-15',
      '"FR78-15" is not a tire size that could be read: a size of this old kind does not say how tall the tire is, so its circumference must be given.',
    ],
    [
      '205/55R16 205/60R16',
      '"205/55R16 205/60R16" is not a tire size that could be read: "205/60R16" after the size was not understood.',
    ],
  ])('"%s"', (text, message) => {
    expect(refusalOf(text)).toBe(message);
  });

  test('the limits are those of tires that are made', () => {
    const readable = (text: string): boolean => parseTireSize(text).ok;
    expect(['105/70R17', '455/40R17', '205/20R17', '205/100R17', '205/55R08', '205/55R30'].every(readable)).toBe(true);
    expect(['104/70R17', '456/40R17', '205/19R17', '205/101R17', '205/55R07', '205/55R31'].some(readable)).toBe(false);
    expect(['205/55R300', '205/55R600', '20x8R15', '60x20R30', '31x4R15', '31x25R15'].every(readable)).toBe(true);
    expect(['205/55R299', '205/55R601', '19x8R15', '61x20R30', '31x3.9R15', '31x25.5R15'].some(readable)).toBe(false);
    expect(['165-30', '165-31'].map(readable)).toEqual([true, false]);
  });

  test('the remedy gives sizes to copy', () => {
    const result = parseTireSize('x');
    expect(result.ok ? '' : result.problem.remedy).toContain('like 265/70R17, LT245/75R16 or 33x12.50R15');
  });

  test('a long text is cut in the sentence', () => {
    expect(refusalOf('9'.repeat(5000)).length).toBeLessThan(120);
  });
});

describe('properties', () => {
  test('no text makes it throw, and what it reads is a tire', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.stringMatching(
        /^(LT|P|T)?[0-9]{2,3}[/x -]?[0-9]{0,3}[.]?[0-9]{0,2}[ZRDBx -]{0,2}[0-9]{0,3}(LT|C| 9[0-9]V)?$/u,
      ),
    );
    fc.assert(
      fc.property(text, (typed) => {
        const result = parseTireSize(typed);
        if (!result.ok) {
          expect(result.problem.message).toMatch(/is not a tire size that could be read/u);
          return;
        }
        const { diameterMm, rimMm, sectionWidthMm } = result.value;
        expect(diameterMm).toBeGreaterThan(rimMm);
        expect(diameterMm).toBeGreaterThan(200);
        expect(diameterMm).toBeLessThan(1700);
        expect(sectionWidthMm).toBeGreaterThan(90);
      }),
      { numRuns: 1000 },
    );
  });

  test('the written form of a size is read as the same size', () => {
    const metric = fc
      .tuple(
        fc.constantFrom('', 'P', 'LT', 'ST', 'T', 'HL'),
        fc.integer({ min: 21, max: 71 }).map((fives) => fives * 5),
        fc.integer({ min: 5, max: 17 }).map((fives) => fives * 5),
        fc.constantFrom('R', 'D', 'B'),
        fc.constantFrom('13', '15', '16', '17', '18', '19.5', '20', '22', '390'),
        fc.constantFrom('', 'C', ' 91V', ' 120/116S'),
      )
      .map(([prefix, width, ratio, letter, rim, tail]) => `${prefix}${width}/${ratio}${letter}${rim}${tail}`);
    const flotation = fc
      .tuple(
        fc.integer({ min: 28, max: 40 }),
        fc.integer({ min: 8, max: 14 }),
        fc.constantFrom('.50', '.5', ''),
        fc.constantFrom('15', '16', '17', '20'),
      )
      .map(([diameter, width, half, rim]) => `${diameter}x${width}${half}R${rim}`);
    fc.assert(
      fc.property(fc.oneof(metric, flotation), (typed) => {
        const first = sizeOf(typed);
        const again = sizeOf(first.written);
        expect(again.diameterMm).toBe(first.diameterMm);
        expect(again.written).toBe(first.written);
        expect(again.construction).toBe(first.construction);
        expect(sizeOf(typed.toLowerCase())).toEqual(first);
        expect(sizeOf(typed.replaceAll(/([/xRDB])/gu, ' $1 ')).diameterMm).toBe(first.diameterMm);
      }),
    );
  });
});

test('blanks before the size change nothing, also where a blank follows the prefix', () => {
  for (const text of ['ST 225/75R15', 'LT 245/75R16', 'P 215/65R15'])
    expect(sizeOf(`  ${text} `).diameterMm).toBe(sizeOf(text).diameterMm);
});
