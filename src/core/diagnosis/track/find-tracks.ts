/**
 * The speed's histories in the recording: the one that the road (and with closed gears the engine) followed, and where
 * some lines are still smeared on it a second one, of an engine behind a slipping converter.
 *
 * The signal's own search follows the strongest lines to a fraction of a turn. Where it does not make the recording's
 * lines clearly sharper, paths along the expected lines, taken all together, are tried as well. A track is believed if
 * lines stand sharper on it than without.
 */
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { composeTracks, withUnitMean } from '../../signal/speed/combine-tracks.ts';
import { findRampTrack, findSpeedTrack } from '../../signal/speed/speed-track.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { coarsePaths, imagePaths, lookAtCruise, singlePaths } from './coarse-paths.ts';
import { concentrationOn } from './aligned-log.ts';
import { followHighLines } from './high-lines.ts';
import { best, judge, type Judged } from './judge-track.ts';
import { sharpness, type Band } from './sharpness.ts';
import { isSweep } from './swept-level.ts';
import { standsStill } from './stands-still.ts';
import type { TrackSearch } from './track-search.ts';
import { workSignal } from './work-signal.ts';

export interface FoundTracks {
  /** None where the speed was steady; the second one where some lines follow another history than the first. */
  readonly tracks: readonly SpeedTrack[];
  /** How much sharper lines are on the first, ln of evidence. */
  readonly gain: number;
}

/** Lines must gain this much (in ln) by a track for it to be believed; from the clear gain on nothing else is tried. */
const LEAST_GAIN = 18;
const CLEAR_GAIN = 60;
/** Of paths along single lines there are many, and chance is with one of them sooner. */
const SINGLE_GAIN = 30;
/** A stretch of a strong line that swept on can gain more than that; up to here the whole sweep is looked for as well. */
const SURE_GAIN = 600;
/** How far a coarse path, or a smoothed log, may be off (relative). */
const COARSE_ERROR = 0.012;
const LOG_ERROR = 0.03;
/**
 * The same of an image's path, and how fast that changes: it moves by the hertz of a line that turns many times faster, and
 * so by as many times more of its own.
 */
const IMAGE_ERROR = 0.08;
const IMAGE_RATE_PER_S = 0.02;
/** The same of a log of a speed that changed fast, and how much of it may come or go in a second: the line decides. */
const STEEP_ERROR = 0.06;
const STEEP_RATES_PER_S = [0.01, 0.015, 0.03];
/** A coarse path that gains this share of what the best one does may be the better one. */
const RIVAL = 0.6;
/** Coarse paths that are followed where none is clear. */
const MOST_FOLLOWED = 4;
/** A second history on which this share of the first one's lines is sharp too is the first, found once more. */
const SAME_HISTORY = 0.4;
/** A track made from an image, turned into the vehicle's own, is believed if it makes other lines sharper by this. */
const IMAGE_GAIN = 5;
/** Power over noise, and its share of a band's, that must stand spread out for another history to be looked for. */
const SPREAD = 250;
const SPREAD_SHARE = 0.05;
/** Bands this much sharper on a track are the tones that gave it. */
const SHARP = 40;

const strongest = (bands: readonly Band[], others: readonly Band[]): readonly Band[] =>
  bands.map((band, i) => (band.evidence >= (others[i]?.evidence ?? 0) ? band : others[i]!));

/** Share of a track's sharp lines that another track makes sharp as well (its bands may lie next to them). */
const shared = (one: readonly Band[], other: readonly Band[]): number => {
  let total = 0;
  let both = 0;
  one.forEach(({ evidence }, i) => {
    const there = Math.max(...other.slice(Math.max(0, i - 1), i + 2).map((band) => band.evidence));
    total += evidence;
    both += Math.min(evidence, there);
  });
  return total > 0 ? both / total : 1;
};

