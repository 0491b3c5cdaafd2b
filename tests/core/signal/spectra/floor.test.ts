import { describe, expect, it } from 'vitest';
import { amplitudeFloor, noiseFloor } from '../../../../src/core/signal/spectra/floor.ts';
import { welchAmplitude } from '../../../../src/core/signal/spectra/welch.ts';
import { normals, preparedOf, samples, tone } from '../made.ts';

describe('the noise floor', () => {
  it.each([1, 4, 16])(
    'of %i averaged powers is their mean, not their median (χ² with 2K degrees of freedom)',
    (averages) => {
      const normal = normals(averages);
      const power = Float64Array.from({ length: 6001 }, () => {
        let sum = 0;
        for (let k = 0; k < averages; k += 1) sum += (normal() ** 2 + normal() ** 2) / 2;
        return (3 * sum) / averages;
      });
      const floor = noiseFloor(power, averages, 3000);
      // The median of n powers scatters by about 1/√(nK).
      expect(Math.abs(floor[3000]! / 3 - 1)).toBeLessThan(4 / Math.sqrt(6000 * averages));
    },
  );

  it('under white noise of σ 0.1 at 1 kHz, 1 Hz bins: √E[A²] = 7.745967e-3 (2σ√(ENBW/N), Hann)', () => {
    const normal = normals(12);
    const axes = Array.from({ length: 3 }, () => samples(40_000, 1000, () => 0.1 * normal()));
    const one = welchAmplitude(preparedOf(axes, 1000), { segmentLength: 1000, axis: 0 });
    const all = welchAmplitude(preparedOf(axes, 1000), { segmentLength: 1000 });
    const middle = (floor: Float64Array): number => floor.slice(20, 480).reduce((s, v) => s + v, 0) / 460;
    expect(Math.abs(middle(amplitudeFloor(one)) / 7.745967e-3 - 1)).toBeLessThan(0.02);
    expect(Math.abs(middle(amplitudeFloor(all, 3)) / (7.745967e-3 * Math.sqrt(3)) - 1)).toBeLessThan(0.02);
  });

  it('is hardly raised by a strong line', () => {
    const normal = normals(13);
    const noise = samples(40_000, 400, () => 0.1 * normal());
    const line = tone(1, 50.3);
    const quiet = amplitudeFloor(welchAmplitude(preparedOf([noise], 400)));
    const loud = amplitudeFloor(welchAmplitude(preparedOf([noise.map((v, i) => v + line(i / 400))], 400)));
    const at = Math.round(50.3 / (400 / 2048));
    expect(loud[at]! / quiet[at]!).toBeLessThan(1.15);
  });
});
