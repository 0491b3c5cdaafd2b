/** From a rough history, or a log, to the one that the lines themselves show. */
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { findSpeedTrack } from '../../signal/speed/speed-track.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { concentrationOn } from './aligned-log.ts';
import { imagePaths } from './coarse-paths.ts';
import { judge, type Judged } from './judge-track.ts';
import type { Band } from './sharpness.ts';
import type { TrackSearch } from './track-search.ts';

/**
 * How far an image's path may be off (relative), and how fast that changes: it moves by the hertz of a line that turns
 * many times faster, and so by as many times more of its own.
 */
const IMAGE_ERROR = 0.08;
const IMAGE_RATE_PER_S = 0.02;
/** The same of a log of a speed that changed fast, and how much of it may come or go in a second: the line decides. */
const STEEP_ERROR = 0.06;
const STEEP_RATES_PER_S = [0.01, 0.015, 0.03];

/** A coarse track made finer by following the lines' phases from it on. */
export const finer = (
  prepared: Prepared,
  coarse: Judged,
  steady: readonly Band[],
  startError: number,
  ratePerS?: number,
): Judged => {
  const { track } = findSpeedTrack(prepared, { start: coarse.track, startError, ...(ratePerS && { ratePerS }) });
  const fine = judge(prepared, track, steady);
  return fine.gain > coarse.gain ? fine : coarse;
};

/** Paths of tones that may be images, followed more finely. */
export const followedImages = (prepared: Prepared, search: TrackSearch, steady: readonly Band[]): readonly Judged[] =>
  imagePaths(prepared, search, steady).map((track) =>
    finer(prepared, judge(prepared, track, steady), steady, IMAGE_ERROR, IMAGE_RATE_PER_S),
  );

/**
 * The history from a log that changed fast. An order that sweeps through resonances turns its phase there and stays spread
 * in the spectrum of the whole, however well it is followed: here its height in the spectra of shorter parts decides.
 */
export const followedFast = (
  prepared: Prepared,
  base: Judged,
  steady: readonly Band[],
  { baseHz, multiples, tiedMultiples }: TrackSearch,
): Judged => {
  const linesHz = baseHz === null ? [] : (tiedMultiples ?? multiples).map((multiple) => multiple * baseHz);
  const heightOn = (track: SpeedTrack): number => concentrationOn(prepared, track, linesHz);
  const followed = STEEP_RATES_PER_S.map((ratePerS) =>
    findSpeedTrack(prepared, { start: base.track, startError: STEEP_ERROR, ratePerS }),
  ).flatMap(({ track, moved }) => (moved ? [{ track, height: heightOn(track) }] : []));
  const asLogged = { track: base.track, height: heightOn(base.track) };
  const { track } = followed.reduce((a, b) => (b.height > a.height ? b : a), asLogged);
  return track === base.track ? base : judge(prepared, track, steady);
};
