import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestPath, steadiestPath } from '../../../../src/core/signal/numeric/best-path.ts';

/** All paths through `steps` of `states`, judged one by one. */
function bruteForce(
  steps: number,
  states: number,
  score: (path: readonly number[]) => number,
): { score: number; path: number[] } {
  let best = { score: -Infinity, path: [] as number[] };
  const walk = (path: readonly number[]): void => {
    if (path.length === steps) {
      const s = score(path);
      if (s > best.score) best = { score: s, path: [...path] };
      return;
    }
    for (let s = 0; s < states; s += 1) walk([...path, s]);
  };
  walk([]);
  return best;
}

const table = (steps: number, states: number): fc.Arbitrary<Float64Array> =>
  fc
    .array(fc.integer({ min: -1000, max: 1000 }), { minLength: steps * states, maxLength: steps * states })
    .map((values) => Float64Array.from(values, (v) => v / 100));

describe('the likeliest path against all paths tried one by one', () => {
  it('of a state that takes random steps', () => {
    const move = Float64Array.of(0, 1.3, 4.1);
    fc.assert(
      fc.property(table(5, 4), (evidence) => {
        const scoreOf = (path: ArrayLike<number>): number => {
          let sum = evidence[path[0]!]!;
          for (let k = 1; k < 5; k += 1) {
            const d = Math.abs(path[k]! - path[k - 1]!);
            sum += d < 3 ? evidence[k * 4 + path[k]!]! - move[d]! : -Infinity;
          }
          return sum;
        };
        const own = bestPath(evidence, 4, move);
        expect(own.score).toBeCloseTo(bruteForce(5, 4, scoreOf).score, 9);
        expect(scoreOf(own.states)).toBeCloseTo(own.score, 9);
      }),
      { numRuns: 60, seed: 10 },
    );
  });

  it('of a state that keeps its rate', () => {
    const [steps, states, most] = [5, 4, 2];
    const rateCost = Float64Array.of(0.2, 1.1, 2.9);
    const startCost = Float64Array.of(0.1, 0.7, 1.9);
    fc.assert(
      fc.property(table(steps, states), (evidence) => {
        // A path of states leaves the rate before the first step free: the cheapest is taken.
        const scoreOf = (path: ArrayLike<number>): number => {
          const rates = Array.from({ length: steps - 1 }, (_, k) => path[k + 1]! - path[k]!);
          if (rates.some((r) => Math.abs(r) > most)) return -Infinity;
          let sum = 0;
          for (let k = 0; k < steps; k += 1) sum += evidence[k * states + path[k]!]!;
          let start = Infinity;
          for (let r = -most; r <= most; r += 1) {
            const d = Math.abs(rates[0]! - r);
            if (d < rateCost.length) start = Math.min(start, startCost[Math.abs(r)]! + rateCost[d]!);
          }
          for (let k = 1; k < rates.length; k += 1) {
            const d = Math.abs(rates[k]! - rates[k - 1]!);
            start += d < rateCost.length ? rateCost[d]! : Infinity;
          }
          return sum - start;
        };
        const own = steadiestPath(evidence, states, most, rateCost, startCost);
        expect(own.score).toBeCloseTo(bruteForce(steps, states, scoreOf).score, 9);
        expect(scoreOf(own.states)).toBeCloseTo(own.score, 9);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  it('a single step is its best state', () => {
    expect(bestPath(Float64Array.of(1, 5, 3), 3, Float64Array.of(0, 1))).toEqual({
      states: Int32Array.of(1),
      score: 5,
    });
    const one = steadiestPath(Float64Array.of(1, 5, 3), 3, 1, Float64Array.of(0, 1), Float64Array.of(0.5, 2));
    expect(one).toEqual({ states: Int32Array.of(1), score: 4.5 });
  });

  it('follows a ramp through noise that a path of random steps must pay for at each step', () => {
    const states = 60;
    const evidence = new Float64Array(20 * states);
    for (let k = 0; k < 20; k += 1) {
      evidence[k * states + 2 * k + 3] = 3;
      evidence[k * states + ((k * 31) % states)] = 4;
    }
    const own = steadiestPath(evidence, states, 4, Float64Array.of(0.1, 3, 6), Float64Array.of(0, 0.2, 0.4, 0.6, 0.8));
    expect(Array.from(own.states)).toEqual(Array.from({ length: 20 }, (_, k) => 2 * k + 3));
  });
});
