/** Whether a track makes the recording's lines sharper, and how to make it finer. */
import type { Prepared } from '../../signal/spectrum.ts';
import { growingEvidence } from './line-evidence.ts';
import { gainOver, sharpness, type Band } from './sharpness.ts';
import { combined, normalized, type SpeedTrack } from './speed-track.ts';
import { follow, lookAt, type Stage } from './stages.ts';
import { realTimes, timesOf, warpedPieces } from './warp.ts';

export const TIME_STEP_S = 0.1;

export interface Judged {
  readonly track: SpeedTrack;
  /** The recording made even by the track, and its bands. */
  readonly warped: Prepared;
  readonly bands: readonly Band[];
  /** How much sharper lines are on it than before, ln of evidence. */
  readonly gain: number;
}

export const reachOf = (track: SpeedTrack): number =>
  track.logSpeed.reduce((most, s) => Math.max(most, Math.abs(s)), 0);

/** @param before the bands that lines had so far */
export const judge = (prepared: Prepared, track: SpeedTrack, before: readonly Band[]): Judged => {
  const warped = warpedPieces(prepared, track);
  const bands = sharpness(warped);
  return { track, warped, bands, gain: gainOver(before, bands, reachOf(track)) };
};

/** The path's times on warped pieces, back on the recording's clock. */
const unwarped = (path: SpeedTrack, track: SpeedTrack, prepared: Prepared, warped: Prepared): SpeedTrack => {
  const rate = prepared.samplingRateHz;
  const timeS = path.timeS.slice();
  prepared.pieces.forEach(({ startS, axes }, i) => {
    const lengthS = ((axes[0]?.length ?? 1) - 1) / rate;
    const warpedS = ((warped.pieces[i]?.axes[0]?.length ?? 1) - 1) / rate;
    const own = Array.from(path.timeS.keys()).filter(
      (k) => path.timeS[k]! >= startS && path.timeS[k]! <= startS + warpedS,
    );
    const real = realTimes(
      track,
      startS,
      lengthS,
      Float64Array.from(own, (k) => path.timeS[k]! - startS),
    );
    own.forEach((k, j) => (timeS[k] = real[j]!));
  });
  return { ...path, timeS };
};

/** A path found on a warped recording, put on top of the track it was warped by. */
export const onTop = (prepared: Prepared, base: Judged, path: SpeedTrack): SpeedTrack =>
  normalized(combined(base.track, unwarped(path, base.track, prepared, base.warped)), timesOf(prepared, TIME_STEP_S))
    .track;

/** One more look at the recording made even by a track, along the lines that the track has made sharp. */
export const refined = (prepared: Prepared, now: Judged, before: readonly Band[], stage: Stage): Judged => {
  const linesHz = now.bands.filter((band, i) => band.evidence > before[i]!.evidence).map((band) => band.frequencyHz);
  const map = linesHz.length > 0 ? lookAt(now.warped, stage) : null;
  if (!map) return now;
  const path = follow(map, stage, linesHz, growingEvidence(map.axes), prepared.samplingRateHz, () => 0);
  const next = judge(prepared, onTop(prepared, now, path), before);
  return next.gain > now.gain ? next : now;
};
