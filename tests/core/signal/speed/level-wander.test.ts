import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { levelCases } from '../../../../src/core/signal/speed/level-wander.ts';
import { mixtureQuantile } from '../../../../src/core/signal/numeric/normal-mixture.ts';
import type { OrderLevel } from '../../../../src/core/signal/speed/order-level.ts';

const LAWS = [
  { weight: 0.75, exponent: 2, exponentSd: 3 },
  { weight: 0.25, exponent: 2, exponentSd: 10 },
];

interface Run {
  readonly powers: readonly number[];
  readonly logSpeeds: readonly number[];
  readonly noise: number;
  readonly scatter: number;
}

const levelOf = ({ powers, logSpeeds, noise, scatter }: Run): OrderLevel => {
  const power = powers.reduce((sum, p) => sum + p, 0) / powers.length - noise;
  return {
    amplitudeMps2: Math.sqrt(power),
    power,
    powerSd: 0,
    noisePower: noise,
    noisePowerSd: noise / Math.sqrt(3 * powers.length),
    nearNoisePower: null,
    // What gives the blocks the scatter wanted: 2·power·noise·along.
    noiseAlong: scatter / (2 * power * noise),
    noiseAsOne: 0,
    blocks: powers.length,
    effectiveBlocks: powers.length,
    blockPowers: powers,
    stepS: 2,
    blockStartsS: powers.map((_, k) => 2 * k),
    blockNoises: powers.map(() => noise),
    blockLogSpeeds: logSpeeds,
  };
};

/** Park–Miller and Box–Muller. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => (state = (state * 16807) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Powers of a run whose amplitude wanders: white noise through two equal memories, a chain of its own. */
const wandering = (normal: () => number, count: number, level: number, sd: number, timeS: number): Run => {
  const fine = 0.1;
  const keep = Math.exp(-fine / timeS);
  let first = 0;
  let second = 0;
  const next = (): number => {
    second = keep * second + (1 - keep) * first;
    first = keep * first + Math.sqrt(1 - keep * keep) * normal();
    return Math.SQRT2 * second;
  };
  for (let i = 0; i < 3000; i += 1) next();
  const powers = Array.from({ length: count }, () => {
    let w = 0;
    for (let i = 0; i < 20; i += 1) w = next();
    return level * (1 + sd * w) ** 2;
  });
  return { powers, logSpeeds: powers.map(() => 0), noise: 1e-6 * level, scatter: 1e-6 * level ** 2 };
};

describe('levels under a slow wander', () => {
  const { runs, mean, cov, noiseVariance } = JSON.parse(readFileSync('tests/reference/level-wander.json', 'utf8')) as {
    runs: Run[];
    mean: number[];
    cov: number[][];
    noiseVariance: number[];
  };
  const cases = levelCases(runs.map(levelOf), LAWS);

  it('have the means that conditioning one joint normal distribution gives (NumPy, tests/reference/level_wander.py)', () => {
    expect(cases.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    mean.forEach((expected, k) => {
      const found = cases.reduce((sum, c) => sum + c.weight * (k < 2 ? c.relative[k]! : c.exponent), 0);
      expect(found).toBeCloseTo(expected, 3);
    });
  });

  it('have its covariance, the uncertainty of the removed noise on top', () => {
    const all = cases.map(({ weight, relative, exponent, covariance }) => ({
      weight,
      values: [...relative, exponent],
      covariance,
    }));
    for (let i = 0; i < 3; i += 1)
      for (let k = 0; k < 3; k += 1) {
        const found = all.reduce(
          (sum, { weight, values, covariance }) =>
            sum + weight * (covariance[i]![k]! + (values[i]! - mean[i]!) * (values[k]! - mean[k]!)),
          0,
        );
        const expected = cov[i]![k]! + (i === k && i < 2 ? noiseVariance[i]! : 0);
        expect(found / Math.sqrt(cov[i]![i]! * cov[k]![k]!)).toBeCloseTo(
          expected / Math.sqrt(cov[i]![i]! * cov[k]![k]!),
          2,
        );
      }
  });

  it('hold the change between two runs in about 95 of 100, however slow the wander', () => {
    const normal = normals(11);
    for (const timeS of [3, 12]) {
      let inside = 0;
      const pairs = 60;
      for (let k = 0; k < pairs; k += 1) {
        const levels = [wandering(normal, 28, 0.01, 0.08, timeS), wandering(normal, 28, 0.02, 0.08, timeS)].map(
          levelOf,
        );
        const changes = levelCases(levels, LAWS).map(({ weight, relative, covariance }) => ({
          weight,
          mean: Math.log((levels[1]!.power * relative[1]!) / (levels[0]!.power * relative[0]!)),
          sd: Math.hypot(Math.sqrt(covariance[0]![0]!) / relative[0]!, Math.sqrt(covariance[1]![1]!) / relative[1]!),
        }));
        const low = mixtureQuantile(changes, 0.025);
        const high = mixtureQuantile(changes, 0.975);
        if (low < Math.LN2 && Math.LN2 < high) inside += 1;
      }
      expect(inside / pairs).toBeGreaterThan(0.88);
    }
  });

  it('read a long run in means of neighbours, which say the same of a steady level', () => {
    const normal = normals(3);
    const noisy = (count: number): Run => {
      const powers = Array.from({ length: count }, () => 1 + 0.1 * normal());
      return { powers, logSpeeds: powers.map(() => 0), noise: 1e-6, scatter: 0.01 };
    };
    const found = levelCases([levelOf(noisy(480))], LAWS);
    const sd = Math.sqrt(found.reduce((sum, { weight, covariance }) => sum + weight * covariance[0]![0]!, 0));
    const mean = found.reduce((sum, { weight, relative }) => sum + weight * relative[0]!, 0);
    // Neighbours that share a sixth of their noise make the mean's variance a third more than that of independent ones.
    const byNoise = Math.sqrt((0.01 * (4 / 3)) / 480);
    expect(sd / byNoise).toBeGreaterThan(1);
    expect(sd / byNoise).toBeLessThan(3);
    expect(Math.abs(mean - 1)).toBeLessThan(2 * sd);
  });
});

describe('a mixture of normal distributions', () => {
  it('is the normal distribution where all its parts are one', () => {
    const parts = [0.3, 0.7].map((weight) => ({ weight, mean: 2, sd: 0.5 }));
    expect(mixtureQuantile(parts, 0.975)).toBeCloseTo(2 + 1.959964 * 0.5, 5);
    expect(mixtureQuantile(parts, 0.025)).toBeCloseTo(2 - 1.959964 * 0.5, 5);
  });

  it('has each part beyond the other when they are far apart', () => {
    const parts = [
      { weight: 0.25, mean: -100, sd: 1 },
      { weight: 0.75, mean: 100, sd: 2 },
    ];
    expect(mixtureQuantile(parts, 0.125)).toBeCloseTo(-100, 6);
    expect(mixtureQuantile(parts, 0.625)).toBeCloseTo(100, 6);
  });
});
