import { describe, expect, it } from 'vitest';
import { levelsOfPair } from '../../../../src/core/diagnosis/compare/levels-of-pair.ts';
import { blockScatter, levelOf } from '../../../../src/core/signal/speed/order-level.ts';
import { BLOCK_S, orderReadings } from '../../../../src/core/signal/speed/order-readings.ts';
import type { OrderReadings } from '../../../../src/core/signal/speed/order-readings.ts';
import { randomSource } from '../../../../src/core/simulate/random.ts';

const RATE = 100;
const STEADY = { timeS: Float64Array.of(0), relative: Float64Array.of(1) };

/** An order along one direction, strong noise along another that is neither along nor across it. */
function readings(seed: number, amplitude: number, noise: number): OrderReadings {
  const random = randomSource(seed, 'axes weighed');
  const axes = [0, 1, 2].map(() => new Float64Array(60 * RATE));
  for (let i = 0; i < 60 * RATE; i += 1) {
    const order = amplitude * Math.sin((2 * Math.PI * 20 * i) / RATE);
    const along = noise * random.normal();
    [1, 0.5, 0].forEach((share, k) => {
      axes[k]![i] = share * order + [0.6, 0.6, 0.5][k]! * along + 0.05 * noise * random.normal();
    });
  }
  const prepared = { samplingRateHz: RATE, durationS: 60, up: null, pieces: [{ startS: 0, axes }] };
  return orderReadings(prepared, 20, STEADY, BLOCK_S, true)!;
}

describe('axes weighed by their noise', () => {
  it('read a change more surely than the plain sum of the axes, and the same change', () => {
    const pairs = Array.from(
      { length: 20 },
      (_, k) => [readings(100 + k, 0.1, 0.4), readings(200 + k, 0.07, 0.4)] as const,
    );
    const dbOf = (one: { power: number }, other: { power: number }): number => 10 * Math.log10(other.power / one.power);
    const plain = pairs.map(([one, other]) => dbOf(levelOf(one), levelOf(other)));
    const better = pairs.map(([one, other]) => dbOf(...levelsOfPair(one, other)));
    const truth = 20 * Math.log10(0.7);
    const rms = (values: readonly number[]): number =>
      Math.sqrt(values.reduce((sum, value) => sum + (value - truth) ** 2, 0) / values.length);
    expect(rms(better)).toBeLessThan(0.5 * rms(plain));
    for (const [one, other] of pairs) {
      const [weighedOne] = levelsOfPair(one, other);
      // The first run keeps its power to what its own noise leaves open.
      expect(weighedOne.power / levelOf(one).power).toBeGreaterThan(0.8);
      expect(weighedOne.power / levelOf(one).power).toBeLessThan(1.25);
      expect(blockScatter(weighedOne)).toBeLessThan(0.5 * blockScatter(levelOf(one)));
    }
  });

  it('count alike where noise does not matter', () => {
    const [one, other] = [readings(1, 0.1, 1e-4), readings(2, 0.05, 1e-4)];
    const [a, b] = levelsOfPair(one, other);
    expect(a.power / levelOf(one).power).toBeCloseTo(1, 4);
    expect(b.power / levelOf(other).power).toBeCloseTo(1, 3);
  });

  it('are left as they are where there is but one axis', () => {
    const onOne = (seed: number): OrderReadings => {
      const random = randomSource(seed, 'one axis');
      const axis = Float64Array.from(
        { length: 60 * RATE },
        (_, i) => 0.1 * Math.sin((2 * Math.PI * 20 * i) / RATE) + 0.4 * random.normal(),
      );
      const prepared = { samplingRateHz: RATE, durationS: 60, up: null, pieces: [{ startS: 0, axes: [axis] }] };
      return orderReadings(prepared, 20, STEADY, BLOCK_S, true)!;
    };
    const [one, other] = [onOne(1), onOne(2)];
    expect(levelsOfPair(one, other)).toEqual([levelOf(one), levelOf(other)]);
  });
});
