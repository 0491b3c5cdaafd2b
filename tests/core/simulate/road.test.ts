import { describe, expect, it } from 'vitest';
import { randomSource } from '../../../src/core/simulate/random.ts';
import { heightAt, makeRoad } from '../../../src/core/simulate/road.ts';

/** Road class B at 0.1 cycle/m, m³: the geometric mean of ISO 8608:2016. */
const CLASS_B_M3 = 64e-6;

/** Cross and own densities at a spatial frequency, m³, by plain sums over Hann segments: slow and simple. */
const densities = (
  a: Float64Array,
  b: Float64Array,
  stepM: number,
  perM: number,
): { readonly own: number; readonly coherence: number } => {
  const length = 4096;
  let aa = 0;
  let bb = 0;
  let re = 0;
  let im = 0;
  let count = 0;
  for (let start = 0; start + length <= a.length; start += length / 2) {
    for (let bin = -2; bin <= 2; bin++) {
      const n = perM + (2 * bin) / (length * stepM);
      let ar = 0;
      let ai = 0;
      let br = 0;
      let bi = 0;
      for (let i = 0; i < length; i++) {
        const w = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / length);
        const c = w * Math.cos(2 * Math.PI * n * i * stepM);
        const s = w * Math.sin(2 * Math.PI * n * i * stepM);
        // Slopes, since heights this red would leak from the longest waves.
        const da = (a[start + i + 1]! - a[start + i]!) / stepM;
        const db = (b[start + i + 1]! - b[start + i]!) / stepM;
        ar += da * c;
        ai += da * s;
        br += db * c;
        bi += db * s;
      }
      aa += ar * ar + ai * ai;
      bb += br * br + bi * bi;
      re += ar * br + ai * bi;
      im += ai * br - ar * bi;
      count++;
    }
  }
  // One-sided density of the slope over (2πn)² is that of the height; Hann's mean square is 3/8.
  const scale = (2 * stepM) / (0.375 * length) / count;
  return { own: (aa * scale) / (2 * Math.PI * perM) ** 2, coherence: (re * re + im * im) / (aa * bb) };
};

describe('the road', () => {
  const road = makeRoad(CLASS_B_M3, 6000, randomSource(5, 'road'));

  it.each([0.1, 0.3, 1])('has the class B density of ISO 8608 at %d cycle/m', (n) => {
    // G(n) = G(n0)·(n/n0)⁻²; the contact patch takes a little at short waves (mean over 0.125 m: sinc²).
    const patch = n * 0.125;
    const sinc = Math.sin(Math.PI * patch) / (Math.PI * patch);
    const expected = 64e-6 * (n / 0.1) ** -2 * sinc ** 2;
    const { own } = densities(road.left, road.right, road.stepM, n);
    expect(own / expected).toBeGreaterThan(0.85);
    expect(own / expected).toBeLessThan(1.15);
  });

  it('moves both tracks together over long waves and apart over short ones', () => {
    expect(densities(road.left, road.right, road.stepM, 0.04).coherence).toBeGreaterThan(0.75);
    expect(densities(road.left, road.right, road.stepM, 2).coherence).toBeLessThan(0.1);
  });

  it('has a root mean square of about 7.6 mm per class B over 0.011..2.83 cycle/m, and is flat at density 0', () => {
    const mean = road.left.reduce((a, b) => a + b, 0) / road.left.length;
    const rms = Math.sqrt(road.left.reduce((a, b) => a + (b - mean) ** 2, 0) / road.left.length);
    // Waves held back below 0.01 cycle/m by one pole: a little more than the band alone.
    expect(rms).toBeGreaterThan(0.006);
    expect(rms).toBeLessThan(0.013);
    expect(makeRoad(0, 50, randomSource(1)).left.every((h) => h === 0)).toBe(true);
  });

  it('is read by straight lines between its points', () => {
    expect(heightAt(new Float64Array([0, 1, 3]), 0.5, 0.75)).toBeCloseTo(2, 12);
  });
});
