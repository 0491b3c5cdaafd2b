import { describe, expect, it } from 'vitest';
import { withNoiseUnder } from '../../../../src/core/signal/speed/noise-under-order.ts';
import { levelOf } from '../../../../src/core/signal/speed/order-level.ts';
import { BLOCK_S, orderReadings } from '../../../../src/core/signal/speed/order-readings.ts';
import type { OrderLevel } from '../../../../src/core/signal/speed/order-level.ts';
import { randomSource } from '../../../../src/core/simulate/random.ts';

const RATE = 100;
const SECONDS = 60;
const AT_HZ = 10;
const STEADY = { timeS: Float64Array.of(0), relative: Float64Array.of(1) };
const LAWS = [{ weight: 1, exponent: 2, exponentSd: 3 }];

/** White noise through a resonance with two poles, of 10 Hz; without one (damping null) as it is. */
function level(seed: number, amplitude: number, noise: number, damping: number | null): OrderLevel {
  const random = randomSource(seed, 'noise under an order');
  const [radius, angle] = [Math.exp((-(damping ?? 0) * 2 * Math.PI * AT_HZ) / RATE), (2 * Math.PI * AT_HZ) / RATE];
  let [one, two] = [0, 0];
  const next = (): number => {
    const now =
      noise * random.normal() + (damping === null ? 0 : 2 * radius * Math.cos(angle) * one - radius ** 2 * two);
    [one, two] = [now, one];
    return now;
  };
  for (let i = 0; i < 2000; i += 1) next();
  const axis = Float64Array.from({ length: SECONDS * RATE }, (_, i) => next() + amplitude * Math.sin(angle * i));
  const prepared = { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes: [axis] }] };
  return levelOf(orderReadings(prepared, AT_HZ, STEADY, BLOCK_S, true)!);
}

const RUNS = 40;
const meanOf = (levels: readonly OrderLevel[]): number =>
  levels.reduce((sum, { power }) => sum + power, 0) / levels.length;

describe('noise under an order', () => {
  it('on a resonance of 2.5 % damping is more than beside it: most of it is taken out, and the doubt covers the rest', () => {
    const plain = Array.from({ length: RUNS }, (_, k) => level(1000 + k, 0.1, 0.0093, 0.025));
    const better = plain.map((one) => withNoiseUnder(one, LAWS));
    const truth = 0.1 ** 2;
    expect(meanOf(plain) / truth).toBeGreaterThan(1.25);
    expect(Math.abs(meanOf(better) / truth - 1)).toBeLessThan(0.4 * (meanOf(plain) / truth - 1));
    const inside = better.filter(({ power, powerSd }) => Math.abs(power - truth) < 2 * powerSd).length;
    expect(inside / RUNS).toBeGreaterThan(0.85);
    for (const { blockNoises, noisePower } of better)
      expect(blockNoises.reduce((sum, noise) => sum + noise, 0) / blockNoises.length / noisePower).toBeCloseTo(1, 9);
  });

  it('where it is even stays as it is read, within what the reading is sure of', () => {
    const plain = Array.from({ length: RUNS }, (_, k) => level(2000 + k, 0.1, 0.3, null));
    const better = plain.map((one) => withNoiseUnder(one, LAWS));
    expect(Math.abs(meanOf(better) / meanOf(plain) - 1)).toBeLessThan(0.03);
  });

  it('changes nothing where there is none, or where noise hides the order', () => {
    const clean = level(1, 0.1, 0, null);
    expect(withNoiseUnder(clean, LAWS).power / clean.power).toBeCloseTo(1, 12);
    const hidden = level(2, 0, 1, null);
    expect(withNoiseUnder({ ...hidden, power: -0.1 * hidden.noisePower }, LAWS).power).toBe(-0.1 * hidden.noisePower);
  });
});
