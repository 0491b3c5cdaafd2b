import { describe, expect, it } from 'vitest';
import { beatingIn } from '../../../../src/core/diagnosis/findings/beats.ts';

const BINS = 201;
const MIDDLE = 100;
const BIN_HZ = 0.02;
const HZ = 100;
const FLOOR = 0.01;

/** Surroundings of a line: a floor, and Hann main lobes (½, 1, ½) of the given heights at offsets from the middle. */
const beside = (lobes: readonly (readonly [offset: number, height: number])[]) => {
  const amplitudeMps2 = new Float64Array(BINS).fill(FLOOR);
  for (const [offset, height] of lobes) {
    for (const [d, share] of [
      [-1, 0.5],
      [0, 1],
      [1, 0.5],
    ] as const) {
      const k = MIDDLE + offset + d;
      amplitudeMps2[k] = Math.max(amplitudeMps2[k]!, share * height);
    }
  }
  return { centreHz: HZ, binHz: BIN_HZ, amplitudeMps2 };
};
const offsetsOf = (...lobes: readonly (readonly [offset: number, height: number])[]): number[] =>
  beatingIn(beside(lobes), HZ).map((hz) => Math.round((hz - HZ) / BIN_HZ));

describe('a second tone that beats with a line', () => {
  it('is told by its frequency, on either side, several of them too', () => {
    expect(offsetsOf([0, 1], [20, 0.5])).toEqual([20]);
    expect(offsetsOf([0, 1], [-12, 0.5])).toEqual([-12]);
    expect(offsetsOf([0, 1], [20, 0.5], [-35, 0.4])).toEqual([-35, 20]);
  });

  it('is counted from where the line really stands, a bin or two off the middle', () => {
    expect(offsetsOf([2, 1], [12, 0.5])).toEqual([12]);
    // A pulsing level puts like tones on both sides of the line, not of the middle.
    expect(offsetsOf([2, 1], [12, 0.5], [-8, 0.45])).toEqual([]);
  });

  it('is not one of two like ones on both sides: those are the line’s own pulsing', () => {
    expect(offsetsOf([0, 1], [20, 0.5], [-20, 0.4])).toEqual([]);
    expect(offsetsOf([0, 1], [20, 0.5], [-20, 0.2])).toEqual([20]);
  });

  it('is not the line’s own main lobe, nor further off than two wheels can be', () => {
    expect(offsetsOf([0, 1], [2, 0.5])).toEqual([]);
    expect(offsetsOf([0, 1], [4, 0.5])).toEqual([4]);
    // 1.5 % of 100 Hz is 75 bins.
    expect(offsetsOf([0, 1], [75, 0.5])).toEqual([75]);
    expect(offsetsOf([0, 1], [77, 0.5])).toEqual([]);
  });

  it('makes the level swing by a quarter at least, and stands out of what lies about it', () => {
    expect(offsetsOf([0, 1], [20, 0.26])).toEqual([20]);
    expect(offsetsOf([0, 1], [20, 0.24])).toEqual([]);
    expect(offsetsOf([0, 0.1], [20, 0.045])).toEqual([20]);
    expect(offsetsOf([0, 0.1], [20, 0.035])).toEqual([]);
    // What lies about it is within 40 bins, to both sides; a rough band further off does not count.
    for (const side of [-1, 1]) {
      const near = beside([
        [0, 1],
        [20, 0.3],
      ]);
      for (let offset = 41; offset <= 100; offset++) near.amplitudeMps2[MIDDLE + side * offset] = 0.1;
      expect(beatingIn(near, HZ)).toHaveLength(1);
    }
  });
});
