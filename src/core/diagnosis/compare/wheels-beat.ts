/** Four wheels of nearly one size: what of a tire's order the others' beat with it may change from run to run. */
import type { Part } from '../../vehicle/line.ts';
import type { SeenLevel } from './change.ts';

/** Three of the four that together make the order of a sound vehicle, as amplitudes that add by their squares. */
const OTHERS_SHARE = Math.sqrt(3 / 4);
/** Sizes differ by some 0.05 to 0.3 %, so that a run of a minute shows about one beat: this much of it does not average out. */
const LEFT_OF_BEAT = 0.45;
/** Amplitude A + a·cos φ, whose standard deviation is a/√2, in dB for each share a/A. */
const DB_FOR_SHARE = 20 / Math.LN10 / Math.SQRT2;

/**
 * Standard uncertainty of the pair by the beat, dB; 0 for what is single. The stronger the one wheel, the less the others
 * matter, which are taken to be as sound ones usually are.
 * @param normalMps2 usual level of the order in a sound vehicle, m/s²
 */
export function beatSdDb(part: Part, normalMps2: number, runs: readonly SeenLevel[]): number {
  if (part !== 'tire') return 0;
  const others = OTHERS_SHARE * normalMps2;
  const amplitudes = runs.filter(({ seen }) => seen).map(({ level }) => Math.sqrt(level.power));
  const sds = amplitudes.map((amplitude) => LEFT_OF_BEAT * DB_FOR_SHARE * Math.min(1, others / amplitude));
  // What is hidden in one run is judged by what it shows in the other.
  return Math.hypot(...sds) * Math.sqrt(runs.length / Math.max(1, sds.length));
}
