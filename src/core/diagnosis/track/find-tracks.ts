/**
 * The speed's histories in the recording: the one that the road (and with closed gears the engine) followed, and where
 * some lines are still smeared on it a second one, of an engine behind a slipping converter.
 *
 * The signal's own search follows the strongest lines to a fraction of a turn. Where it does not make the recording's
 * lines clearly sharper, paths along the expected lines, taken all together, are tried as well. A track is believed if
 * lines stand sharper on it than without.
 */
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { decorrelated } from '../../signal/noise/decorrelate.ts';
import { composeTracks, withUnitMean } from '../../signal/speed/combine-tracks.ts';
import { findSpeedTrack } from '../../signal/speed/speed-track.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { CLEAR_GAIN, firstTrack, LEAST_GAIN, trackOfWeakLines, trackOfWeakSweep, SPREAD } from './first-track.ts';
import { followedImages } from './follow-finer.ts';
import { followHighLines } from './high-lines.ts';
import { best, judge, reachOf, type Judged } from './judge-track.ts';
import { gainOver, leastSpread, sharpness, type Band } from './sharpness.ts';
import { standsStill } from './stands-still.ts';
import type { TrackSearch } from './track-search.ts';
import { workSignal } from './work-signal.ts';

export interface FoundTracks {
  /** None where the speed was steady; the second one where some lines follow another history than the first. */
  readonly tracks: readonly SpeedTrack[];
  /** How much sharper lines are on the first, ln of evidence. */
  readonly gain: number;
}

/** A second history on which this share of the first one's lines is sharp too is the first, found once more. */
const SAME_HISTORY = 0.4;
/** A track made from an image, turned into the vehicle's own, is believed if it makes other lines sharper by this. */
const IMAGE_GAIN = 5;
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

/** Histories of lines that are smeared both on the first track and without it; one may be the first, found once more. */
const further = (prepared: Prepared, one: Judged, steady: readonly Band[], search: TrackSearch): readonly Judged[] => {
  const settled = strongest(one.bands, steady);
  const { engineLogged } = search;
  if (engineLogged) {
    // While a launch closes the gap to the road's speed an engine line is half gathered on that one's history too.
    const logged = judge(prepared, withUnitMean(engineLogged, prepared), steady);
    if (logged.gain >= one.gain + LEAST_GAIN) return [logged];
  }
  // What such a sweep leaves spread out is its own phase.
  if (search.logged?.steep || leastSpread([steady, one.bands]) < SPREAD) return [];
  const rest = findSpeedTrack(one.even, {});
  const followed = rest.moved
    ? [judge(prepared, withUnitMean(composeTracks(one.track, rest.track), prepared), settled)]
    : [];
  // An image of a line above half the rate moves by more percent of its own than any line that is followed so.
  return [...followed, ...followedImages(prepared, search, settled)].filter(({ gain }) => gain >= LEAST_GAIN);
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

/** True where the one makes no line sharp that does not stand as sharply on the other, or as it is: it went astray along those. */
const gathersNoMore = (one: Judged, other: Judged, steady: readonly Band[]): boolean =>
  gainOver(strongest(other.bands, steady), one.bands, reachOf(one.track)) < LEAST_GAIN;

/** What the search was made on, how sharp lines stand there as it is, and the first history found. */
interface Searched {
  readonly prepared: Prepared;
  readonly steady: readonly Band[];
  readonly still: boolean;
  readonly found: Judged | null;
}

/**
 * On a rough road all axes are shaken together, and cover weak lines that a quiet direction shows. Strong lines are
 * followed better as they are.
 */
const searched = (recording: Prepared, search: TrackSearch): Searched => {
  const prepared = workSignal(recording);
  const steady = sharpness(prepared, prepared.samplingRateHz);
  const still = !search.logged && standsStill(steady, search);
  const found = still ? null : firstTrack(prepared, search, steady);
  const plain = { prepared, steady, still, found };
  if (still || search.logged || (found?.gain ?? 0) > CLEAR_GAIN) return plain;
  const quiet = decorrelated(prepared, prepared.samplingRateHz / 2);
  const quietSteady = sharpness(quiet, quiet.samplingRateHz);
  const foundInQuiet = trackOfWeakLines(quiet, search, quietSteady);
  if (foundInQuiet && foundInQuiet.gain > Math.max(LEAST_GAIN, found?.gain ?? 0))
    return { prepared: quiet, steady: quietSteady, still, found: foundInQuiet };
  const isFound = (found?.gain ?? 0) >= LEAST_GAIN;
  return isFound || !search.wasSwept ? plain : { ...plain, found: trackOfWeakSweep(prepared, search, steady) ?? found };
};

export const findTracks = (recording: Prepared, search: TrackSearch): FoundTracks => {
  const { prepared, steady, still, found } = searched(recording, search);
  const believed = found && (found.gain >= LEAST_GAIN || search.logged) ? found : null;
  const highHz = still || believed ? search.highLinesHz : [...search.highLinesHz, ...search.highFiringHz];
  const first = followHighLines(recording, prepared, highHz, believed, steady);
  if (!first) return { tracks: [], gain: found?.gain ?? 0 };
  const more = further(prepared, first, steady, search);
  const isFirst = ({ bands }: Judged): boolean => shared(first.bands, bands) > SAME_HISTORY;
  const one = best([first, ...more.filter(isFirst).map(({ track }) => judge(prepared, track, steady))])!;
  const other = best(more.filter((history) => !isFirst(history)));
  if (other && !search.logged && gathersNoMore(one, other, steady)) return { tracks: [other.track], gain: other.gain };
  const image = other || search.logged?.steep ? null : asImage(prepared, one, steady, search);
  const tracks = [one, other ?? image].filter((judged) => judged !== null).map((judged) => judged.track);
  return { tracks, gain: one.gain };
};
