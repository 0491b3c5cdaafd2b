import { describe, expect, it } from 'vitest';
import { concentration } from '../../../../src/core/signal/spectra/concentration.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 128;

const recording = (valueAt: (t: number) => number, seconds = 16): Prepared => {
  const { normal } = seededRandom(4);
  const axis = Float64Array.from({ length: seconds * RATE }, (_, i) => valueAt(i / RATE) + 0.1 * normal());
  return { samplingRateHz: RATE, durationS: seconds, up: null, pieces: [{ startS: 0, axes: [axis] }] };
};
const tone =
  (hz: number, amplitude: number) =>
  (t: number): number =>
    amplitude * Math.cos(2 * Math.PI * hz * t);

describe('how far the strongest line stands out', () => {
  // Hann window of 4 s: noise of 0.1 a sample has 0.01/64 (m/s²)²/Hz, a bin of 0.25 Hz with an equivalent noise
  // bandwidth of 1.5 bins (Harris, 1978) holds 0.375 of it; a tone on a bin has a²/2.
  it('is the power of a tone over that of the noise about it', () => {
    const expected = Math.log(0.5 / ((0.01 / 64) * 0.375));
    expect(concentration(recording(tone(20, 1)), 60)).toBeCloseTo(expected, 0);
  });

  it('is more by what its place is worth, and no more by what another place is', () => {
    const plain = concentration(recording(tone(20, 1)), 60);
    expect(concentration(recording(tone(20, 1)), 60, (hz) => (Math.abs(hz - 20) < 1 ? 1 : 0))).toBeCloseTo(
      plain + 1,
      9,
    );
    expect(concentration(recording(tone(20, 1)), 60, (hz) => (Math.abs(hz - 40) < 1 ? 1 : 0))).toBeCloseTo(plain, 9);
  });

  it('is little for noise, and for a tone that is not looked at', () => {
    expect(
      concentration(
        recording(() => 0),
        60,
      ),
    ).toBeLessThan(3);
    expect(concentration(recording(tone(50, 1)), 40)).toBeLessThan(3);
    expect(concentration(recording(tone(2, 1)), 60)).toBeLessThan(3);
  });

  it('is nothing where nothing was recorded', () => {
    const silent: Prepared = { ...recording(() => 0), pieces: [{ startS: 0, axes: [new Float64Array(16 * RATE)] }] };
    expect(concentration(silent, 60)).toBeCloseTo(0, 9);
  });

  it('is less the faster a tone sweeps', () => {
    const sweep = (hzPerS: number) =>
      concentration(
        recording((t) => tone(20 + (hzPerS * t) / 2, 1)(t)),
        60,
      );
    expect(sweep(0.1)).toBeLessThan(sweep(0));
    expect(sweep(1)).toBeLessThan(sweep(0.1) - 1);
  });

  it('is told of a recording shorter than a segment', () => {
    expect(concentration(recording(tone(20, 1), 2), 60)).toBeGreaterThan(6);
  });
});
