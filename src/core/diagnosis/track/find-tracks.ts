/**
 * The speed's history found in the recording itself. Several ways are tried: the path along which the expected lines,
 * taken together, stand out most; the same over a wide sweep; and the paths of the strongest tones by themselves. The
 * one that makes the recording's lines sharpest is taken and made finer. A steady speed is what all must beat. Lines
 * that are still smeared may follow a second history: an engine behind a slipping converter.
 */
import type { Prepared } from '../../signal/spectrum.ts';
import { judge, onTop, refined, TIME_STEP_S, type Judged } from './judge-track.ts';
import { cappedEvidence, growingEvidence } from './line-evidence.ts';
import { sharpness, type Band } from './sharpness.ts';
import { logSpeedAt, normalized, type SpeedTrack } from './speed-track.ts';
import { CRUISE, FINE, follow, LEFT_OVER, lookAt, RAMP, type Stage } from './stages.ts';
import { timesOf } from './warp.ts';
import { workSignal } from './work-signal.ts';

export interface FoundTracks {
  /** None where the speed was steady; the second one where some lines follow another history than the first. */
  readonly tracks: readonly SpeedTrack[];
  /** How much sharper lines are on the first, ln of evidence. */
  readonly gain: number;
}

export interface TrackSearch {
  /** True frequencies of the expected lines at the stated speed, Hz. */
  readonly linesHz: readonly number[];
  /** ln prior of ln(mean speed over stated). */
  readonly logPrior: (scale: number) => number;
  /** A history known from a log; the search is for what is left of it. */
  readonly logged: SpeedTrack | null;
}

/** Lines must gain this much (in ln) by a track for it to be believed. */
const LEAST_GAIN = 18;
/** Tones followed by themselves, and the power over noise they need. */
const MOST_TONES = 4;
const LEAST_TONE = 40;
/** A tone that has kept this share of its power out of its line is smeared. */
const SMEARED = 20;
const TONE_STAGE: Stage = { ...CRUISE, search: { ...CRUISE.search, from: -0.035, to: 0.035 } };

/** Strong tones that do not stand sharply: each may show how its part's speed ran. */
const smearedTones = (bands: readonly Band[]): readonly number[] =>
  bands
    .filter((band) => band.excess > LEAST_TONE && band.evidence < band.excess / SMEARED)
    .sort((a, b) => b.excess - a.excess)
    .slice(0, MOST_TONES)
    .map((band) => band.frequencyHz);

const best = (candidates: readonly Judged[]): Judged | null =>
  candidates.reduce<Judged | null>((a, b) => (a && a.gain >= b.gain ? a : b), null);

const strongest = (bands: readonly Band[], others: readonly Band[]): readonly Band[] =>
  bands.map((band, i) => (band.evidence >= (others[i]?.evidence ?? 0) ? band : others[i]!));

/** Candidate paths on a recording (or one made even by a first track). */
const pathsOn = (prepared: Prepared, bands: readonly Band[], search: TrackSearch, sweep: boolean): SpeedTrack[] => {
  const rate = prepared.samplingRateHz;
  const cruise = lookAt(prepared, CRUISE);
  if (!cruise) return [];
  const growing = growingEvidence(cruise.axes);
  const capped = cappedEvidence(cruise.axes);
  const { linesHz, logPrior } = search;
  const wide = sweep && linesHz.length > 0 ? lookAt(prepared, RAMP) : null;
  return [
    ...(linesHz.length > 0 ? [follow(cruise, CRUISE, linesHz, capped, rate, logPrior)] : []),
    ...(wide ? [follow(wide, RAMP, linesHz, capped, rate, (s) => -0.5 * (s / 0.3) ** 2)] : []),
    ...smearedTones(bands).map((hz) => follow(cruise, TONE_STAGE, [hz], growing, rate, () => 0)),
  ];
};

const first = (prepared: Prepared, search: TrackSearch, steady: readonly Band[]): Judged | null => {
  const times = timesOf(prepared, TIME_STEP_S);
  if (search.logged) {
    const base = judge(prepared, normalized(search.logged, times).track, steady);
    const paths = pathsOn(base.warped, base.bands, search, false);
    return best([base, ...paths.map((path) => judge(prepared, onTop(prepared, base, path), steady))]);
  }
  const paths = pathsOn(prepared, steady, search, true);
  return best(paths.map((path) => judge(prepared, normalized(path, times).track, steady)));
};

/** A second history that stays this near the first (root mean square, ln) is the first, better found. */
const SAME_HISTORY = 8e-4;

const apart = (prepared: Prepared, a: SpeedTrack, b: SpeedTrack): number => {
  const times = timesOf(prepared, TIME_STEP_S);
  return Math.sqrt(times.reduce((sum, t) => sum + (logSpeedAt(a, t) - logSpeedAt(b, t)) ** 2, 0) / times.length);
};

/** The history of a tone that is smeared both on the track and without it, if it makes anything sharper. */
const another = (prepared: Prepared, one: Judged, steady: readonly Band[]): Judged | null => {
  const settled = strongest(one.bands, steady);
  const tones = smearedTones(settled);
  const cruise = tones.length > 0 ? lookAt(one.warped, CRUISE) : null;
  if (!cruise) return null;
  const growing = growingEvidence(cruise.axes);
  const paths = tones.map((hz) => follow(cruise, TONE_STAGE, [hz], growing, prepared.samplingRateHz, () => 0));
  const other = best(paths.map((path) => judge(prepared, onTop(prepared, one, path), settled)));
  return other && other.gain >= LEAST_GAIN ? refined(prepared, other, settled, FINE) : null;
};

export const findTracks = (recording: Prepared, search: TrackSearch): FoundTracks => {
  const prepared = workSignal(recording);
  const steady = sharpness(prepared);
  const coarse = first(prepared, search, steady);
  if (!coarse || (coarse.gain < LEAST_GAIN && !search.logged)) return { tracks: [], gain: coarse?.gain ?? 0 };
  const refine = (track: Judged): Judged =>
    [LEFT_OVER, FINE].reduce((now, stage) => refined(prepared, now, steady, stage), track);
  let one = refine(coarse);
  let other = another(prepared, one, steady);
  if (other && apart(prepared, one.track, other.track) < SAME_HISTORY) {
    const again = judge(prepared, other.track, steady);
    one = again.gain > one.gain ? again : one;
    other = another(prepared, one, steady);
    if (other && apart(prepared, one.track, other.track) < SAME_HISTORY) other = null;
  }
  return { tracks: other ? [one.track, other.track] : [one.track], gain: one.gain };
};
