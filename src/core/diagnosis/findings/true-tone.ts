/** A tone as it truly is: of an image the line that stands above half the rate. */
import { keptOf } from '../matching/fold-weights.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { OriginShare } from '../matching/match.ts';
import { expectedPlace } from '../matching/place.ts';
import { targetsOf } from '../origins/origin.ts';
import type { Tone } from '../origins/tone.ts';

/** Where a tone taken for a line truly is, and how strong: of an image that fold which lies nearest to where the line is expected. */
export const trueToneOf = (
  inference: RunInference,
  share: OriginShare | null,
  tone: Tone,
): { readonly trueHz: number; readonly amplitudeMps2: number } => {
  const { frequencyHz, amplitudeMps2 } = tone.peak;
  if (!share?.image) return { trueHz: frequencyHz, amplitudeMps2 };
  const expected = expectedPlace(inference, share.origin).hz;
  const folds = targetsOf(frequencyHz, inference.run.prepared.samplingRateHz).filter((target) => target.image);
  const { trueHz, fold } = folds.reduce((a, b) =>
    Math.abs(b.trueHz - expected) < Math.abs(a.trueHz - expected) ? b : a,
  );
  return { trueHz, amplitudeMps2: amplitudeMps2 / keptOf(tone, fold) };
};
