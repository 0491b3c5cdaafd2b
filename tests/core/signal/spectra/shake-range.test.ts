import { describe, expect, it } from 'vitest';
import { shakeRange } from '../../../../src/core/signal/spectra/shake-range.ts';
import { normals, preparedOf } from '../made.ts';

const RATE = 200;
const noise = (seconds: number, sdAt: (t: number) => number, seed = 1): Float64Array => {
  const normal = normals(seed);
  return Float64Array.from({ length: seconds * RATE }, (_, i) => sdAt(i / RATE) * normal());
};

describe('the range of the whole shake', () => {
  it('is that of its loud and quiet parts, over all axes', () => {
    const step = (t: number): number => (t < 30 ? 1 : 3);
    const axes = [noise(60, step, 1), noise(60, step, 2), noise(60, (t) => 0.5 * step(t), 3)];
    expect(shakeRange(preparedOf(axes, RATE))).toBeGreaterThan(2.7);
    expect(shakeRange(preparedOf(axes, RATE))).toBeLessThan(3.6);
  });

  it('is near one for an even drive, shocks or not', () => {
    const even = noise(60, () => 1);
    expect(shakeRange(preparedOf([even], RATE))).toBeLessThan(1.4);
    const shocks = even.map((a, i) => (i % 1000 < 30 ? a + 40 : a));
    expect(shakeRange(preparedOf([shocks], RATE))).toBeLessThan(1.4);
  });

  it('is near one for a tone, whatever the rate: every few samples would fall in with it', () => {
    for (const rate of [400, 800, 1000, 2000]) {
      for (const hz of [100, 100.1, 103, 200]) {
        const tone = Float64Array.from({ length: 40 * rate }, (_, i) =>
          Math.cos((2 * Math.PI * hz * i) / rate + 0.3 * Math.sin(i / rate)),
        );
        expect(shakeRange(preparedOf([tone], rate))).toBeLessThan(1.5);
      }
    }
  });

  it('is not told of a recording shorter than sixteen seconds', () => {
    expect(shakeRange(preparedOf([noise(15, (t) => (t < 7 ? 1 : 5))], RATE))).toBe(1);
    expect(shakeRange(preparedOf([noise(17, (t) => (t < 8 ? 1 : 5))], RATE))).toBeGreaterThan(3);
  });
});
