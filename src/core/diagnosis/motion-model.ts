/** Which history each group of lines is held to follow, and what a tone's own motion says of it. */
import type { Tone } from './tone.ts';
import { logNormalDensity, logNormalExceedance } from './log-normal.ts';

/** Index of the track a group follows; null where the group's history is not among the tracks (or there is none). */
export interface MotionModel {
  readonly road: number | null;
  readonly engine: number | null;
  /** Engine and road follow one history, so the gears may be locked; otherwise something slips between them. */
  readonly joined: boolean;
  readonly logPrior: number;
}

/** The recording's histories: tracks by index, with the root mean square of their ln relative speed. */
export interface Histories {
  readonly count: number;
  readonly wander: readonly number[];
  /** True where the speed was logged: its steadiness is then known, and says nothing of a tone. */
  readonly logged: boolean;
}

/** Share of tones whose motion is spoilt: level pulsing, a beat, a rough track. Judgement. */
const SPOILT = 0.01;
/** A group whose history is not known may move anyhow. Judgement. */
const UNKNOWN = 0.3;
/** Root mean square wander (ln) of a driven vehicle's speed over a minute, and of a fan's, pump's or hum's. Judgement. */
const VEHICLE = { median: 0.004, spread: 0.9 };
const OWN_TONE = { median: 2e-4, spread: 1 };
/** A tone's steadiness alone never settles it. */
const MOST_STEADY_RATIO = 30;

/** The ways the groups may follow the tracks found. */
export const motionModels = (histories: Histories, slipPossible: boolean): readonly MotionModel[] => {
  const model = (road: number | null, engine: number | null, joined: boolean, prior: number): MotionModel => ({
    road,
    engine,
    joined,
    logPrior: Math.log(prior),
  });
  if (histories.count === 0) return [model(null, null, true, 1)];
  if (histories.count === 1) {
    return slipPossible
      ? [model(0, 0, true, 0.8), model(0, null, false, 0.1), model(null, 0, false, 0.1)]
      : [model(0, 0, true, 1)];
  }
  return slipPossible
    ? [model(0, 1, false, 0.4), model(1, 0, false, 0.4), model(0, 0, true, 0.1), model(1, 1, true, 0.1)]
    : [model(0, 0, true, 0.5), model(1, 1, true, 0.5)];
};

const best = ({ motion, peak }: Tone, histories: Histories): number => {
  if (!motion) return 0;
  let most = motion.still;
  for (let k = 0; k < histories.count; k++) most = Math.max(most, motion.along(k, peak.frequencyHz));
  return most;
};

const kept = (log: number, most: number): number => SPOILT + (1 - SPOILT) * Math.exp(Math.min(0, log - most));

/** Likelihood (1 at most) of the tone's motion where its origin moves by `slopeHz` per unit of ln speed of a track. */
export const movingWeight = (tone: Tone, histories: Histories, track: number | null, slopeHz: number): number => {
  if (!tone.motion) return 1;
  if (track === null) return UNKNOWN;
  const along = tone.motion.along(track, slopeHz);
  return kept(along, Math.max(best(tone, histories), along));
};

/** How much likelier a wander this small is for a tone of its own than for a vehicle's speed. */
const wanderRatio = (wander: number): number =>
  logNormalDensity(wander, OWN_TONE.median, OWN_TONE.spread) / logNormalDensity(wander, VEHICLE.median, VEHICLE.spread);

/** The same where all that is known is that the wander stays below a limit. */
const steadyRatio = (limit: number): number => {
  const below = ({ median, spread }: { median: number; spread: number }): number =>
    1 - logNormalExceedance(limit, median, spread);
  return Math.min(MOST_STEADY_RATIO, Math.max(1, below(OWN_TONE) / Math.max(1e-9, below(VEHICLE))));
};

/** Likelihood of the motion of a tone of its own, which stays, or wanders a little by itself. */
export const ownWeight = (tone: Tone, histories: Histories): number => {
  const { motion, peak } = tone;
  if (!motion) {
    // No history was found, and the tone is as narrow as the recording's length lets it be: no driver is that steady.
    const narrow = peak.widthHz < 1.3 * peak.limitWidthHz;
    return narrow && !histories.logged ? steadyRatio(peak.limitWidthHz / (2 * peak.frequencyHz)) : 1;
  }
  const most = best(tone, histories);
  let weight = kept(motion.still, most);
  histories.wander.forEach((wander, k) => {
    const alike = Math.min(1, wanderRatio(wander));
    if (!histories.logged) weight = Math.max(weight, alike * kept(motion.along(k, peak.frequencyHz), most));
  });
  return weight;
};

/** Likelihood of the motion of something that is not in the list: it may stay or move with any history. */
export const anyWeight = (tone: Tone, histories: Histories): number =>
  tone.motion ? 0.5 * kept(tone.motion.still, best(tone, histories)) + 0.5 : 1;
