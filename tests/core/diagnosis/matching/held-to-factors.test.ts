import { describe, expect, it } from 'vitest';
import { heldToFactors } from '../../../../src/core/diagnosis/matching/held-to-factors.ts';

describe('the history that one tone gave', () => {
  it('is as likely as it was where another is ruled out, or where it is not likely anyway', () => {
    expect(heldToFactors([1, -0.7], [0.994, 0.006])).toEqual([0.994, 0.006]);
    expect(heldToFactors([1, -0.7], [0.75, 0.25])).toEqual([0.75, 0.25]);
    expect(heldToFactors([1, 1], [0.6, 0.4])).toEqual([0.6, 0.4]);
  });

  it('is 8 in 10 at most where others are open: direct or image, they share the rest as before', () => {
    // By hand: 0.9 over two models of factor 1 is held to 0.8; 0.06 and 0.03 share 0.2.
    const held = heldToFactors([1, -0.7, 1, 3], [0.6, 0.07, 0.3, 0.03]);
    expect(held[0]).toBeCloseTo((0.6 * 0.8) / 0.9, 12);
    expect(held[2]).toBeCloseTo((0.3 * 0.8) / 0.9, 12);
    expect(held[1]).toBeCloseTo(0.14, 12);
    expect(held[3]).toBeCloseTo(0.06, 12);
  });

  it('leaves nothing to those that are ruled out beside one that is not', () => {
    expect(heldToFactors([1, -0.7, 3], [0.95, 0.048, 0.002])).toEqual([0.8, expect.closeTo(0.2, 12), 0]);
  });
});
