/**
 * A road as ISO 8608:2016 describes it: displacement density G(n) = G(n0)·(n/n0)⁻², n0 = 0.1 cycle/m, made as white
 * slope noise summed along the road, with the longest waves (beyond 100 m) held back.
 */
import type { RandomSource } from './random.ts';

/** Reference spatial frequency n0, cycle/m. */
const REFERENCE_PER_M = 0.1;
/** Distance between profile points, m; carries waves down to 0.05 m, twice as short as the standard reaches. */
const STEP_M = 0.025;
/** Longest wave kept, cycle/m (lower end of the standard's range). */
const LOWEST_PER_M = 0.01;
/** Below this the left and right track move together, above it apart (about half a wave per track width). From memory. */
const COMMON_PER_M = 0.2;
/** Points the tire's contact patch averages over: 5 · 0.025 m. */
const CONTACT_POINTS = 5;

export interface Road {
  readonly stepM: number;
  /** Height at the contact patch of the left and right track, m. */
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/** Slope samples whose one-sided spatial density is (2π·n0)²·G(n0), flat. */
const slopeSd = (densityM3: number): number =>
  Math.sqrt(((2 * Math.PI * REFERENCE_PER_M) ** 2 * densityM3) / (2 * STEP_M));

/**
 * @param densityM3 G(n0), m³.
 * @param lengthM Length needed, m.
 */
export const makeRoad = (densityM3: number, lengthM: number, random: RandomSource): Road => {
  const points = Math.ceil(lengthM / STEP_M) + CONTACT_POINTS + 8;
  const left = new Float64Array(points);
  const right = new Float64Array(points);
  const sd = slopeSd(densityM3);
  const keep = 1 - 2 * Math.PI * LOWEST_PER_M * STEP_M;
  const a = 1 - Math.exp(-2 * Math.PI * COMMON_PER_M * STEP_M);
  let common = 0;
  let slowLeft = 0;
  let slowRight = 0;
  let heightLeft = 0;
  let heightRight = 0;
  // Long waves common to both tracks, short ones each its own: |low-pass|² + |high-pass|² = 1 keeps each track to the class.
  for (let i = 0; i < points; i++) {
    const l = sd * random.normal();
    const r = sd * random.normal();
    common += a * (sd * random.normal() - common);
    slowLeft += a * (l - slowLeft);
    slowRight += a * (r - slowRight);
    heightLeft = keep * heightLeft + (common + l - slowLeft) * STEP_M;
    heightRight = keep * heightRight + (common + r - slowRight) * STEP_M;
    left[i] = heightLeft;
    right[i] = heightRight;
  }
  return { stepM: STEP_M, left: averaged(left), right: averaged(right) };
};

/** Mean over the contact patch. */
const averaged = (profile: Float64Array): Float64Array => {
  const out = new Float64Array(profile.length);
  let sum = 0;
  for (let i = 0; i < profile.length; i++) {
    sum += profile[i]!;
    if (i >= CONTACT_POINTS) sum -= profile[i - CONTACT_POINTS]!;
    out[i] = sum / Math.min(i + 1, CONTACT_POINTS);
  }
  return out;
};

/** Height at a place along one track, m, by straight lines between the points. */
export const heightAt = (track: Float64Array, stepM: number, placeM: number): number => {
  const at = placeM / stepM;
  const i = Math.min(Math.max(Math.floor(at), 0), track.length - 2);
  const fraction = at - i;
  return track[i]! + fraction * (track[i + 1]! - track[i]!);
};
