/** Tones of other runs that may stay at their frequency whatever is driven: fans, pumps, hums, structures. */
import { logNormalDensity } from '../origins/log-normal.ts';
import type { Tone } from '../origins/tone.ts';

export interface SteadyTone {
  readonly frequencyHz: number;
  readonly amplitudeMps2: number;
  /** Probability, in its own run, that it is fixed. */
  readonly probability: number;
}

/** Fans and pumps wander by about this share of their frequency from run to run. Judgment. */
const WANDER = 0.004;
/** A tone of its own sounds in the next run too, at a like level. Judgment. */
const AGAIN = 0.85;
const LEVEL_SPREAD = 0.6;

/** Density (per Hz and unit of ln level) at a tone of the steady tones of other runs. */
export const steadyDensity = (tone: Tone, steady: readonly SteadyTone[]): number => {
  const { frequencyHz, frequencySdHz, amplitudeMps2 } = tone.peak;
  let density = 0;
  for (const other of steady) {
    const sd = Math.hypot(WANDER * frequencyHz, frequencySdHz);
    const apart = (frequencyHz - other.frequencyHz) / sd;
    const place = Math.exp(-0.5 * apart * apart) / (sd * Math.sqrt(2 * Math.PI));
    density += other.probability * AGAIN * place * logNormalDensity(amplitudeMps2, other.amplitudeMps2, LEVEL_SPREAD);
  }
  return density;
};
