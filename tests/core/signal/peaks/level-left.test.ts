/**
 * What jitter scatters of an image is by the characteristic function of its distribution: for a normal one of standard
 * deviation σ, exp(−½(2π·m·f_s·σ)²) of it is left (closed form). Evening the samples out takes some of that back, so that
 * this bounds it from below; what it leaves in all is measured on another tone, in noise.
 */
import { describe, expect, it } from 'vitest';
import type { Instants } from '../../../../src/core/signal/peaks/instants.ts';
import { levelLeftBy } from '../../../../src/core/signal/peaks/level-left.ts';
import { resampleEvenly } from '../../../../src/core/signal/prepare/resample.ts';
import { randomSource } from '../../../../src/core/simulate/random.ts';

const RATE_HZ = 100;
const SECONDS = 60;

/** A tone of size 1 in noise, taken about every 10 ms. */
const made = (hz: number, jitterS: number, seed: number): Instants => {
  const random = randomSource(seed);
  const timeS = Float64Array.from({ length: SECONDS * RATE_HZ }, (_, i) => 5 + i / RATE_HZ + jitterS * random.normal());
  const axis = timeS.map((t) => Math.sin(2 * Math.PI * hz * t + seed) + 0.1 * random.normal());
  return { samplingRateHz: RATE_HZ, pieces: [{ timeS, axes: [axis] }] };
};

/** 0-to-peak amplitude at a frequency, by least squares over the whole length (whole seconds, whole hertz). */
const shownAt = ({ pieces }: Instants, hz: number): number => {
  const [{ timeS, axes }] = pieces as [Instants['pieces'][number]];
  const [even] = resampleEvenly(timeS, axes, RATE_HZ) as [Float64Array];
  const n = 50 * RATE_HZ;
  let [re, im] = [0, 0];
  for (let i = 0; i < n; i++) {
    re += even[i + 200]! * Math.cos((2 * Math.PI * hz * i) / RATE_HZ);
    im += even[i + 200]! * Math.sin((2 * Math.PI * hz * i) / RATE_HZ);
  }
  return (2 * Math.hypot(re, im)) / n;
};

describe('what is left of a level, brought to even instants', () => {
  it.each([3e-4, 1e-3, 1.5e-3])('of an image, with %f s of jitter, is what shows in a recording', (jitterS) => {
    for (const seed of [1, 2, 3]) {
      const instants = made(87, jitterS, seed);
      const left = levelLeftBy(instants)(13, -1);
      expect(Math.abs(shownAt(instants, 13) / left - 1)).toBeLessThan(0.03);
      expect(left).toBeGreaterThan(Math.exp(-0.5 * (2 * Math.PI * RATE_HZ * jitterS) ** 2) - 0.01);
      expect(left).toBeLessThanOrEqual(1.01);
    }
  });

  it('of a tone that stands where it shows, is all', () => {
    for (const hz of [3, 13, 40]) expect(levelLeftBy(made(hz, 1e-3, 1))(hz, 0)).toBeCloseTo(1, 2);
  });

  it('at even instants is all of it, near or folded', () => {
    const left = levelLeftBy(made(13, 0, 1));
    for (const fold of [0, -1, 1, -2]) expect(left(13, fold)).toBeCloseTo(1, 2);
  });
});
