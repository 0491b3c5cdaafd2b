import { describe, expect, it } from 'vitest';
import { hannLobe, interpolateHann } from '../../../../src/core/signal/numeric/peak-interpolation.ts';
import { welchAmplitude } from '../../../../src/core/signal/spectra/welch.ts';
import { preparedOf, samples, tone } from '../made.ts';

describe('where between two bins a line is', () => {
  /** Two tones, 200 Hz, 10 s, Hann: values of the plain transform and the two-bin formula worked by an independent script. */
  it('reads 14.4128 Hz and 53.7599 Hz off 0.1 Hz bins, amplitudes 0.05 and 0.02', () => {
    const both = samples(2000, 200, (t) => tone(0.05, 14.4128, 0.7)(t) + tone(0.02, 53.7599, -0.4)(t));
    const { amplitudeMps2 } = welchAmplitude(preparedOf([both], 200), { segmentLength: 2000, overlap: 0 });
    [0.02027314, 0.0494739, 0.0298112].forEach((a, i) => expect(amplitudeMps2[143 + i]).toBeCloseTo(a, 7));
    [0.01578003, 0.01801018, 0.00449317].forEach((a, i) => expect(amplitudeMps2[537 + i]).toBeCloseTo(a, 7));
    const low = interpolateHann(amplitudeMps2, 144);
    expect(Math.abs(low.bin * 0.1 - 14.4128)).toBeLessThan(2e-6);
    expect(Math.abs(low.gain * amplitudeMps2[144]! - 0.05)).toBeLessThan(1e-6);
    const high = interpolateHann(amplitudeMps2, 538);
    expect(Math.abs(high.bin * 0.1 - 53.7599)).toBeLessThan(2e-6);
    expect(Math.abs(high.gain * amplitudeMps2[538]! - 0.02)).toBeLessThan(1e-6);
  });

  it('has no bias anywhere between two bins (a parabola on the logarithm errs by 0.0155 bins at a quarter)', () => {
    for (let offset = -0.5; offset <= 0.5; offset += 0.05) {
      const one = samples(1024, 1024, tone(1, 200 + offset, 0.3));
      const { amplitudeMps2 } = welchAmplitude(preparedOf([one], 1024), { segmentLength: 1024, overlap: 0 });
      let top = 199;
      for (const k of [200, 201]) if (amplitudeMps2[k]! > amplitudeMps2[top]!) top = k;
      const { bin, gain } = interpolateHann(amplitudeMps2, top);
      expect(Math.abs(bin - 200 - offset)).toBeLessThan(1e-5);
      expect(Math.abs(gain * amplitudeMps2[top]! - 1)).toBeLessThan(1e-5);
    }
  });

  it('is the Hann lobe sin πδ/(πδ(1 − δ²)): 1, 0.848826 at a half, ½ at one bin, 0 at two', () => {
    expect(hannLobe(0)).toBe(1);
    expect(hannLobe(0.5)).toBeCloseTo(0.848826, 6);
    expect(hannLobe(-0.5)).toBeCloseTo(0.848826, 6);
    expect(hannLobe(1)).toBe(0.5);
    expect(hannLobe(1 + 1e-6)).toBeCloseTo(0.5, 5);
    expect(hannLobe(2)).toBeCloseTo(0, 12);
  });
});
