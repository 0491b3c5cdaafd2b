import { describe, expect, it } from 'vitest';
import { withWanderingLevel } from '../../../../src/core/diagnosis/observing/wandering-level.ts';
import { findPeaks } from '../../../../src/core/signal/peaks/detect.ts';
import { STEADY } from '../../../../src/core/signal/speed/equal-angle.ts';
import { normals, preparedOf, samples } from '../../signal/made.ts';

const RATE = 200;
const LINE_HZ = 80;
const LEVEL = 0.3;

/** One axis of 60 s: what is given, in noise. */
const recorded = (of: (t: number) => number) => {
  const normal = normals(4);
  return preparedOf([samples(60 * RATE, RATE, (t) => of(t) + 0.02 * normal())], RATE);
};

/** The strongest line about 80 Hz, as found and with its wander allowed for. */
const strongest = (of: (t: number) => number) => {
  const prepared = recorded(of);
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

  it('stays as it is where it does not wander, and where a second line beats with it', () => {
    const steady = strongest((t) => LEVEL * Math.cos(2 * Math.PI * LINE_HZ * t));
    expect(steady.leveled).toBe(steady.found);
    const { leveled } = strongest(
      (t) => LEVEL * Math.cos(2 * Math.PI * LINE_HZ * t) + 0.2 * Math.cos(2 * Math.PI * (LINE_HZ + 0.1) * t),
    );
    expect(Math.abs(leveled.amplitudeMps2 / LEVEL - 1)).toBeLessThan(0.02);
  });
});
