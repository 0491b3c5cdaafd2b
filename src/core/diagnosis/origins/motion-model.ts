/** Which history each group of lines is held to follow. */
import { targetsOf } from './origin.ts';
import type { Tone } from './tone.ts';
import type { Load } from '../../vehicle/vehicle.ts';
import { heldCases, type SpeedHeld } from './held-speed.ts';
import { besideCases, heldWanderCases, vehicleDensity, wanderBesideWeight, type WanderCase } from './wander.ts';

/** Index of the track a group follows; null where the group's history is not among the tracks (or there is none). */
export interface MotionModel {
  readonly road: number | null;
  readonly engine: number | null;
  /** Engine and road follow one history, so the gears may be locked; otherwise something slips between them. */
  readonly joined: boolean;
  /** ln speed of the vehicle over that of the track: other than 1 where the track is that of an image. */
  readonly factor: number;
  readonly logPrior: number;
  /** Root mean square wander (ln) of the group that follows no history, where it is asked: then all its lines have it. */
  readonly beside: number | null;
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
  /** Length of the recording, s. */
  readonly durationS: number;
  /** How much sharper lines are on the first track than without it, ln of evidence; of a log no matter. */
  readonly gain: number;
}

/** The run was driven so that its speed is likely to change much. */
export const isSweepLoad = (load: Load | undefined): boolean =>
  load === 'pull' || load === 'coast' || load === 'brake' || load === 'neutral';

/** Prior of a sweep by how the run was driven. Judgment. */
export const sweepPriorOf = (load: Load | undefined): number => (isSweepLoad(load) ? 0.5 : 0.05);

const pairings = (count: number, slipPossible: boolean): readonly Omit<MotionModel, 'factor' | 'beside'>[] => {
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
      beside: null,
      held,
      logPrior: Math.log(Math.max(1e-9, prior)),
    }));
  }
  const pairs = pairings(histories.count, slipPossible);
  const anyStill = tones.some((tone) => isClearlyStill(tone, histories));
  // Whether the track is an image's follows from which line gave it, and how likely that is the lines' own densities say:
  // each of these models leaves the tones that gave the track to images (see `backgroundWeight`), so no prior is shared out.
  const followed = [1, ...factors].flatMap((factor) =>
    pairs
      // An engine's image beside a road of its own: only where something stays is there anything to tell the two apart.
      .filter((model) => model.joined || factor === 1 || (model.road === null && anyStill))
      .map((model) => ({ ...model, factor, beside: null })),
  );
  // A vehicle's speed wanders by some thousandths: of the models, that which asks for a usual wander is likelier.
  const weighed = followed.map((model): MotionModel => {
    const wander = histories.wander[model.road ?? model.engine ?? -1];
    if (wander === undefined || histories.logged) return model;
    const usual = vehicleDensity(Math.abs(model.factor) * wander, histories.sweepPrior);
    return { ...model, logPrior: model.logPrior + Math.log((usual + 1e-6) * besideWeight(model, histories)) };
  });
  const all = histories.logged || histories.count === 0 ? weighed : withOfNothing(weighed, histories);
  return anyStill ? all.flatMap((model) => withWanderBeside(model, histories)) : all;
};

const besideWeight = ({ road, engine }: MotionModel, { wander }: Histories): number =>
  road === null || engine === null || road === engine ? 1 : wanderBesideWeight(wander[road]!, wander[engine]!);

/**
 * Share of histories found in a recording that are no part's: a resonance's wander, or a chance path through noise. Many
 * paths are tried, and the best is kept: of those that gain little most are chance. Judgment, from 65 simulated ones: of
 * gains under 22 four of four were, of those up to 30 five of ten, up to 100 three of 51.
 */
const OF_NOTHING = { least: 0.05, most: 0.95, evenGain: 25, perFold: 2.5 };
/** Density of such a wander per unit of its ln. Judgment. */
const WANDER_OF_NOTHING = 0.2;

const shareOfNothing = (gain: number): number => {
  const { least, most, evenGain, perFold } = OF_NOTHING;
  return least + (most - least) / (1 + Math.exp((gain - evenGain) / perFold));
};

const withOfNothing = (models: readonly MotionModel[], { gain }: Histories): readonly MotionModel[] => {
  const share = shareOfNothing(gain);
  return [
    ...models.map((model) => ({ ...model, logPrior: model.logPrior + Math.log(1 - share) })),
    {
      road: null,
      engine: null,
      joined: true,
      factor: 1,
      beside: null,
      logPrior: Math.log(share * WANDER_OF_NOTHING),
    },
  ];
};

/** True where a track was found, and is held to be no part's. */
export const isOfNothing = ({ road, engine }: MotionModel, { count }: Histories): boolean =>
  count > 0 && road === null && engine === null;

/** One model for each wander that a group without a history may have: asked once for all its lines, not tone by tone. */
const withWanderBeside = (model: MotionModel, { wander }: Histories): readonly MotionModel[] =>
  wandersBeside(model, wander).map((one) => ({
    ...model,
    beside: one?.wander ?? null,
    logPrior: model.logPrior + Math.log(one?.prior ?? 1),
  }));

const wandersBeside = (
  { road, engine, factor }: MotionModel,
  wander: readonly number[],
): readonly (WanderCase | null)[] => {
  if (road === null && engine === null) return heldWanderCases();
  if (road !== null && engine !== null) return [null];
  return besideCases(road === null ? 'road' : 'engine', Math.abs(factor) * wander[road ?? engine!]!);
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

/** True where the tone keeps together clearly better on a track (the first) than staying. */
export const isOnTrack = ({ motion, peak }: Tone, histories: Histories, track = 0): boolean =>
  motion !== null && track < histories.count && motion.along(track, peak.frequencyHz) > motion.still + GAVE_TRACK;

/** A tone stays, rather than moves, from this difference on, ln of evidence. */
const CLEARLY = 4;

/** True where the tone keeps together clearly better staying than on any track. */
export const isClearlyStill = ({ motion, peak }: Tone, histories: Histories): boolean => {
  if (!motion) return false;
  for (let k = 0; k < histories.count; k++) {
    if (motion.along(k, peak.frequencyHz) > motion.still - CLEARLY) return false;
  }
  return true;
};
