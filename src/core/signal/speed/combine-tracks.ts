/** Speed tracks put together, undone and scaled. */
import { referenceClock, relativeSpeedAt, type SpeedTrack } from './equal-angle.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** A track of `inner` on the reference clock of `outer`, as one track on the recording's clock. */
export const composeTracks = (outer: SpeedTrack, inner: SpeedTrack): SpeedTrack => {
  const clock = referenceClock(outer);
  const times = new Set<number>(outer.timeS);
  for (const u of inner.timeS) times.add(clock.toClock(u));
  const timeS = Float64Array.from([...times].sort((a, b) => a - b));
  return {
    timeS,
    relative: timeS.map((t) => relativeSpeedAt(outer, t) * relativeSpeedAt(inner, clock.fromClock(t))),
  };
};

/** The track that undoes another, on that one's reference clock. */
export const inverseTrack = (track: SpeedTrack): SpeedTrack => {
  const clock = referenceClock(track);
  return { timeS: track.timeS.map(clock.fromClock), relative: track.relative.map((r) => 1 / r) };
};

/** Scaled so that the mean over the recording's pieces is 1. */
export const withUnitMean = (track: SpeedTrack, prepared: Prepared): SpeedTrack => {
  const clock = referenceClock(track);
  let turned = 0;
  let lasted = 0;
  for (const { startS, axes } of prepared.pieces) {
    const endS = startS + (axes[0]?.length ?? 0) / prepared.samplingRateHz;
    turned += clock.fromClock(endS) - clock.fromClock(startS);
    lasted += endS - startS;
  }
  const mean = lasted > 0 ? turned / lasted : 1;
  return { timeS: track.timeS, relative: track.relative.map((r) => r / mean) };
};
