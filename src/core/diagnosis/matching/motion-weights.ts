/** What a tone's own motion says of each thing that it may come from: likelihoods, 1 where it says nothing against it. */
import type { Tone } from '../origins/tone.ts';
import { logNormalExceedance } from '../origins/log-normal.ts';
import { orderWidthWeight, ownWidthWeight, stayedWithin, type SpeedHeld } from '../origins/held-speed.ts';
import { isClearlyStill, isOnTrack, type Histories } from '../origins/motion-model.ts';
import { ownDensity, vehicleDensity } from '../origins/wander.ts';

/** Share of tones whose motion is spoilt: level pulsing, a beat, a rough track. Judgment. */
const SPOILT = 2e-4;
/** A level that pulses leaves this share of a tone's evidence to chance, and no more than so much (ln). Judgment. */
const PULSING = 0.025;
const MOST_PULSING = 8;
/** A group whose history is not known may move anyhow, but hardly not at all while the rest of the vehicle does. */
const UNKNOWN = 0.3;
/** Share of orders that stay, nevertheless, while others of the vehicle move with its history. Judgment. */
const SPOILT_STILL = 2e-6;
/** Share of orders that keep to a history that is no part's. Judgment. */
const ON_NOTHING = 1e-3;
/** Share of a group's orders that keep to the other group's history where the two do not go together. Judgment. */
const ON_OTHER = 0.03;
/** How far (ln) a wander may be over what would leave a tone as steady as it is. */
const STEADINESS_SPREAD = 0.35;

const best = ({ motion, peak, imageMotion }: Tone, histories: Histories): number => {
  if (!motion) return 0;
  let most = motion.still;
  if (imageMotion) most = Math.max(most, motion.along(imageMotion.track, imageMotion.slopeHz));
  for (let k = 0; k < histories.count; k++) most = Math.max(most, motion.along(k, peak.frequencyHz));
  return most;
};

const kept = (log: number, most: number, spoilt = SPOILT): number =>
  spoilt + (1 - spoilt) * Math.exp(Math.min(0, log - most));

/**
 * In curves a wheel turns ahead of and behind the shaft: of a recording of T by this·√T in time, trend taken off. Judgment:
 * speeds 5e-4 apart, as in bends of 1500 m radius, for some 3 s each: 5e-4·√(2·3 s·T)/√15.
 */
const CURVES_ROOT_S = 3.2e-4;
/** No more than this, s, where the tone stayed rather than moved: curves would have had to undo the speed's own wander. Judgment. */
const CURVES_UNDOING_S = 5e-4;
/** Share of runs in which curves are what a tone lost by. Judgment. */
const IN_CURVES = 0.1;

/**
 * Likelihood that a tone lost so much of its evidence by curves: evidence goes with the power added up in phase, and of
 * that a phase that strays by φ (root mean square) leaves exp(−φ²).
 * @param curvesS by how much curves make a wheel stray, s
 */
const keptInCurves = (log: number, most: number, slopeHz: number, curvesS: number): number => {
  if (!(log > 0) || log >= most) return 0;
  const strayS = Math.sqrt(Math.log(most / log)) / (2 * Math.PI * Math.abs(slopeHz));
  return IN_CURVES * Math.exp(-0.5 * (strayS / curvesS) ** 2);
};

/** Likelihood that a tone that wanders so far (ln) is as steady as this one is. */
const stillAt = (tone: Tone, wander: number): number => {
  const over = Math.max(0, Math.log(wander / stayedWithin(tone.peak))) / STEADINESS_SPREAD;
  return Math.max(SPOILT_STILL, Math.exp(-0.5 * over * over));
};

const followsAny = (tone: Tone, histories: Histories): boolean =>
  histories.wander.some((_, track) => isOnTrack(tone, histories, track));

/** What a group follows: a track (null: none known) and the model's factor. */
export interface Following {
  readonly track: number | null;
  readonly factor: number;
  readonly held: SpeedHeld | null;
  /** Where the track is not known: how far (ln) the group wanders, where that is asked. */
  readonly beside: number | null;
  /** Some tone of the run keeps to the track. */
  readonly followed: boolean;
  /** The tracks are held to be no part's. */
  readonly ofNothing: boolean;
}

/**
 * Likelihood (1 at most) of the tone's motion where its origin moves by `slopeHz` per unit of ln speed of a track.
 * @param ofOneWheel the origin turns with one wheel: in curves it may stay while the vehicle's speed moves
 */
