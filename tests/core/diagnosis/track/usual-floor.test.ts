import { describe, expect, it } from 'vitest';
import { heldToUsual, usualFloor } from '../../../../src/core/diagnosis/track/usual-floor.ts';
import { seededRandom } from '../../../support/random.ts';

const ROWS = 40;
const BINS = 120;
const STEP_HZ = 0.2;

/** Exponential powers of mean 2, as a spectrum of white noise has, and a line that wanders over bins 40 to 70. */
const powers = (line: number): Float64Array => {
  const { uniform } = seededRandom(3);
  const table = Float64Array.from({ length: ROWS * BINS }, () => -2 * Math.log(1 - uniform()));
  for (let r = 0; r < ROWS; r++) {
    const at = 55 + Math.round(15 * Math.sin((2 * Math.PI * r) / ROWS));
    for (let k = at - 1; k <= at + 1; k++) table[r * BINS + k]! += line;
  }
  return table;
};

describe('the usual noise', () => {
  it('is the mean power of noise, though a line a thousand times as strong wanders through half the surroundings', () => {
    for (const line of [0, 2000]) {
      const floor = usualFloor(powers(line), ROWS, BINS, STEP_HZ);
      expect(floor).toHaveLength(BINS);
      for (const value of floor) {
        expect(value).toBeGreaterThan(1.5);
        expect(value).toBeLessThan(2.9);
      }
    }
  });

  it('bounds a floor that is well above it and leaves the others', () => {
    expect(heldToUsual(2.5, 2)).toBe(2.5);
    expect(heldToUsual(2000, 2)).toBe(6);
  });
});
