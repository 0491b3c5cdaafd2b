/** Bench figures in the wrong unit are asked about. The ranges are common practice, no source; the sizes are of real parts. */
import { describe, expect, test } from 'vitest';
import { nearestWord } from '../../../src/core/quantity/nearest-word.ts';
import { DRIVESHAFT_RPM, LENGTHS, LEVEL_MPS2 } from '../../../src/core/quantity/plausible.ts';
import { ANGLE_DEG } from '../../../src/core/quantity/quantity-kinds.ts';
import { parseQuantity } from '../../../src/core/quantity/quantity.ts';

describe('a figure of the bench', () => {
  test.each([
    ['ring', '1.55 mm', true],
    ['ring', '1.55 in', false],
    ['ring', '0.061 in', true],
    ['ring', '0.061 mm', false],
    ['cross', '78.6 mm', true],
    ['cross', '78.6 in', false],
    ['play', '0.05 mm', true],
    ['play', '-0.05 mm', false],
    ['runout', '0.5 mm', true],
    ['runout', '5 in', false],
    ['dial', '-0.2 mm', true],
    ['piece', '60 in', true],
    ['piece', '60 mm', true],
    ['piece', '1524 in', false],
    ['tube', '3.5 mm', false],
    ['wall', '0.083 mm', false],
  ] as const)('%s of %s: taken %s', (of, text, taken) => expect(parseQuantity(text, LENGTHS[of]).ok).toBe(taken));

  test('that cannot be is answered with what can, in both units, and with what was read', () => {
    expect(parseQuantity('1.55', LENGTHS.ring, 'in')).toMatchObject({
      ok: false,
      problem: {
        message: '"1.55 in" is outside what is possible for a ring thickness, 0.3 to 10 mm (0.012 to 0.39 in).',
        remedy: 'Check the number and its unit.',
      },
    });
    expect(parseQuantity('120000', DRIVESHAFT_RPM, 'rpm').ok).toBe(false);
  });

  test('of an angle is quoted as it is written, and a level is not below zero', () => {
    expect(parseQuantity('999', ANGLE_DEG, '°')).toMatchObject({
      problem: { message: '"999°" is outside what is possible for an angle, -360° to 360°.' },
    });
    expect(parseQuantity('-4', LEVEL_MPS2, 'm/s²')).toMatchObject({
      problem: { message: '"-4 m/s²" is outside what is possible for a level, 0 to 200 m/s² (0 to 20 g).' },
    });
  });
});

describe('a misspelt word', () => {
  const words = ['cruise', 'pull', 'coast', 'wheels-balanced', 'brakes-replaced'];
  test.each([
    ['wheel-balanced', 'wheels-balanced'],
    ['Cruising', 'cruise'],
    ['brakes', 'brakes-replaced'],
    ['rwd', undefined],
    ['x', undefined],
  ])('%s is taken for %s', (word, meant) => expect(nearestWord(word, words)).toBe(meant));
});
