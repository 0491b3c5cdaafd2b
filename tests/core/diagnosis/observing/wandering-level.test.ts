import { describe, expect, it } from 'vitest';
import { withWanderingLevel } from '../../../../src/core/diagnosis/observing/wandering-level.ts';
import { findPeaks } from '../../../../src/core/signal/peaks/detect.ts';
import { STEADY } from '../../../../src/core/signal/speed/equal-angle.ts';
import { normals, preparedOf, samples } from '../../signal/made.ts';

const RATE = 200;
const LINE_HZ = 80;
const LEVEL = 0.3;

/** One axis of 60 s: what is given, in noise. */
const recorded = (of: (t: number) => number, noise = 0.02, seed = 4) => {
  const normal = normals(seed);
  return preparedOf([samples(60 * RATE, RATE, (t) => of(t) + noise * normal())], RATE);
};

/** The strongest line about 80 Hz, as found and with its wander allowed for. */
const strongest = (of: (t: number) => number, noise?: number, seed?: number) => {
  const prepared = recorded(of, noise, seed);
  const near = findPeaks(prepared).filter(({ frequencyHz }) => Math.abs(frequencyHz - LINE_HZ) < 1);
  const [found] = near.toSorted((a, b) => b.amplitudeMps2 - a.amplitudeMps2);
  return { found: found!, leveled: withWanderingLevel(found!, near, prepared, STEADY) };
};

describe('the level of a line that wanders a little', () => {
  it('is that of its blocks: phase that turns by 0.8 rad takes 16 % off its sum over the run', () => {
    // Mean of cos(0.8·sin x) over a turn is the Bessel function J₀(0.8) = 0.8463 (DLMF 10.9.1, 10.2.2).
    const { found, leveled } = strongest((t) => LEVEL * Math.cos(2 * Math.PI * LINE_HZ * t + 0.8 * Math.sin(t / 4)));
    expect(found.amplitudeMps2 / LEVEL).toBeCloseTo(0.8463, 1);
    expect(Math.abs(leveled.amplitudeMps2 / LEVEL - 1)).toBeLessThan(0.02);
  });

  it('is nearer the truth in a weaker line too, as of a wheel in bends', () => {
    // Speeds 5e-4 apart for some 3 s each: what bends of 1500 m radius make of a wheel. Judgment.
    let found = 0;
    let leveled = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const normal = normals(100 + seed);
      let off = 0;
      let phase = 0;
      const phases = Float64Array.from({ length: 60 * RATE }, () => {
        off += -off / (3 * RATE) + 5e-4 * Math.sqrt(2 / (3 * RATE)) * normal();
        return (phase += (2 * Math.PI * LINE_HZ * off) / RATE);
      });
      const wheel = (t: number): number => LEVEL * Math.cos(2 * Math.PI * LINE_HZ * t + phases[Math.round(t * RATE)]!);
      const line = strongest(wheel, 0.8, seed);
      found += line.found.amplitudeMps2 / LEVEL / 12;
      leveled += line.leveled.amplitudeMps2 / LEVEL / 12;
    }
    expect(found).toBeLessThan(0.85);
    expect(leveled).toBeGreaterThan(0.9);
    expect(leveled).toBeLessThan(1.05);
  });

  it('is not raised in a weak line that stands', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { found, leveled } = strongest((t) => LEVEL * Math.cos(2 * Math.PI * LINE_HZ * t), 1.2, seed);
      expect(found.overFloorDb).toBeLessThan(22);
      expect(leveled.amplitudeMps2).toBe(found.amplitudeMps2);
    }
  });

  it('stays as it is where it does not wander, and where a second line beats with it', () => {
    const steady = strongest((t) => LEVEL * Math.cos(2 * Math.PI * LINE_HZ * t));
    expect(steady.leveled).toBe(steady.found);
    const { leveled } = strongest(
      (t) => LEVEL * Math.cos(2 * Math.PI * LINE_HZ * t) + 0.2 * Math.cos(2 * Math.PI * (LINE_HZ + 0.1) * t),
    );
    expect(Math.abs(leveled.amplitudeMps2 / LEVEL - 1)).toBeLessThan(0.02);
  });
});
