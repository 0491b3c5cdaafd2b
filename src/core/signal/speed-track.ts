/**
 * The relative speed over a recording, found in the recording itself: what turns with the speed becomes steady once it
 * is taken out. A ramp is looked for first; then lines are followed to a fraction of a turn.
 */
import { toBlocks } from './blocks.ts';
import { againstResonance, makeLevels, smoothCandidates } from './candidates.ts';
import { composeTracks, inverseTrack, withUnitMean } from './combine-tracks.ts';
import { resampleToEqualAngle, STEADY, type SpeedTrack } from './equal-angle.ts';
import { findRamp, type FoundRamp } from './find-ramp.ts';
import { followHotSpots, type Followed } from './follow-hot-spots.ts';
import { MOST_SHIFT } from './follow-lines.ts';
import type { Prepared } from './spectrum.ts';

export interface TrackOptions {
  /** Frequencies that may be present, over the base frequency; for the search of a ramp. None: no ramp is looked for. */
  readonly multiples?: readonly number[];
  /** Expected base frequency, Hz. */
  readonly baseHz?: number;
  /** A track to start from (a smoothed log, see logged-speed.ts); no ramp is looked for then. */
  readonly start?: SpeedTrack;
  /** How far that may be off, relative; default 3 %. */
  readonly startError?: number;
  readonly lowestHz?: number;
  readonly highestHz?: number;
}

export type TrackKind = 'steady' | 'drift' | 'ramp' | 'logged';

export interface FoundTrack {
  readonly kind: TrackKind;
  /** Mean 1 over the recording, on its clock. */
  readonly track: SpeedTrack;
  /** ln likelihood ratio of the found track over the one started from (a steady speed, or the ramp's or log's). */
  readonly logRatio: number;
  /** ln likelihood ratio of a ramp over no movement; null where none was found. */
  readonly rampLogRatio: number | null;
  /** Frequencies of the lines it was drawn from, at relative speed 1, Hz. */
  readonly lineHz: readonly number[];
}

const LOWEST_HZ = 4;
const HIGHEST_HZ = 250;
/** Ramps reach this far to either side of the expected base frequency. */
const RAMP_RANGE = 1.7;
/** ln ratio from which a ramp is believed: noise reaches it once in 400 recordings at most. */
const RAMP_BELIEVED = 6;
/** A start is never trusted closer than this, relative. */
const LEAST_ERROR = 0.02;
/** ln ratio that a followed track must gain over the one it started from. */
const GAIN_BELIEVED = 8;
/**
 * The path is drawn through the lines it is then judged by. This many independent chances are laid against it: with
 * them, noise and resonances give a track in fewer than 1 recording in 100 (noise study).
 */
const PATH_CHANCES = 100;
const FALSE_ALARM = 0.005;
/**
 * True where at least one followed line stands out on the track's clock as no noise or resonance would, the freedom of
 * the path allowed for.
 */
const standsOut = (prepared: Prepared, followed: Followed, lowestHz: number, highestHz: number): boolean => {
  const fastest = followed.track.relative.reduce((most, r) => Math.max(most, r), 1);
  const blocks = toBlocks(resampleToEqualAngle(prepared, followed.track), highestHz / fastest);
  const views = makeLevels(blocks, lowestHz, highestHz / fastest).slice(0, 3);
  const allowed = Math.log(FALSE_ALARM / PATH_CHANCES);
  return smoothCandidates(blocks.axisCount, views, lowestHz, highestHz / fastest, FALSE_ALARM / PATH_CHANCES)
    .filter(({ frequencyHz, view }) =>
      followed.lines.some((line) => Math.abs(line.frequencyHz - frequencyHz) < 2 / view.level.lengthS),
    )
    .some((candidate) => {
      const taken = new Uint8Array(candidate.view.level.bins);
      return againstResonance(blocks.axisCount, candidate, taken).logAlarm < allowed;
    });
};

const rangeOf = (prepared: Prepared, options: TrackOptions): { lowestHz: number; highestHz: number } => ({
  lowestHz: options.lowestHz ?? LOWEST_HZ,
  highestHz: Math.min(options.highestHz ?? HIGHEST_HZ, (0.9 * prepared.samplingRateHz) / 2),
});

/** A pull-up or coast-down that the expected multiples show, coarsely; null where there is none to be believed. */
export const findRampTrack = (prepared: Prepared, options: TrackOptions): FoundRamp | null => {
  const { lowestHz, highestHz } = rangeOf(prepared, options);
  const { multiples, baseHz } = options;
  if (!multiples || !baseHz || !(highestHz > 1.5 * lowestHz) || prepared.pieces.length === 0) return null;
  const ramp = findRamp(toBlocks(prepared, highestHz), {
    multiples,
    lowestBaseHz: baseHz / RAMP_RANGE,
    highestBaseHz: baseHz * RAMP_RANGE,
    highestHz,
  });
  return ramp && ramp.logRatio > RAMP_BELIEVED ? ramp : null;
};

/**
 * Finds the relative speed track, or says 'steady' where no movement is supported.
 *
 * The track is relative: which part a line belongs to and how fast it was all in all is decided elsewhere.
 */
export const findSpeedTrack = (prepared: Prepared, options: TrackOptions = {}): FoundTrack => {
  const { lowestHz, highestHz } = rangeOf(prepared, options);
  const nothing: FoundTrack = { kind: 'steady', track: STEADY, logRatio: 0, rampLogRatio: null, lineHz: [] };
  if (!(highestHz > 1.5 * lowestHz) || prepared.pieces.length === 0) return nothing;
  const ramp = options.start ? null : findRampTrack(prepared, options);
  const start = options.start ?? ramp?.track ?? null;
  const outer = start ? withUnitMean(start, prepared) : STEADY;
  const onReference = start ? resampleToEqualAngle(prepared, outer) : prepared;
  const fastest = outer.relative.reduce((most, r) => Math.max(most, r), 1);
  const shift = start ? Math.max(LEAST_ERROR, options.startError ?? 0.03) : MOST_SHIFT;
  const followed = followHotSpots(
    onReference,
    lowestHz,
    highestHz / fastest,
    shift,
    start ? inverseTrack(outer) : null,
  );
  const moved = followed.gain > GAIN_BELIEVED && standsOut(onReference, followed, lowestHz, highestHz / fastest);
  const kind: TrackKind = options.start ? 'logged' : start ? 'ramp' : moved ? 'drift' : 'steady';
  const whole = !moved ? outer : start ? composeTracks(outer, followed.track) : followed.track;
  const track = kind === 'steady' ? STEADY : withUnitMean(whole, prepared);
  // The followed track has a mean of its own; lines stand at relative speed 1 of the track that is given out.
  const scale = whole.relative[0]! / track.relative[0]!;
  return {
    kind,
    track,
    logRatio: followed.gain,
    rampLogRatio: ramp?.logRatio ?? null,
    lineHz: moved ? followed.lines.map((line) => line.frequencyHz * scale) : [],
  };
};