/** A coarse track made finer by following the lines' phases from it on. */
const finer = (
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
const followedImages = (prepared: Prepared, search: TrackSearch, steady: readonly Band[]): readonly Judged[] =>
  imagePaths(prepared, search, steady).map((track) =>
    finer(prepared, judge(prepared, track, steady), steady, IMAGE_ERROR, IMAGE_RATE_PER_S),
  );

/**
 * The same from a log that changed fast. An order that sweeps through resonances turns its phase there and stays spread
 * in the spectrum of the whole, however well it is followed: here its height in the spectra of shorter parts decides.
 */
const followedFast = (
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

/** What stands spread out on every one of the given bands, at its worst place. */
const leastSpread = (several: readonly (readonly Band[])[], spreadOf = ({ spread }: Band): number => spread): number =>
  several[0]!.reduce((most, _, i) => Math.max(most, Math.min(...several.map((bands) => spreadOf(bands[i]!)))), 0);

/** The same but for what is left beside a tone that stands sharply: that is its pulsing, not its motion. */
const besidesPulsing = ({ spread, excess }: Band): number => (spread > SPREAD_SHARE * excess ? spread : 0);

/** True where lines became clearly sharper and nothing of worth is left spread out. */
const isSettled = ({ bands, gain }: Judged, steady: readonly Band[]): boolean =>
  gain > CLEAR_GAIN && leastSpread([steady, bands], besidesPulsing) < SPREAD;

/**
 * The first history, by the cheapest way that is sure of it: the log; what the lines show by themselves; a sweep of the
 * expected lines; coarse paths along these, and along tones; paths of images. Each further way is tried where the ways
 * before it leave lines spread out.
 */
const first = (prepared: Prepared, search: TrackSearch, steady: readonly Band[]): Judged | null => {
  if (search.logged) {
    const { track, steep } = search.logged;
    const base = judge(prepared, withUnitMean(track, prepared), steady);
    return steep ? followedFast(prepared, base, steady, search) : finer(prepared, base, steady, LOG_ERROR);
  }
  const { baseHz, multiples, engineLogged } = search;
  const followed = findSpeedTrack(prepared, {});
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
  const cruise = lookAtCruise(prepared);
  const coarse = coarsePaths(prepared, search, steady, cruise).map((track) => judge(prepared, track, steady));
  const found = best(direct ? [direct, ...coarse] : coarse);
  const refinedOf = (judged: readonly Judged[], most: number): readonly Judged[] =>
    [...judged]
      .sort((a, b) => b.gain - a.gain)
      .slice(0, most)
      .map((one) => finer(prepared, one, steady, COARSE_ERROR));
  if (found && found.gain > CLEAR_GAIN) {
    // What was followed may be a stretch of a line that swept on: then a coarse path along all of it does far better.
    if (found === direct) return best([found, ...refinedOf(coarse, 2)]);
    // Of two that do nearly as well, one may have gone astray for a while.
    const rivals = coarse.filter(({ gain }) => gain > RIVAL * found.gain);
    return best(refinedOf(rivals, 2));
  }
  // A path a thousandth off makes lines hardly sharper; followed from there on they may stand out.
  const refined = [...refinedOf(coarse, MOST_FOLLOWED), ...followedImages(prepared, search, steady)];
  const followedBest = best(found ? [found, ...refined] : refined);
  if (followedBest && followedBest.gain > SINGLE_GAIN) return followedBest;
  const single = best(singlePaths(prepared, search, cruise).map((track) => judge(prepared, track, steady)));
  const alone = single && single.gain > LEAST_GAIN ? finer(prepared, single, steady, COARSE_ERROR) : null;
  return alone && alone.gain > SINGLE_GAIN ? alone : followedBest;
};

/** The history of lines that are smeared both on the first track and without it. */
const second = (prepared: Prepared, one: Judged, steady: readonly Band[], search: TrackSearch): Judged | null => {
  const settled = strongest(one.bands, steady);
  const { engineLogged } = search;
  if (engineLogged) {
    // While a launch closes the gap to the road's speed an engine line is half gathered on that one's history too.
    const logged = judge(prepared, withUnitMean(engineLogged, prepared), steady);
    if (logged.gain >= one.gain + LEAST_GAIN) return logged;
  }
  // What such a sweep leaves spread out is its own phase.
  if (search.logged?.steep || leastSpread([steady, one.bands]) < SPREAD) return null;
  const rest = findSpeedTrack(one.even, {});
  const followed = rest.moved
    ? judge(prepared, withUnitMean(composeTracks(one.track, rest.track), prepared), settled)
    : null;
  // An image of a line above half the rate moves by more percent of its own than any line that is followed so.
  const image = best(followedImages(prepared, search, settled));
  const found = best([followed, image].filter((judged) => judged !== null));
  return found && found.gain >= LEAST_GAIN ? found : null;
};

const scaled = (track: SpeedTrack, factor: number): SpeedTrack => ({
  timeS: track.timeS,
  relative: track.relative.map((r) => r ** factor),
});

const asImage = (prepared: Prepared, one: Judged, steady: readonly Band[], search: TrackSearch): Judged | null => {
  const tones = one.bands
    .filter((band, i) => band.evidence > steady[i]!.evidence + SHARP)
    .map((band) => band.frequencyHz);
  const settled = strongest(one.bands, steady);
  const turned = search
    .imageFactors(tones)
    .map((factor) => judge(prepared, withUnitMean(scaled(one.track, factor), prepared), settled));
  const found = best(turned);
  return found && found.gain >= IMAGE_GAIN ? found : null;
};

export const findTracks = (recording: Prepared, search: TrackSearch): FoundTracks => {
  const prepared = workSignal(recording);
  const steady = sharpness(prepared, prepared.samplingRateHz);
  const still = !search.logged && standsStill(steady, search);
  const found = still ? null : first(prepared, search, steady);
  const believed = found && (found.gain >= LEAST_GAIN || search.logged) ? found : null;
  const highHz = still || believed ? search.highLinesHz : [...search.highLinesHz, ...search.highFiringHz];
  let one = followHighLines(recording, prepared, highHz, believed, steady);
  if (!one) return { tracks: [], gain: found?.gain ?? 0 };
  let other = second(prepared, one, steady, search);
  if (other && shared(one.bands, other.bands) > SAME_HISTORY) {
    const again = judge(prepared, other.track, steady);
    if (again.gain > one.gain) one = again;
    other = null;
  }
  const image = other || search.logged?.steep ? null : asImage(prepared, one, steady, search);
  const tracks = [one, other ?? image].filter((judged) => judged !== null).map((judged) => judged.track);
  return { tracks, gain: one.gain };
};
