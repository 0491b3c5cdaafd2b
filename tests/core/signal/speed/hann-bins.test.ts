/** Judged by the plain sum over every sample of Σ x·e^(−jφ)·hann·e^(−j2π·bin·i/N): the definition, nothing left out. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demodulate, interpolator } from '../../../../src/core/signal/speed/demodulate.ts';
import type { SpeedTrack } from '../../../../src/core/signal/speed/equal-angle.ts';
import { hannBins } from '../../../../src/core/signal/speed/hann-bins.ts';
import { randomSource } from '../../../../src/core/simulate/random.ts';

const BINS = [0, -5, -3, 3, 5];

interface Case {
  readonly samplingRateHz: number;
  readonly frequencyHz: number;
  readonly stepLength: number;
  readonly track: SpeedTrack;
  readonly seed: number;
}

/** A strong line elsewhere, one on the order itself and noise. */
const made = ({ samplingRateHz, frequencyHz, stepLength, seed }: Case): Float64Array => {
  const random = randomSource(seed);
  const besideHz = frequencyHz * 1.37;
  return Float64Array.from({ length: 3 * stepLength + 7 }, (_, i) => {
    const t = i / samplingRateHz;
    const lines = 10 * Math.sin(2 * Math.PI * besideHz * t) + Math.sin(2 * Math.PI * frequencyHz * t);
    return lines + 0.3 * random.normal();
  });
};

const plainPower = (
  samples: Float64Array,
  from: number,
  { samplingRateHz, frequencyHz, stepLength, track }: Case,
  bin: number,
) => {
  const length = 2 * stepLength;
  const relativeAt = interpolator(track);
  let phase = 0;
  for (let i = 1; i <= from; i += 1) {
    const both = relativeAt((i - 1) / samplingRateHz) + relativeAt(i / samplingRateHz);
    phase += (Math.PI * frequencyHz * both) / samplingRateHz;
  }
  let [re, im] = [0, 0];
  for (let i = 0; i < length; i += 1) {
    if (i > 0) {
      const both = relativeAt((from + i - 1) / samplingRateHz) + relativeAt((from + i) / samplingRateHz);
      phase += (Math.PI * frequencyHz * both) / samplingRateHz;
    }
    const weight = (2 / length) * (1 - Math.cos((2 * Math.PI * i) / length)) * samples[from + i]!;
    const angle = phase + (2 * Math.PI * bin * i) / length;
    re += weight * Math.cos(angle);
    im -= weight * Math.sin(angle);
  }
  return re * re + im * im;
};

const anyCase: fc.Arbitrary<Case> = fc
  .record({
    samplingRateHz: fc.integer({ min: 50, max: 2000 }),
    share: fc.double({ min: 0.02, max: 0.34, noNaN: true }),
    blockS: fc.constantFrom(2, 4, 4.4),
    slope: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
    seed: fc.integer({ min: 1, max: 10_000 }),
  })
  .map(({ samplingRateHz, share, blockS, slope, seed }) => ({
    samplingRateHz,
    frequencyHz: share * samplingRateHz,
    stepLength: Math.round((blockS * samplingRateHz) / 2),
    track: {
      timeS: Float64Array.of(0, 1.3, 2.9, 20),
      relative: Float64Array.of(1, 1 + slope, 1 - slope / 2, 1 + 3 * slope),
    },
    seed,
  }));

describe('powers at and beside an order', () => {
  it('are those of the plain sum, to 80 dB under the strongest line, at any rate and along any track', () => {
    fc.assert(
      fc.property(anyCase, (drawn) => {
        const samples = made(drawn);
        const { samplingRateHz, frequencyHz, track, stepLength } = drawn;
        const demodulated = demodulate({ startS: 0, axes: [samples] }, samplingRateHz, frequencyHz, track, stepLength);
        const phasorsAt = hannBins(demodulated, BINS, 2);
        for (const step of [0, 1]) {
          BINS.forEach((bin, k) => {
            const plain = Math.sqrt(plainPower(samples, step * stepLength, drawn, bin));
            const { re, im } = phasorsAt(step)[k]!;
            expect(Math.abs(Math.hypot(re[0]!, im[0]!) - plain)).toBeLessThan(10 * 1e-4 + 1e-3 * plain);
          });
        }
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});
