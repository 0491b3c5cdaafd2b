import { describe, expect, it } from 'vitest';
import { probabilityOnceGone } from '../../../../src/core/diagnosis/compare/part-by-proof.ts';

describe('a repair that took the shake away', () => {
  it('speaks for the part that was put right: hand case', () => {
    // 0.5·(0.6·0.95 + 0.4·0.05) = 0.295; the other 0.5·0.05 = 0.025; 0.295/0.32.
    const two = [
      { probability: 0.5, repairedShare: 0.6 },
      { probability: 0.5, repairedShare: 0 },
    ];
    expect(probabilityOnceGone(two)).toBeCloseTo(0.295 / 0.32, 9);
    // The same, an order that nobody named in place of the other.
    expect(probabilityOnceGone(two.slice(0, 1))).toBeCloseTo(0.295 / 0.32, 9);
  });

  it('tells nothing between parts that it may have mended alike', () => {
    const alike = [
      { probability: 0.4, repairedShare: 0.3 },
      { probability: 0.6, repairedShare: 0.3 },
    ];
    expect(probabilityOnceGone(alike)).toBeCloseTo(0.4, 9);
  });

  it('speaks against a part at which nothing was put right', () => {
    const other = [
      { probability: 0.5, repairedShare: 0 },
      { probability: 0.5, repairedShare: 0.6 },
    ];
    expect(probabilityOnceGone(other)).toBeCloseTo(0.025 / 0.32, 9);
    expect(probabilityOnceGone([{ probability: 0, repairedShare: 0 }])).toBe(0);
  });
});
