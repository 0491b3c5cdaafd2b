/** How the frequency of a tone ran through a recording, by the origin it is taken for. */
import { STEADY, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { historyOf } from '../matching/group-history.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { OriginShare } from '../matching/match.ts';
import { targetsOf } from '../origins/origin.ts';

/**
 * The history of the tone itself: of an image that moves the other way, or faster, as the image moves.
 * @param chosen null for a tone that turns with nothing
 * @param trueHz of the line, where the tone is its image; else as observed
 */
export const toneHistory = (
  inference: RunInference,
  chosen: OriginShare | null,
  trueHz: number,
  observedHz: number,
): SpeedTrack => {
  if (!chosen) return STEADY;
  const history = historyOf(inference, chosen.origin.group);
  if (!chosen.image || history === STEADY) return history;
  const folds = targetsOf(observedHz, inference.run.prepared.samplingRateHz);
  const direction = folds.find((fold) => fold.image && fold.trueHz === trueHz)?.direction ?? 1;
  const slope = (direction * trueHz) / observedHz;
  return { timeS: history.timeS, relative: history.relative.map((relative) => 1 + slope * (relative - 1)) };
};
