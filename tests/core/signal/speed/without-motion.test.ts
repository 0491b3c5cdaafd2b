import { describe, expect, it } from 'vitest';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { withoutMotion } from '../../../../src/core/signal/speed/without-motion.ts';

const RATE = 100;
const COUNT = 4000;
const MEAN_HZ = 20;
/** The speed's own wander, slow and by a hundredth, as straight lines between whole seconds. */
const timeS = Float64Array.from({ length: 41 }, (_, i) => i);
const track = { timeS, relative: timeS.map((t) => 1 + 0.01 * Math.sin(t / 3)) };

/** A tone that moves by `slopeHz` per unit of relative speed, its phase summed up step by step. */
const moving = (slopeHz: number): Prepared => {
  const samples = new Float64Array(COUNT);
  const fine = 20;
  let turns = 0;
  for (let i = 0; i < COUNT; i++) {
    samples[i] = 0.3 * Math.cos(2 * Math.PI * turns + 0.4);
    for (let k = 0; k < fine; k++) {
      const t = (i + (k + 0.5) / fine) / RATE;
      const at = Math.min(39, Math.floor(t));
      const relative = track.relative[at]! + (t - at) * (track.relative[at + 1]! - track.relative[at]!);
      turns += (MEAN_HZ + slopeHz * (relative - 1)) / (RATE * fine);
    }
  }
  return { samplingRateHz: RATE, durationS: COUNT / RATE, pieces: [{ startS: 0, axes: [samples] }], up: null };
};

describe('a motion taken out', () => {
  // Outside check: what is left is compared with the closed form of a steady cosine, sample by sample.
  it.each([120, -80])('makes a tone that moves by %s Hz a steady one of the same amplitude and phase', (slopeHz) => {
    const steady = withoutMotion(moving(slopeHz), track, slopeHz).pieces[0]!.axes[0]!;
    // The ends of a finite recording ring; between them it must fit.
    for (let i = 400; i < COUNT - 400; i++) {
      expect(steady[i]).toBeCloseTo(0.3 * Math.cos((2 * Math.PI * MEAN_HZ * i) / RATE + 0.4), 2);
    }
  });
});