export const movingWeight = (
  tone: Tone,
  histories: Histories,
  { track, factor, held, beside, followed, ofNothing }: Following,
  slopeHz: number,
  ofOneWheel: boolean,
): number => {
  if (!tone.motion) return held ? orderWidthWeight(tone.peak, slopeHz, held) : 1;
  if (track === null) {
    if (beside !== null && isClearlyStill(tone, histories)) return stillAt(tone, beside);
    if (!followsAny(tone, histories)) return UNKNOWN;
    return ofNothing ? ON_NOTHING : ON_OTHER;
  }
  const along = tone.motion.along(track, factor * slopeHz);
  const most = Math.max(best(tone, histories), along);
  const curvesS = CURVES_ROOT_S * Math.sqrt(histories.durationS);
  const stayed = tone.motion.still > along;
  const inCurves =
    stayed && !ofOneWheel
      ? 0
      : keptInCurves(along, most, slopeHz, stayed ? Math.min(CURVES_UNDOING_S, curvesS) : curvesS);
  const spoilt = followed && isClearlyStill(tone, histories) ? SPOILT_STILL : SPOILT;
  const byPulsing = stayed ? Math.min(PULSING * most, MOST_PULSING) : 0;
  return Math.max(kept(along + byPulsing, most, spoilt), inCurves);
};

/** How much likelier such a wander is for a tone of its own than for a vehicle's speed. */
const wanderRatio = (wander: number, sweepPrior: number): number =>
  ownDensity(wander) / vehicleDensity(wander, sweepPrior);

/** A wander never speaks louder than this for a tone of its own: what is governed holds its speed, too. Judgment. */
const MOST_RATIO = 100;

/**
 * Likelihood of the motion of a tone of its own, which stays, or wanders a little by itself. Where no other tone follows
 * a history, it may be this tone's own: what is too small a wander for a vehicle then speaks for that, and the
 * likelihood is above 1.
 * @param tones all of the run's
 */
export const ownWeight = (tone: Tone, tones: readonly Tone[], histories: Histories): number => {
  const { motion, peak } = tone;
  if (!motion) return ownWidthWeight(peak);
  const most = best(tone, histories);
  let weight = kept(motion.still, most);
  histories.wander.forEach((wander, k) => {
    if (histories.logged) return;
    const isAlone = !tones.some((other) => other !== tone && isOnTrack(other, histories, k));
    const alike = Math.min(isAlone ? MOST_RATIO : 1, wanderRatio(wander, histories.sweepPrior));
    weight = Math.max(weight, alike * kept(motion.along(k, peak.frequencyHz), most));
  });
  return weight;
};

/** Damping ratio of resonances that the road shakes. Judgment. */
const DAMPING = { median: 0.03, spread: 0.7 };

/**
 * Likelihood of the motion of a resonance: one that is as wide as the speed wandered may seem to follow it, as its phase
 * strays that far by itself; a narrower one stays.
 */
export const resonanceWeight = (tone: Tone, histories: Histories): number => {
  if (!tone.motion) return 1;
  const stays = kept(tone.motion.still, best(tone, histories));
  const wide = logNormalExceedance(Math.max(0, ...histories.wander), DAMPING.median, DAMPING.spread);
  return wide + (1 - wide) * stays;
};

/** A tone gave the track if it gains this share, or more, of what the one gains by it that gains most. Judgment. */
const GIVER_SHARE = 0.1;

const gainOnTrack = ({ motion, peak }: Tone): number =>
  motion ? Math.max(0, motion.along(0, peak.frequencyHz) - motion.still) : 0;

/**
 * Where the vehicle's history is the track's times a factor, the tones that gave the track are taken for images of lines
 * in the list: likelihood that one is something else nevertheless.
 * @param tones all of the run's
 */
export const backgroundWeight = (tone: Tone, tones: readonly Tone[], histories: Histories, factor: number): number => {
  if (factor === 1 || !isOnTrack(tone, histories)) return 1;
  const most = Math.max(...tones.map(gainOnTrack));
  return gainOnTrack(tone) > GIVER_SHARE * most ? SPOILT : 1;
};

/** Likelihood of the motion of something that is not in the list: it may stay or move with any history. */
export const anyWeight = (tone: Tone, histories: Histories, held: SpeedHeld | null): number => {
  const { motion, peak } = tone;
  if (motion) return 0.5 * kept(motion.still, best(tone, histories)) + 0.5;
  return held ? 0.5 * ownWidthWeight(peak) + 0.5 * orderWidthWeight(peak, peak.frequencyHz, held) : 1;
};
