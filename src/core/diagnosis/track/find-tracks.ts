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
import { normalized, type SpeedTrack } from './speed-track.ts';
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
  /** Factors of the vehicle's speed over a track's, if tones that the track keeps together are images of lines. */
  readonly imageFactors: (tonesHz: readonly number[]) => readonly number[];
  /** A history known from a log; the search is for what is left of it. */
  readonly logged: SpeedTrack | null;
}

/** Lines must gain this much (in ln) by a track for it to be believed. */
const LEAST_GAIN = 18;
/** From this gain on nothing further is tried. */
const CLEAR_GAIN = 60;
/** Tones followed by themselves, and the power over noise they need. */
const MOST_TONES = 4;
const LEAST_TONE = 40;
/** A tone that has kept this share of its power out of its line is smeared. */
const SMEARED = 20;
/** The image of an order above half the rate moves by the order's hertz: many percent of its own. */
const IMAGE_STAGE: Stage = { ...RAMP, search: { ...RAMP.search, from: -0.15, to: 0.15 } };
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
  const judged = (path: SpeedTrack): Judged => judge(prepared, normalized(path, times).track, steady);
  const found = best(pathsOn(prepared, steady, search, true).map(judged));
  const tones = smearedTones(steady);
  if (search.imageFactors(tones).length === 0 || (found && found.gain > CLEAR_GAIN)) return found;
  const wide = lookAt(prepared, RAMP);
  if (!wide) return found;
  const growing = growingEvidence(wide.axes);
  const images = tones.map((hz) => judged(follow(wide, IMAGE_STAGE, [hz], growing, prepared.samplingRateHz, () => 0)));
  return best(found ? [found, ...images] : images);
};

/** A second history on which this share of the first one's lines is sharp too is the first, found once more. */
const SAME_HISTORY = 0.4;

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

/** A track made from an image, turned into the vehicle's own: believed if it makes other lines sharper. */
const IMAGE_GAIN = 5;
const SHARP = 40;
const scaled = (track: SpeedTrack, factor: number): SpeedTrack => ({
  ...track,
  logSpeed: track.logSpeed.map((s) => factor * s),
  slopePerS: track.slopePerS.map((s) => factor * s),
});

const asImage = (prepared: Prepared, one: Judged, steady: readonly Band[], search: TrackSearch): Judged | null => {
  const tones = one.bands
    .filter((band, i) => band.evidence > steady[i]!.evidence + SHARP)
    .map((band) => band.frequencyHz);
  const settled = strongest(one.bands, steady);
  const times = timesOf(prepared, TIME_STEP_S);
  const found = best(
    search
      .imageFactors(tones)
      .map((factor) => judge(prepared, normalized(scaled(one.track, factor), times).track, settled)),
  );
  return found && found.gain >= IMAGE_GAIN ? found : null;
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
  for (let turn = 0; other && turn < 2 && shared(one.bands, other.bands) > SAME_HISTORY; turn++) {
    const again = judge(prepared, other.track, steady);
    if (again.gain <= one.gain) {
      other = null;
      break;
    }
    one = again;
    other = another(prepared, one, steady);
  }
  if (other && shared(one.bands, other.bands) > SAME_HISTORY) other = null;
  const image = other ? null : asImage(prepared, one, steady, search);
  const tracks = [one, other ?? image].filter((judged) => judged !== null).map((judged) => judged.track);
  return { tracks, gain: one.gain };
};
