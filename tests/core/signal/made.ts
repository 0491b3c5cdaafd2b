/** Signals for these tests that a script in another language makes too, number for number. */
import type { Prepared } from '../../../src/core/signal/spectra/spectrum.ts';

/** S. K. Park & K. W. Miller, Comm. ACM 31(10), 1988: x ← 16807·x mod 2³¹ − 1; uniform in (−½, ½). */
export function parkMiller(seed: number, count: number): Float64Array {
  let state = seed;
  return Float64Array.from({ length: count }, () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647 - 0.5;
  });
}

/** Standard normal numbers from the same generator by the polar method (Marsaglia & Bray, SIAM Review 6(3), 1964). */
export function normals(seed: number): () => number {
  let state = (seed * 7919 + 1) % 2147483647;
  const uniform = (): number => (state = (state * 16807) % 2147483647) / 2147483647;
  for (let i = 0; i < 8; i += 1) uniform();
  return () => {
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
}

/** One even piece. */
export function preparedOf(
  axes: readonly Float64Array[],
  samplingRateHz: number,
  startS = 0,
  up: readonly number[] | null = null,
): Prepared {
  return { samplingRateHz, durationS: axes[0]!.length / samplingRateHz, pieces: [{ startS, axes }], up };
}

export const samples = (count: number, rate: number, f: (t: number, i: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => f(i / rate, i));

export const tone =
  (amplitude: number, frequencyHz: number, phase = 0) =>
  (t: number): number =>
    amplitude * Math.cos(2 * Math.PI * frequencyHz * t + phase);

/** Greatest difference relative to the reference, or absolute where the reference is 0. */
export function worstRelative(own: readonly number[], reference: readonly number[]): number {
  return Math.max(...reference.map((r, i) => Math.abs(own[i]! - r) / (r === 0 ? 1 : Math.abs(r))));
}
