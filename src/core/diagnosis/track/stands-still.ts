/** Whether the speed plainly did not move: then no history is looked for. */
import type { Band } from './sharpness.ts';
import type { TrackSearch } from './track-search.ts';

/** A tone this strong (power over noise) tells by its shape whether it moved. */
const LOUD = 60;
/** A steady tone has no more than this share of its power outside its main lobe. */
const LEAST_SPREAD = 0.02;
/** Tones that agree on one speed do so within this (relative), a bin or two of the whole length. */
const AGREEMENT = 0.0015;
/** Expected lines are looked for this far from where they are expected (relative). */
const REACH = 0.09;
/** Multiples in a ratio nearer than this to a whole number may be one source's harmonics. */
const WHOLE = 0.02;

const isHarmonic = (a: number, b: number): boolean => {
  const ratio = Math.max(a, b) / Math.min(a, b);
  return Math.abs(ratio - Math.round(ratio)) < WHOLE;
};

/** True where some speed puts tones of two parts that are not each other's harmonics on expected lines. */
const agree = (tonesHz: readonly number[], multiples: readonly number[], baseHz: number): boolean =>
  tonesHz.some((tone, i) =>
    multiples.some((m) => {
      const scale = tone / (m * baseHz);
      if (Math.abs(Math.log(scale)) > REACH) return false;
      return tonesHz
        .slice(i + 1)
        .some((other) =>
          multiples.some((n) => Math.abs(other / (n * baseHz * scale) - 1) < AGREEMENT && !isHarmonic(m, n)),
        );
    }),
  );

/**
 * True where every loud tone stands in one bin of the whole recording and two of them, no harmonics of each other, are
 * orders of the vehicle at one speed. (Tones that stand still may be fixed ones, so one alone proves nothing.)
 * @param bands of the recording as it is
 */
export const standsStill = (bands: readonly Band[], { baseHz, multiples }: TrackSearch): boolean => {
  const loud = bands.filter((band) => band.excess > LOUD);
  if (baseHz === null || loud.some((band) => band.spread > LEAST_SPREAD * band.excess)) return false;
  const sharp = loud.filter((band) => band.evidence > 0).map((band) => band.frequencyHz);
  return agree(sharp, multiples, baseHz);
};
