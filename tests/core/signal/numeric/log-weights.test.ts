import { describe, expect, it } from 'vitest';
import { logSum, sharesOf } from '../../../../src/core/signal/numeric/log-weights.ts';

describe('weights by their logarithms', () => {
  it('add up by hand: ln(e⁰ + e⁰) = ln 2, shares of 1 and 3 are a quarter and three', () => {
    expect(logSum([0, 0])).toBeCloseTo(Math.LN2, 12);
    expect(sharesOf([0, Math.log(3)])[0]).toBeCloseTo(0.25, 12);
    expect(sharesOf([0, Math.log(3)])[1]).toBeCloseTo(0.75, 12);
  });

  it('hold where the weights themselves would overflow or vanish', () => {
    expect(logSum([-5000, -5000])).toBeCloseTo(-5000 + Math.LN2, 9);
    expect(sharesOf([4000, 4000 - Math.log(4)])[0]).toBeCloseTo(0.8, 9);
  });
});
