/** Which history each group of lines is held to follow, and what a tone's own motion says of it. */
import { targetsOf } from './origin.ts';
import type { Tone } from './tone.ts';
import type { Load } from '../vehicle/vehicle.ts';
import { heldCases, orderWidthWeight, ownWidthWeight, type SpeedHeld } from './held-speed.ts';
import { besideBelow, ownDensity, vehicleDensity } from './wander.ts';

/** Index of the track a group follows; null where the group's history is not among the tracks (or there is none). */
export interface MotionModel {
  readonly road: number | null;
  readonly engine: number | null;
  /** Engine and road follow one history, so the gears may be locked; otherwise something slips between them. */
  readonly joined: boolean;
  /** ln speed of the vehicle over that of the track: other than 1 where the track is that of an image. */
  readonly factor: number;
  readonly logPrior: number;
  /** Where no history was found: whether the speed was held so well that no order could spread, or moved unseen. */
  readonly held?: SpeedHeld;
}

/** The recording's histories: tracks by index, with the root mean square of their ln relative speed. */
export interface Histories {
  readonly count: number;
  readonly wander: readonly number[];
  /** True where the speed was logged: its steadiness is then known, and says nothing of a tone. */
  readonly logged: boolean;
  /** How likely the run was a pull-up or coast-down rather than a held speed, from its load. */
  readonly sweepPrior: number;
}

/** Share of tones whose motion is spoilt: level pulsing, a beat, a rough track. Judgement. */
const SPOILT = 2e-4;
/** A group whose history is not known may move anyhow, but hardly not at all while the rest of the vehicle does. */
const UNKNOWN = 0.3;
/** A tone stays, rather than moves, from this difference on, ln of evidence. */
const CLEARLY = 4;
/** Prior of a sweep by how the run was driven. Judgement. */
export const sweepPriorOf = (load: Load | undefined): number =>
  load === 'pull' || load === 'coast' || load === 'brake' || load === 'neutral' ? 0.5 : 0.05;

/** Model of images: how often the tone that gave the track is one, all in all. Judgement. */
const IMAGE_PRIOR = 0.25;

const pairings = (count: number, slipPossible: boolean): readonly Omit<MotionModel, 'factor'>[] => {
  const model = (road: number | null, engine: number | null, joined: boolean, prior: number) => ({
    road,
    engine,
    joined,
    logPrior: Math.log(prior),
  });
  if (count === 0) return [model(null, null, true, 1)];
  if (count === 1) {
    if (!slipPossible) return [model(0, 0, true, 1)];
    return [model(0, 0, true, 0.8), model(0, null, false, 0.1), model(null, 0, false, 0.1)];
  }
  if (!slipPossible) return [model(0, 0, true, 0.5), model(1, 1, true, 0.5)];
  // A second track may be an image's, or a tone's of its own: what does not follow the first then says so itself.
  // And both may be the engine's, the second being the first turned round, as an image moves.
  return [
    model(0, 1, false, 0.15),
    model(1, 0, false, 0.15),
    model(0, 0, true, 0.25),
    model(1, 1, true, 0.25),
    model(null, 0, false, 0.1),
    model(null, 1, false, 0.1),
  ];
};

/**
 * The ways the groups may follow the tracks found.
 * @param factors of the images that the tones which gave the tracks may be, see `imageFactors`
 * @param tones whose widths tell of the speed where no history was found
 */
export const motionModels = (
  histories: Histories,
  slipPossible: boolean,
  factors: readonly number[],
  tones: readonly Tone[],
): readonly MotionModel[] => {
  const cases = histories.count === 0 ? heldCases(tones) : [];
  if (cases.length > 0) {
    return cases.map(({ held, prior }) => ({
      ...pairings(0, slipPossible)[0]!,
      factor: 1,
      held,
      logPrior: Math.log(Math.max(1e-9, prior)),
    }));
  }
  const all = pairings(histories.count, slipPossible);
  const plain = Math.log(factors.length > 0 ? 1 - IMAGE_PRIOR : 1);
  const image = Math.log(IMAGE_PRIOR / Math.max(1, factors.length));
  const models = [
    ...all.map((model) => ({ ...model, factor: 1, logPrior: model.logPrior + plain })),
    ...all
      .filter((model) => model.joined)
      .flatMap((model) => factors.map((factor) => ({ ...model, factor, logPrior: model.logPrior + image }))),
  ];
  // A vehicle's speed wanders by some thousandths: of the models, that which asks for a usual wander is likelier.
  return models.map((model) => {
    const wander = histories.wander[model.road ?? model.engine ?? -1];
    if (wander === undefined || histories.logged) return model;
    const usual = vehicleDensity(Math.abs(model.factor) * wander, histories.sweepPrior);
    return { ...model, logPrior: model.logPrior + Math.log(usual + 1e-6) };
  });
};

const best = ({ motion, peak }: Tone, histories: Histories): number => {
  if (!motion) return 0;
  let most = motion.still;
  for (let k = 0; k < histories.count; k++) most = Math.max(most, motion.along(k, peak.frequencyHz));
  return most;
};

