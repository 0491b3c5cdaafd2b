/** The history that the road followed: the first one looked for, and mostly the only one. */
import { findRampTrack, findSpeedTrack } from '../../signal/speed/speed-track.ts';
import { withUnitMean } from '../../signal/speed/combine-tracks.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { coarsePaths, singleSweeps } from './coarse-paths.ts';
import { finer, followedFast, followedImages } from './follow-finer.ts';
import { best, judge, type Judged } from './judge-track.ts';
import { leastSpread, type Band } from './sharpness.ts';
import { isSweep } from './swept-level.ts';
import type { TrackSearch } from './track-search.ts';
import { WORK_RATE_HZ } from './work-signal.ts';

/** Lines must gain this much (in ln) by a track for it to be believed; from the clear gain on nothing else is tried. */
export const LEAST_GAIN = 18;
export const CLEAR_GAIN = 60;
/** Of paths along single lines there are many, and chance is with one of them sooner. */
const SINGLE_GAIN = 30;
/** A stretch of a strong line that swept on can gain more than that; up to here the whole sweep is looked for as well. */
const SURE_GAIN = 600;
/** How far a coarse path, or a smoothed log, may be off (relative). */
const COARSE_ERROR = 0.012;
const LOG_ERROR = 0.03;
/** A coarse path that gains this share of what the best one does may be the better one. */
const RIVAL = 0.6;
/** Coarse paths that are followed where none is clear. */
const MOST_FOLLOWED = 2;
/** Of half the rate of a recording that is searched as it was made: images of lines just above it stand just below it. */
const SHOWN_SHARE = 0.98;
/** Power over noise, and its share of a band's, that must stand spread out for another history to be looked for. */
export const SPREAD = 250;
const SPREAD_SHARE = 0.05;

/** The same but for what is left beside a tone that stands sharply: that is its pulsing, not its motion. */
const besidesPulsing = ({ spread, excess }: Band): number => (spread > SPREAD_SHARE * excess ? spread : 0);

/** True where lines became clearly sharper and nothing of worth is left spread out. */
const isSettled = ({ bands, gain }: Judged, steady: readonly Band[]): boolean =>
  gain > CLEAR_GAIN && leastSpread([steady, bands], besidesPulsing) < SPREAD;

/** A path a thousandth off makes lines hardly sharper; followed from there on they may stand out. */
const refinedOf = (
  prepared: Prepared,
  steady: readonly Band[],
  judged: readonly Judged[],
  most: number,
): readonly Judged[] =>
  [...judged]
    .sort((a, b) => b.gain - a.gain)
    .slice(0, most)
    .map((one) => finer(prepared, one, steady, COARSE_ERROR));

/**
 * The first history, by the cheapest way that is sure of it: the log; what the lines show by themselves; a sweep of the
 * expected lines; coarse paths along these, and along tones; paths of images. Each further way is tried where the ways
 * before it leave lines spread out.
 * @param steady bands of the recording as it is
 * @returns null where nothing was found; the best found may gain too little to be believed
 */
export const firstTrack = (prepared: Prepared, search: TrackSearch, steady: readonly Band[]): Judged | null => {
  if (search.logged) {
    const { track, steep } = search.logged;
    const base = judge(prepared, withUnitMean(track, prepared), steady);
    return steep ? followedFast(prepared, base, steady, search) : finer(prepared, base, steady, LOG_ERROR);
  }
  const { baseHz, multiples, engineLogged } = search;
  const usual = findSpeedTrack(prepared, {});
  const isSlow = prepared.samplingRateHz < WORK_RATE_HZ;
  const followed = usual.moved || !isSlow ? usual : findSpeedTrack(prepared, { shownShare: SHOWN_SHARE });
  const drift = followed.moved ? judge(prepared, followed.track, steady) : null;
  const sure = drift !== null && drift.gain > SURE_GAIN;
  if (sure && isSettled(drift, steady)) return drift;
  const start = baseHz === null ? null : findRampTrack(prepared, { multiples, baseHz });
  const ramp = start && judge(prepared, findSpeedTrack(prepared, { start: start.track }).track, steady);
  // In gear the road's speed went as the engine's did.
  const geared =
    engineLogged && finer(prepared, judge(prepared, withUnitMean(engineLogged, prepared), steady), steady, LOG_ERROR);
  const direct = best([drift, ramp, geared].filter((judged) => judged !== null));
  // A sweep may have been followed on two lines in turn, where orders stand a few percent apart: coarse paths tell.
  if (direct && isSettled(direct, steady) && direct !== ramp && (!ramp || direct.gain > SURE_GAIN)) return direct;
  // What such a drift leaves spread out has a history of its own, unless all of it is a sweep.
  if (sure && !(start && isSweep(start.track))) return direct;
  const coarse = coarsePaths(prepared, search, steady).map((track) => judge(prepared, track, steady));
  const found = best(direct ? [direct, ...coarse] : coarse);
  if (found && found.gain > CLEAR_GAIN) {
    // What was followed may be a stretch of a line that swept on: then a coarse path along all of it does far better.
    if (found === direct) return best([found, ...refinedOf(prepared, steady, coarse, 2)]);
    // Of two that do nearly as well, one may have gone astray for a while.
    const rivals = coarse.filter(({ gain }) => gain > RIVAL * found.gain);
    return best(refinedOf(prepared, steady, rivals, 2));
  }
  const refined = [...refinedOf(prepared, steady, coarse, MOST_FOLLOWED), ...followedImages(prepared, search, steady)];
  return best(found ? [found, ...refined] : refined);
};

/**
 * The same on a recording whose noise was made independent from axis to axis, which shows weak lines. (Strong
 * lines that sweep are held down there with the noise.)
 */
export const trackOfWeakLines = (prepared: Prepared, search: TrackSearch, steady: readonly Band[]): Judged | null => {
  const followed = findSpeedTrack(prepared, {});
  const drift = followed.moved ? [judge(prepared, followed.track, steady)] : [];
  const coarse = coarsePaths(prepared, search, steady).map((track) => judge(prepared, track, steady));
  return best([...drift, ...coarse, ...refinedOf(prepared, steady, coarse, MOST_FOLLOWED)]);
};

/** A sweep that one weak line shows alone; null where none is surely there: there are many lines, and chance is with one of them. */
export const trackOfWeakSweep = (prepared: Prepared, search: TrackSearch, steady: readonly Band[]): Judged | null => {
  const judged = singleSweeps(prepared, search).map((track) => judge(prepared, track, steady));
  const found = best(refinedOf(prepared, steady, judged, MOST_FOLLOWED));
  return found && found.gain > SINGLE_GAIN ? found : null;
};
