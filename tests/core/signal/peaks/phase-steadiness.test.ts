import { describe, expect, it } from 'vitest';
import { findPeaks } from '../../../../src/core/signal/peaks/detect.ts';
import { frequencyWander, type PartAmplitude } from '../../../../src/core/signal/peaks/phase-steadiness.ts';
import { normals, preparedOf } from '../made.ts';

const RATE = 200;
const SECONDS = 60;

/** A tone at 30.3 Hz whose frequency swings by an rms of σ Hz with a period, in noise: its wander by its phases, Hz. */
const wanderOf = (sigmaHz: number, periodS: number, noise = 0.02, seed = 1): number => {
  const normal = normals(seed);
  const w = (2 * Math.PI) / periodS;
  const samples = Float64Array.from({ length: SECONDS * RATE }, (_, i) => {
    const t = i / RATE;
    // The integral of 30.3 + σ·√2·cos(w·t + 0.7), times 2π.
    const turned = 30.3 * t + (sigmaHz * Math.SQRT2 * Math.sin(w * t + 0.7)) / w;
    return 0.2 * Math.cos(2 * Math.PI * turned) + noise * normal();
  });
  const peak = findPeaks(preparedOf([samples], RATE)).reduce((a, b) => (b.amplitudeMps2 > a.amplitudeMps2 ? b : a));
  expect(peak.frequencyHz).toBeCloseTo(30.3, 1);
  return peak.wanderHz!;
};

describe('the wander that phases leave room for', () => {
  it.each([22, 28, 34])('is what a frequency swings by with a period of %d s, within a factor of two', (periodS) => {
    for (const sigmaHz of [0.002, 0.004]) {
      const told = wanderOf(sigmaHz, periodS);
      expect(told / sigmaHz).toBeGreaterThan(0.5);
      expect(told / sigmaHz).toBeLessThan(2);
    }
  });

  it('of a steady tone is its noise’s, and so twenty times less than its width could tell', () => {
    for (const seed of [1, 2, 3]) {
      const told = wanderOf(0, 20, 0.02, seed);
      // 1.44/60 Hz is the width of a Hann window of a minute.
      expect(told).toBeLessThan(1.44 / SECONDS / 20);
      expect(told).toBeGreaterThan(0);
    }
    // Ten times the noise leaves ten times the room.
    expect(wanderOf(0, 20, 0.2) / wanderOf(0, 20, 0.02)).toBeGreaterThan(5);
  });

  it('does not see a steady offset of the frequency, nor a phase that went round', () => {
    const parts = (phaseAt: (t: number) => number): PartAmplitude[] =>
      Array.from({ length: 8 }, (_, p) => {
        const centreS = 5 * p + 5;
        const phase = phaseAt(centreS);
        return {
          centreS,
          lengthS: 10,
          amplitude: { re: [Math.cos(phase)], im: [Math.sin(phase)] },
        };
      });
    const whole = { re: [1], im: [0] };
    const none = frequencyWander(
      parts(() => 0),
      whole,
      1e6,
      45,
    )!;
    expect(
      frequencyWander(
        parts((t) => 0.5 * t - 9),
        whole,
        1e6,
        45,
      ),
    ).toBeCloseTo(none, 9);
    // 1/(1e6·10) is the variance of a part's phase; 2π·0.06·45 s of it make a hertz.
    expect(none).toBeCloseTo(Math.sqrt(1e-7) / (2 * Math.PI * 0.06 * 45), 12);
    expect(frequencyWander(parts(() => 0).slice(0, 3), whole, 1e6, 45)).toBeNull();
  });
});
