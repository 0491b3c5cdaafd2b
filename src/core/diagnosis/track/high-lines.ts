/**
 * Lines too high for the work signal: tooth mesh, motor orders, firing. A wander of the speed that leaves wheel and driveshaft
 * orders whole smears these over several hertz, so where they stand out they tell the speed's history best.
 */
import { findSpeedTrack } from '../../signal/speed/speed-track.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { judge, type Judged } from './judge-track.ts';
import type { Band } from './sharpness.ts';

/** Looked at from the lowest of them down and from the highest up by this factor: a stated speed may be wrong. */
const AROUND = 1.3;
/** A history followed up there may cost the orders below this share of what they had gained; more, and it is not theirs. */
const MOST_LOST = 0.1;

/**
 * The history that high lines show, from the one found so far on; that one itself where they show no more.
 * @param recording at its full rate
 * @param work the same at the work rate, on which a history is judged
 * @param linesHz where lines above the work signal's band are expected
 * @param before bands of the work signal as it is
 */
export const followHighLines = (
  recording: Prepared,
  work: Prepared,
  linesHz: readonly number[],
  found: Judged | null,
  before: readonly Band[],
): Judged | null => {
  if (linesHz.length === 0) return found;
  const range = { lowestHz: Math.min(...linesHz) / AROUND, highestHz: Math.max(...linesHz) * AROUND };
  const { track, moved } = findSpeedTrack(recording, found ? { ...range, start: found.track } : range);
  if (!moved) return found;
  const followed = judge(work, track, before);
  return followed.gain >= (1 - MOST_LOST) * (found?.gain ?? 0) ? followed : found;
};
