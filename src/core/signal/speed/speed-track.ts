/**
 * The relative speed over a recording, found in the recording itself: what turns with the speed becomes steady once it
 * is taken out. A ramp is found coarsely by its orders; lines are followed to a fraction of a turn.
 */
import { toBlocks } from '../prepare/blocks.ts';
import { againstResonance, makeLevels, smoothCandidates } from '../peaks/candidates.ts';
import { composeTracks, inverseTrack, withUnitMean } from './combine-tracks.ts';
import { resampleToEqualAngle, STEADY, type SpeedTrack } from './equal-angle.ts';
import { findRamp, type FoundRamp } from './find-ramp.ts';
import { followHotSpots, type Followed } from './follow-hot-spots.ts';
import { MOST_SHIFT } from './follow-lines.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** Frequencies looked at, Hz; default 4 to 250, and no more than a share of half the rate. */
export interface TrackRange {
  readonly lowestHz?: number;
  readonly highestHz?: number;
  /** That share; default 0.9, for a recording that was resampled holds no more. */
  readonly shownShare?: number;
}

export interface RampOptions extends TrackRange {
  /** Frequencies that may be present, over the base frequency. */
  readonly multiples: readonly number[];
  /** Expected base frequency, Hz. */
  readonly baseHz: number;
}

export interface TrackOptions extends TrackRange {
  /** A track to start from: of a ramp, of a log, of a coarse search. Default: a steady speed. */
  readonly start?: SpeedTrack;
  /** How far that may be off, relative; default 3 %. */
  readonly startError?: number;
  /** How much of that may come or go in a second, relative; default as a cruise's speed changes. */
  readonly ratePerS?: number;
}

export interface FoundTrack {
  /** Mean 1 over the recording, on its clock; the start itself (or a steady speed) where no more was found. */
  readonly track: SpeedTrack;
  /** True where lines show more movement than the start has. */
  readonly moved: boolean;
  /** ln likelihood ratio of the followed track over the one started from. */
  readonly logRatio: number;
}

const LOWEST_HZ = 4;
const HIGHEST_HZ = 250;
const SHOWN_SHARE = 0.9;
/** Ramps reach this far to either side of the expected base frequency. */
const RAMP_RANGE = 1.7;
/** ln ratio from which a ramp is believed: noise reaches it once in 400 recordings at most. */
const RAMP_BELIEVED = 6;
/** A start is never trusted closer than this, relative. */
const LEAST_ERROR = 0.02;
/** ln ratio that a followed track must gain over the one it started from. */
const GAIN_BELIEVED = 8;
/**
 * The path is drawn through the lines it is then judged by, anew every so many seconds; each such piece of it is worth
 * one more e-fold of chances that noise falls in with it. A narrow resonance shaken for a minute and a half gave a path
 * at 1 in 10⁶ (accuracy suite).
 */
const PATH_PIECE_S = 8;
const FALSE_ALARM = 0.005;
/** A line that a track has made steady stands in the longest segments: so many lengths are looked at. */
const LONGEST_LEVELS = 3;

/**
 * True where at least one followed line stands out on the track's clock as no noise or resonance would, the freedom of
 * the path allowed for.
 */
const standsOut = (prepared: Prepared, followed: Followed, lowestHz: number, highestHz: number): boolean => {
  const fastest = followed.track.relative.reduce((most, r) => Math.max(most, r), 1);
  const even = resampleToEqualAngle(prepared, followed.track, 0.92);
  const blocks = toBlocks(even, highestHz / fastest);
  const views = makeLevels(blocks, lowestHz, highestHz / fastest, blocks, LONGEST_LEVELS);
  const allowed = Math.log(FALSE_ALARM) - even.durationS / PATH_PIECE_S;
  // What is allowed in a long recording is too little for a number, though not for its logarithm.
  return smoothCandidates(blocks.axisCount, views, lowestHz, highestHz / fastest, FALSE_ALARM)
    .filter(({ frequencyHz, view }) =>
      followed.lines.some((line) => Math.abs(line.frequencyHz - frequencyHz) < 2 / view.level.lengthS),
    )
    .some((candidate) => {
      const taken = new Uint8Array(candidate.view.level.bins);
      return againstResonance(blocks.axisCount, candidate, taken).logAlarm < allowed;
    });
};

const rangeOf = (prepared: Prepared, range: TrackRange): { lowestHz: number; highestHz: number } | null => {
  const lowestHz = range.lowestHz ?? LOWEST_HZ;
  const highestHz = Math.min(
    range.highestHz ?? HIGHEST_HZ,
    ((range.shownShare ?? SHOWN_SHARE) * prepared.samplingRateHz) / 2,
  );
  return highestHz > 1.5 * lowestHz && prepared.pieces.length > 0 ? { lowestHz, highestHz } : null;
};

/** A pull-up or coast-down that the expected multiples show, coarsely; null where there is none to be believed. */
export const findRampTrack = (prepared: Prepared, options: RampOptions): FoundRamp | null => {
  const range = rangeOf(prepared, options);
  const { multiples, baseHz } = options;
  if (!range) return null;
  const ramp = findRamp(toBlocks(prepared, range.highestHz), {
    multiples,
    lowestBaseHz: baseHz / RAMP_RANGE,
    highestBaseHz: baseHz * RAMP_RANGE,
    highestHz: range.highestHz,
  });
  return ramp && ramp.logRatio > RAMP_BELIEVED ? ramp : null;
};

/**
 * Follows the lines of a recording from a start, or from a steady speed, to a fraction of a turn.
 *
 * The track is relative: which part a line belongs to and how fast it was all in all is decided elsewhere.
 */
export const findSpeedTrack = (prepared: Prepared, options: TrackOptions = {}): FoundTrack => {
  const { start, startError = 0.03, ratePerS } = options;
  const outer = start ? withUnitMean(start, prepared) : STEADY;
  const range = rangeOf(prepared, options);
  if (!range) return { track: outer, moved: false, logRatio: 0 };
  const onReference = start ? resampleToEqualAngle(prepared, outer, 0.92) : prepared;
  const fastest = outer.relative.reduce((most, r) => Math.max(most, r), 1);
  const highestHz = range.highestHz / fastest;
  const shift = start ? Math.max(LEAST_ERROR, startError) : MOST_SHIFT;
  const undone = start ? inverseTrack(outer) : null;
  const followed = followHotSpots(onReference, range.lowestHz, highestHz, shift, undone, ratePerS);
  const moved = followed.gain > GAIN_BELIEVED && standsOut(onReference, followed, range.lowestHz, highestHz);
  const whole = start ? composeTracks(outer, followed.track) : followed.track;
  return { track: moved ? withUnitMean(whole, prepared) : outer, moved, logRatio: followed.gain };
};
