import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  mean,
  median,
  nthSmallest,
  quantile,
  quantileOfSorted,
  runningMedian,
} from '../../../../src/core/signal/numeric/statistics.ts';

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
/** Few values and many: ties must not upset anything. */
const numbers = fc.oneof(
  fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 80 }),
  fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 1, maxLength: 80 }),
);

describe('order statistics', () => {
  it('quantiles of type 7: numpy.quantile’s default, worked by hand on 1, 2, 4, 8', () => {
    const four = [8, 1, 4, 2];
    expect(quantile(four, 0)).toBe(1);
    expect(quantile(four, 1)).toBe(8);
    // h = 3p: 0.25 → 0.75 between 1 and 2; 0.5 → 1.5; 0.9 → 2.7 between 4 and 8.
    expect(quantile(four, 0.25)).toBeCloseTo(1.75, 14);
    expect(quantile(four, 0.5)).toBe(3);
    expect(quantile(four, 0.9)).toBeCloseTo(6.8, 14);
    expect(median([3])).toBe(3);
    expect(quantile([3], 0.2)).toBe(3);
    expect(median([])).toBeNaN();
    expect(quantile(four, -1)).toBe(1);
    expect(quantile(four, 2)).toBe(8);
    expect(quantileOfSorted(Float64Array.of(1, 2, 4, 8), 0.5)).toBe(3);
  });

  it('the k-th smallest is what sorting gives, for every k', () => {
    fc.assert(
      fc.property(numbers, fc.nat(), (values, n) => {
        const k = n % values.length;
        const shuffled = Float64Array.from(values);
        expect(nthSmallest(shuffled, k)).toBe(sorted(values)[k]);
        expect(sorted(Array.from(shuffled))).toEqual(sorted(values));
      }),
      { numRuns: 400, seed: 2 },
    );
    expect(nthSmallest(new Float64Array(0), 0)).toBeNaN();
    const rising = Float64Array.from({ length: 5000 }, (_, i) => i);
    expect(nthSmallest(rising, 4321)).toBe(4321);
  });

  it('the running median is the median of each window, shorter at the ends', () => {
    fc.assert(
      fc.property(numbers, fc.integer({ min: 0, max: 90 }), (values, half) => {
        const own = runningMedian(Float64Array.from(values), half);
        values.forEach((_, i) => {
          const window = sorted(values.slice(Math.max(0, i - half), i + half + 1));
          const m = window.length >> 1;
          expect(own[i]).toBe(window.length % 2 ? window[m] : 0.5 * (window[m - 1]! + window[m]!));
        });
      }),
      { numRuns: 200, seed: 3 },
    );
  });

  it('the mean by hand: 2, 4, 4, 4, 5, 5, 7, 9 has 5', () => expect(mean([2, 4, 4, 4, 5, 5, 7, 9])).toBe(5));
});
