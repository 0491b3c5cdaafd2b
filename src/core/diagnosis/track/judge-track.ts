/** Whether a track makes the recording's lines sharper. */
import { resampleToEqualAngle, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { gainOver, sharpness, type Band } from './sharpness.ts';

export interface Judged {
  readonly track: SpeedTrack;
  /** The recording made even by the track, and its bands. */
  readonly even: Prepared;
  readonly bands: readonly Band[];
  /** How much sharper lines are on it than before, ln of evidence. */
  readonly gain: number;
}

/** Greatest |ln of relative speed|. */
export const reachOf = ({ relative }: SpeedTrack): number =>
  relative.reduce((most, r) => Math.max(most, Math.abs(Math.log(r))), 0);

/** @param before the bands that lines had so far */
export const judge = (prepared: Prepared, track: SpeedTrack, before: readonly Band[]): Judged => {
  const even = resampleToEqualAngle(prepared, track, 0.92);
  const bands = sharpness(even, prepared.samplingRateHz);
  return { track, even, bands, gain: gainOver(before, bands, reachOf(track)) };
};

/** The better judged one of several. */
export const best = (candidates: readonly Judged[]): Judged | null =>
  candidates.reduce<Judged | null>((a, b) => (a && a.gain >= b.gain ? a : b), null);
