import { describe, expect, it } from 'vitest';
import reference from '../../reference/simulate.json' with { type: 'json' };
import { randomFromState, randomSource } from '../../../src/core/simulate/random.ts';

describe('the seeded random source', () => {
  it('gives the output of the published xoshiro128** algorithm', () => {
    const [a, b, c, d] = reference.xoshiro.state as [number, number, number, number];
    const random = randomFromState(a, b, c, d);
    expect(reference.xoshiro.output.map(() => random.uniform() * 4294967296)).toEqual(reference.xoshiro.output);
  });

  it('gives the same numbers for the same seed and stream, and others for another stream or seed', () => {
    const first = (seed: number, stream: string): number[] => {
      const random = randomSource(seed, stream);
      return Array.from({ length: 5 }, random.uniform);
    };
    expect(first(7, 'road')).toEqual(first(7, 'road'));
    expect(first(7, 'road')).not.toEqual(first(7, 'speed'));
    expect(first(7, 'road')).not.toEqual(first(8, 'road'));
    // Seeds beyond 32 bits are told apart too.
    expect(first(7, 'road')).not.toEqual(first(7 + 4294967296, 'road'));
  });

  it('is even and normal to within what 100 000 draws allow', () => {
    const random = randomSource(3, 'moments');
    const n = 100_000;
    const u = Array.from({ length: n }, random.uniform);
    const z = Array.from({ length: n }, random.normal);
    const moment = (x: readonly number[], k: number): number => x.reduce((s, v) => s + v ** k, 0) / n;
    // Five standard errors each.
    expect(Math.abs(moment(u, 1) - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / n));
    expect(Math.abs(moment(z, 1))).toBeLessThan(5 / Math.sqrt(n));
    expect(Math.abs(moment(z, 2) - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
    expect(Math.abs(moment(z, 4) - 3)).toBeLessThan(5 * Math.sqrt(96 / n));
  });

  it('draws evenly in the logarithm where asked to', () => {
    const random = randomSource(4, 'log');
    const draws = Array.from({ length: 20_000 }, () => random.logBetween(0.01, 100));
    expect(draws.every((d) => d >= 0.01 && d < 100)).toBe(true);
    expect(draws.filter((d) => d < 1).length / draws.length).toBeCloseTo(0.5, 1);
  });
});
