import { describe, expect, it } from 'vitest';
import { STEADY } from '../../../../src/core/signal/speed/equal-angle.ts';
import { orderLevel, type OrderLevel } from '../../../../src/core/signal/speed/order-level.ts';
import { strongParts } from '../../../../src/core/signal/speed/strong-parts.ts';
import { normals } from '../made.ts';

const RATE = 200;
const HZ = 40.4;

/** A sine of an amplitude that changes with time, in noise of a standard deviation. */
const partsOf = (amplitude: (timeS: number) => number, noise: number, seconds = 60, seed = 3) => {
  const normal = normals(seed);
  return partsOfSamples((t) => amplitude(t) * Math.cos(2 * Math.PI * HZ * t) + noise * normal(), seconds);
};

/** @param sample of each time in turn */
const partsOfSamples = (sample: (timeS: number) => number, seconds = 60) => {
  const axis = Float64Array.from({ length: seconds * RATE }, (_, i) => sample(i / RATE));
  const prepared = { samplingRateHz: RATE, durationS: seconds, up: null, pieces: [{ startS: 0, axes: [axis] }] };
  return strongParts(orderLevel(prepared, HZ, STEADY)!);
};

const between = (fromS: number, toS: number) => (timeS: number) => timeS > fromS && timeS < toS;

// Hand cases: what was put in is what must come out, to the step of the blocks (2 s).
describe('the parts of a run in which an order is strong', () => {
  it('are told with the level they had there, not with the mean over the run', () => {
    const inside = between(20, 32);
    const parts = partsOf((t) => (inside(t) ? 0.3 : 0.01), 0.1)!;
    expect(parts.spans).toHaveLength(1);
    expect(Math.abs(parts.spans[0]!.fromS - 20)).toBeLessThanOrEqual(2);
    expect(Math.abs(parts.spans[0]!.toS - 32)).toBeLessThanOrEqual(2);
    // Blocks that hang over the edges are in it too: never more than was there, and not far less.
    expect(Math.sqrt(parts.power)).toBeGreaterThan(0.24);
    expect(Math.sqrt(parts.power)).toBeLessThan(0.31);
    expect(parts.leastPower).toBeLessThan(parts.power);
  });

  it('are several where it comes and goes', () => {
    const inside = [between(6, 12), between(26, 32), between(46, 52)];
    const parts = partsOf((t) => (inside.some((one) => one(t)) ? 0.3 : 0), 0.1)!;
    expect(parts.spans).toHaveLength(3);
  });

  it('are none of an order that stays, swings by a half or beats slowly, nor of mere noise, in any of 40 draws', () => {
    for (let seed = 1; seed <= 40; seed++) {
      expect(partsOf(() => 0.05, 0.2, 60, seed)).toBeNull();
      expect(partsOf((t) => 0.1 * (1 + 0.5 * Math.sin(t / 4)), 0.05, 60, seed)).toBeNull();
      expect(partsOf((t) => 0.1 * Math.cos(t / 5), 0.05, 60, seed)).toBeNull();
      expect(partsOf(() => 0, 0.3, 60, seed)).toBeNull();
    }
  });

  it('are none where a rough stretch of road shakes a resonance at its place: its blocks come and go, an order swells', () => {
    // Two poles of 1 % damping: 0.8 Hz wide, so that a hertz beside it there is a seventh of the noise.
    const [radius, angle] = [Math.exp((-0.01 * 2 * Math.PI * HZ) / RATE), (2 * Math.PI * HZ) / RATE];
    const inside = between(20, 44);
    const shaken = (seed: number) => {
      const normal = normals(seed);
      let [one, two] = [0, 0];
      return partsOfSamples((t) => {
        const road = (inside(t) ? 0.02 : 0.001) * normal();
        [one, two] = [road + 2 * radius * Math.cos(angle) * one - radius ** 2 * two, one];
        return one + 0.02 * Math.cos(2 * Math.PI * HZ * t);
      });
    };
    const told = Array.from({ length: 30 }, (_, k) => shaken(50 + k)).filter((parts) => parts !== null);
    // Taken for bursts of an order by what is seen beside it alone: 17.
    expect(told.length).toBeLessThanOrEqual(4);
  });

  it('are rough by all their blocks, weak ones between the strong ones too', () => {
    const quiet = (count: number): readonly number[] => Array.from({ length: count }, () => 5.5);
    const told = (burst: readonly number[]) => {
      const blockPowers = [...quiet(20), ...burst, ...quiet(8)];
      const level: Partial<OrderLevel> = {
        blockPowers,
        blockNoises: blockPowers.map(() => 5),
        blockLogSpeeds: blockPowers.map(() => 0),
        blockStartsS: blockPowers.map((_, k) => 2 * k),
        stepS: 2,
      };
      return strongParts(level as OrderLevel);
    };
    // A resonance at 10 Hz that a wheel's turning passed in a simulated coast-down; and as strong, but swelling.
    expect(told([19, 44, 24, 101, 69, 10, 44, 23, 18])).toBeNull();
    expect(told([19, 23, 44, 69, 101, 44, 24, 18, 10])).not.toBeNull();
  });
});
