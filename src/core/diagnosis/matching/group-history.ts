/** How the speed of the wheels, or of the engine, ran through a recording, as its likeliest motion model has it. */
import { STEADY, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import type { AmplitudeSpectrum } from '../../signal/spectra/spectrum.ts';
import type { SpeedGroup } from '../../vehicle/line.ts';
import { RAMP_WANDER } from '../observing/run-evidence.ts';
import { isOfNothing } from '../origins/motion-model.ts';
import type { RunInference } from './infer-run.ts';

/**
 * A track that follows an image of a line is turned round, or stretched, into the speed's own: an image of F seen at f
 * moves by ±F for each unit of relative speed, the track made from it by f (see `imageFactors`), both straight lines.
 * Of a group whose history is not among the tracks nothing better is known than that it went along a ramp with the
 * other group; else it kept its speed.
 *
 * @returns relative speed, 1 where an order stands at its reported frequency
 */
export const historyOf = (
  { run: { tracks, histories }, model }: Pick<RunInference, 'run' | 'model'>,
  group: SpeedGroup,
): SpeedTrack => {
  if (isOfNothing(model, histories)) return STEADY;
  const own = model[group];
  const index = own ?? model[group === 'road' ? 'engine' : 'road'] ?? 0;
  const track = tracks[index];
  if (!track || (own === null && (histories.wander[index] ?? 0) <= RAMP_WANDER)) return STEADY;
  if (model.factor === 1) return track;
  return { timeS: track.timeS, relative: track.relative.map((relative) => 1 + model.factor * (relative - 1)) };
};

/**
 * Spectrum evened by the history that the road's lines were found by; null where its speed was steady, or what it did is
 * not known. Where that history is an image's, the image is the sharp line in it, being what stands out most.
 */
export const orderSpectrumOf = ({ run, model }: RunInference): AmplitudeSpectrum | null => {
  if (historyOf({ run, model }, 'road') === STEADY) return null;
  return run.orderSpectra[model.road ?? model.engine ?? 0] ?? null;
};