/** The greatest wander (ln) that would still leave the tone as narrow as the recording's length lets it be. */
const steadinessOf = ({ peak }: Tone): number => peak.limitWidthHz / (2 * peak.frequencyHz);

const clearlyStill = ({ motion, peak }: Tone, histories: Histories): boolean => {
  if (!motion) return false;
  for (let k = 0; k < histories.count; k++) {
    if (motion.along(k, peak.frequencyHz) > motion.still - CLEARLY) return false;
  }
  return true;
};

const kept = (log: number, most: number): number => SPOILT + (1 - SPOILT) * Math.exp(Math.min(0, log - most));

/** In curves a wheel turns ahead of and behind the shaft by about this much in time. Judgement: 3e-4 for some seconds. */
const CURVES_S = 1e-3;
/** Share of runs in which curves are what a tone lost by. Judgement. */
const IN_CURVES = 0.1;

/**
 * Likelihood that a tone lost so much of its evidence by curves: evidence goes with the power added up in phase, and of
 * that a phase that strays by φ (root mean square) leaves exp(−φ²).
 */
const keptInCurves = (log: number, most: number, slopeHz: number): number => {
  if (!(log > 0) || log >= most) return 0;
  const strayS = Math.sqrt(Math.log(most / log)) / (2 * Math.PI * Math.abs(slopeHz));
  return IN_CURVES * Math.exp(-0.5 * (strayS / CURVES_S) ** 2);
};

/** What a group follows: a track (null: none known) and the model's factor. */
export interface Following {
  readonly track: number | null;
  readonly factor: number;
  readonly held: SpeedHeld | null;
}

/** Likelihood (1 at most) of the tone's motion where its origin moves by `slopeHz` per unit of ln speed of a track. */
export const movingWeight = (
  tone: Tone,
  histories: Histories,
  { track, factor, held }: Following,
  slopeHz: number,
): number => {
  if (!tone.motion) return held ? orderWidthWeight(tone.peak, slopeHz, held) : 1;
  if (track === null)
    return clearlyStill(tone, histories) ? besideBelow(steadinessOf(tone), Math.min(...histories.wander)) : UNKNOWN;
  const along = tone.motion.along(track, factor * slopeHz);
  const most = Math.max(best(tone, histories), along);
  return Math.max(kept(along, most), keptInCurves(along, most, slopeHz));
};

/** How much likelier a wander this small is for a tone of its own than for a vehicle's speed. */
const wanderRatio = (wander: number, sweepPrior: number): number =>
  ownDensity(wander) / vehicleDensity(wander, sweepPrior);

/** Likelihood of the motion of a tone of its own, which stays, or wanders a little by itself. */
export const ownWeight = (tone: Tone, histories: Histories): number => {
  const { motion, peak } = tone;
  if (!motion) return ownWidthWeight(peak);
  const most = best(tone, histories);
  let weight = kept(motion.still, most);
  histories.wander.forEach((wander, k) => {
    const alike = Math.min(1, wanderRatio(wander, histories.sweepPrior));
    if (!histories.logged) weight = Math.max(weight, alike * kept(motion.along(k, peak.frequencyHz), most));
  });
  return weight;
};

/** Likelihood of the motion of something that is not in the list: it may stay or move with any history. */
export const anyWeight = (tone: Tone, histories: Histories, held: SpeedHeld | null): number => {
  const { motion, peak } = tone;
  if (motion) return 0.5 * kept(motion.still, best(tone, histories)) + 0.5;
  return held ? 0.5 * ownWidthWeight(peak) + 0.5 * orderWidthWeight(peak, peak.frequencyHz, held) : 1;
};

/** A tone gave a track if it keeps together on it this much better than staying, ln of evidence. */
const GAVE_TRACK = 15;
/** A line is looked for this far (ln) around the place its stated speed gives. */
const LINE_REACH = 0.05;
const MOST_FACTORS = 6;

/**
 * The factors (vehicle's ln speed over the track's) if the tones that follow a track are images of expected lines: a
 * tone at f, image of F, moves by ±F while the track, made from it, has it move by f.
 * @param tonesHz tones that the track keeps together
 * @param linesHz true frequencies of expected lines
 */
export const imageFactors = (
  tonesHz: readonly number[],
  linesHz: readonly number[],
  samplingRateHz: number,
): readonly number[] => {
  const factors: number[] = [];
  for (const toneHz of tonesHz) {
    for (const { trueHz, direction, image } of targetsOf(toneHz, samplingRateHz)) {
      if (!image || !linesHz.some((hz) => Math.abs(Math.log(hz / trueHz)) < LINE_REACH)) continue;
      const factor = (direction * toneHz) / trueHz;
      if (!factors.some((known) => Math.abs(known - factor) < 0.02 * Math.abs(factor))) factors.push(factor);
    }
  }
  return factors.slice(0, MOST_FACTORS);
};

/** Tones that keep together clearly better on the first track than staying. */
export const tonesOnTrack = (tones: readonly Tone[], histories: Histories): readonly number[] =>
  histories.count === 0
    ? []
    : tones
        .filter(({ motion, peak }) => motion && motion.along(0, peak.frequencyHz) > motion.still + GAVE_TRACK)
        .map(({ peak }) => peak.frequencyHz);
