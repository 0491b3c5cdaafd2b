/**
 * Values between even samples, band-limited. Near half the rate a short kernel loses level; so samples are first put
 * halfway between the given ones by a long filter, once, and a short kernel reads between these.
 */
import { besselI0 } from './special-functions.ts';

/**
 * Halfway: taps to each side, and β of their Kaiser window. By Kaiser's rule N = (A − 8)/(2.285·Δω) with 63 dB the filter
 * falls about half the rate: from 0.99 of it with the longest, from 0.92 with 24. Near the ends the longest that fits is
 * used.
 */
const HALFWAY_REACHES = [192, 96, 48, 24, 12] as const;
const HALFWAY_BETA = 0.1102 * (63 - 8.7);

/** How near to half the rate a signal is to keep its level. */
export type FlatTo = 0.99 | 0.92;
const REACH_FOR: Readonly<Record<FlatTo, number>> = { 0.99: 192, 0.92: 24 };

/** Taps to each side of the kernel at twice the rate, where nothing stands above half of half the rate: 70 dB. */
const REACH = 6;
const KAISER_BETA = 7;
/** Kernel table: steps between two samples; linear interpolation in it errs by less than 1e-6. */
const STEPS = 512;

/** Windowed sinc at a distance, in samples; the window ends at `reach`. */
const windowedSinc = (distance: number, reach: number, beta: number): number => {
  const r = distance / reach;
  if (Math.abs(r) >= 1) return 0;
  const sinc = distance === 0 ? 1 : Math.sin(Math.PI * distance) / (Math.PI * distance);
  return (sinc * besselI0(beta * Math.sqrt(1 - r * r))) / besselI0(beta);
};

const onceMade = <T>(make: () => T): (() => T) => {
  let made: T | null = null;
  return () => (made ??= make());
};

/** Weights of the samples ½, 1½, … away to one side; both sides add up to 1, so that a constant stays constant. */
const halfwayTaps = onceMade(() =>
  HALFWAY_REACHES.map((reach) => {
    const taps = Float64Array.from({ length: reach }, (_, k) => windowedSinc(k + 0.5, reach, HALFWAY_BETA));
    const sum = 2 * taps.reduce((all, tap) => all + tap, 0);
    return taps.map((tap) => tap / sum);
  }),
);

/** Rows of 2·REACH weights for each fractional offset; each row adds up to 1. */
const kernelTable = onceMade(() => {
  const width = 2 * REACH;
  const table = new Float64Array((STEPS + 1) * width);
  for (let s = 0; s <= STEPS; s++) {
    let sum = 0;
    for (let k = 0; k < width; k++) {
      const w = windowedSinc(s / STEPS - (k - REACH + 1), REACH, KAISER_BETA);
      table[s * width + k] = w;
      sum += w;
    }
    for (let k = 0; k < width; k++) table[s * width + k]! /= sum;
  }
  return table;
});

/** Halfway between sample i and the next. Two sums at once: each waits for its own additions only. */
const halfway = (samples: Float64Array, i: number, taps: Float64Array): number => {
  let even = 0;
  let odd = 0;
  for (let k = 0; k < taps.length; k += 2) {
    even += taps[k]! * (samples[i - k]! + samples[i + 1 + k]!);
    odd += taps[k + 1]! * (samples[i - k - 1]! + samples[i + 2 + k]!);
  }
  return even + odd;
};

/** The same near an end, beyond which its value holds. */
const halfwayHeld = (samples: Float64Array, i: number, taps: Float64Array): number => {
  const last = samples.length - 1;
  let sum = 0;
  for (let k = 0; k < taps.length; k++) {
    sum += taps[k]! * (samples[Math.max(0, i - k)]! + samples[Math.min(last, i + 1 + k)]!);
  }
  return sum;
};

/** The samples at twice the rate: 2n − 1 of them, the given ones at the even places. Beyond the ends the end values hold. */
const atTwiceTheRate = (samples: Float64Array, flatTo: FlatTo): Float64Array => {
  const filters = halfwayTaps().filter(({ length }) => length <= REACH_FOR[flatTo]);
  const shortest = filters[filters.length - 1]!;
  const last = samples.length - 1;
  const out = new Float64Array(Math.max(0, 2 * last + 1));
  if (last >= 0) out[2 * last] = samples[last]!;
  for (let i = 0; i < last; i++) {
    out[2 * i] = samples[i]!;
    const room = Math.min(i + 1, last - i);
    const taps = filters.find(({ length }) => length <= room);
    out[2 * i + 1] = taps ? halfway(samples, i, taps) : halfwayHeld(samples, i, shortest);
  }
  return out;
};

/**
 * Band-limited interpolation of even samples, of several axes at the same places. Flat within 0.1 %; what stands nearer to
 * half the rate falls off.
 * @param axes even samples, all of one length
 * @param positions where to evaluate, in samples from the first; outside 0 … n−1 the end values hold
 */
export const interpolateAxes = (
  axes: readonly Float64Array[],
  positions: Float64Array,
  flatTo: FlatTo = 0.99,
): Float64Array[] => {
  const table = kernelTable();
  const width = 2 * REACH;
  const doubled = axes.map((axis) => atTwiceTheRate(axis, flatTo));
  const n = doubled[0]?.length ?? 0;
  const weights = new Float64Array(width);
  const outs = axes.map(() => new Float64Array(positions.length));
  for (let i = 0; i < positions.length; i++) {
    const p = Math.min(n - 1, Math.max(0, 2 * positions[i]!));
    const base = Math.min(n - 1, Math.floor(p));
    const s = (p - base) * STEPS;
    const row = Math.min(STEPS - 1, Math.floor(s));
    const share = s - row;
    const a = row * width;
    for (let k = 0; k < width; k++) {
      const w = table[a + k]!;
      weights[k] = w + share * (table[a + width + k]! - w);
    }
    const start = base - REACH + 1;
    const inside = start >= 0 && start + width <= n;
    for (let axis = 0; axis < axes.length; axis++) {
      const samples = doubled[axis]!;
      let sum = 0;
      if (inside) for (let k = 0; k < width; k++) sum += samples[start + k]! * weights[k]!;
      else for (let k = 0; k < width; k++) sum += samples[Math.min(n - 1, Math.max(0, start + k))]! * weights[k]!;
      outs[axis]![i] = sum;
    }
  }
  return outs;
};
