/** Sums along a tie against the double sum as it is written on paper. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  tiedByTransform,
  tiedOneByOne,
  untied,
  type Tie,
  type TiedSums,
} from '../../../../src/core/diagnosis/matching/tied-sums.ts';

const values = (most: number): fc.Arbitrary<Float64Array> =>
  fc.float64Array({ minLength: 1, maxLength: most, min: 0, max: 1, noNaN: true });

const onPaper = ({ first, weight }: Tie, road: Float64Array, engine: Float64Array): { r: number[]; e: number[] } => {
  const tie = (r: number, e: number): number => weight[e - first - r] ?? 0;
  return {
    r: [...road.keys()].map((r) => engine.reduce((sum, v, e) => sum + v * tie(r, e), 0)),
    e: [...engine.keys()].map((e) => road.reduce((sum, v, r) => sum + v * tie(r, e), 0)),
  };
};

const expectClose = (got: Float64Array, wanted: readonly number[], digits: number): void => {
  expect(got.length).toBe(wanted.length);
  wanted.forEach((want, i) => expect(got[i]).toBeCloseTo(want, digits));
};

type Way = (tie: Tie, roadCount: number, engineCount: number) => TiedSums;

describe.each<[string, Way]>([
  ['term by term', tiedOneByOne],
  ['by transform', tiedByTransform],
])('sums of tied pairs, %s', (_, way) => {
  it('are those on paper, for both sets of values and any place of the tie', () => {
    fc.assert(
      fc.property(
        values(40),
        values(40),
        values(60),
        fc.integer({ min: -70, max: 50 }),
        (road, engine, weight, first) => {
          const tie: Tie = { first, weight };
          const { overEngine, overRoad } = way(tie, road.length, engine.length);
          const twice = (array: Float64Array): Float64Array => array.map((v) => 2 * v);
          const wanted = onPaper(tie, road, engine);
          const [r, doubleR] = overEngine(engine, twice(engine));
          const [e, doubleE] = overRoad(road, twice(road));
          expectClose(r, wanted.r, 11);
          expectClose(e, wanted.e, 11);
          expectClose(
            doubleR,
            wanted.r.map((v) => 2 * v),
            11,
          );
          expectClose(
            doubleE,
            wanted.e.map((v) => 2 * v),
            11,
          );
        },
      ),
    );
  });
});

describe('sums without a tie', () => {
  it('are the sum of all, at every point', () => {
    const { overEngine, overRoad } = untied(2, 3);
    const engine = Float64Array.of(1, 2, 3);
    const road = Float64Array.of(4, 5);
    expect(overEngine(engine, engine)).toEqual([Float64Array.of(6, 6), Float64Array.of(6, 6)]);
    expect(overRoad(road, road)).toEqual([Float64Array.of(9, 9, 9), Float64Array.of(9, 9, 9)]);
  });
});
