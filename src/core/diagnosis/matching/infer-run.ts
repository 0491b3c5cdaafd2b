/** One run's tones weighed against its lines: the posterior of its speed scales, and the matches. */
import { logAbsence, type DetectionLimit } from '../origins/absence.ts';
import { backgroundAt, supportsOf } from './intensity.ts';
import { atLoudness, MIDDLE, OTHERS, type Loudness } from './loudness.ts';
import { heldToTwins, matchesOf, mixedMatches, type Match } from './match.ts';
import { imageFactors, isOfNothing, isOnTrack, motionModels, type MotionModel } from '../origins/motion-model.ts';
import { heldToFactors } from './held-to-factors.ts';
import type { Following } from './motion-weights.ts';
import type { Origin } from '../origins/origin.ts';
import type { RunEvidence } from '../observing/run-evidence.ts';
import { mixedPosterior, scalePosterior, type ScalePosterior, type ToneDensities } from './scale-posterior.ts';
import { locked, unlocked, type ScalePrior } from '../origins/scale-prior.ts';
import type { SteadyTone } from './steady-tones.ts';
import { twinsOf } from './twins.ts';

export interface RunInference {
  readonly run: RunEvidence;
  readonly origins: readonly Origin[];
  readonly prior: ScalePrior;
  readonly posterior: ScalePosterior;
  readonly matches: readonly Match[];
  /** The likeliest of the motion models. */
  readonly model: MotionModel;
}

/** The lines as they are in a vehicle of one loudness, and what it says that they are missing. */
interface Lines {
  readonly loudness: Loudness;
  readonly road: readonly Origin[];
  readonly engine: readonly Origin[];
  readonly twins: ReadonlyMap<Origin, readonly Origin[]>;
  readonly absentRoad: Float64Array;
  readonly absentEngine: Float64Array;
}

const linesAt = (
  given: readonly Origin[],
  loudness: Loudness,
  { road: roadAxis, engine: engineAxis }: ScalePrior,
  limit: DetectionLimit,
): Lines => {
  const origins = atLoudness(given, loudness);
  const road = origins.filter((origin) => origin.group === 'road');
  const engine = origins.filter((origin) => origin.group === 'engine');
  return {
    loudness,
    road,
    engine,
    twins: twinsOf(origins),
    absentRoad: logAbsence(road, roadAxis, limit),
    absentEngine: logAbsence(engine, engineAxis, limit),
  };
};

/** What is taken for true of a run while its tones are weighed. */
interface Assumption {
  readonly model: MotionModel;
  readonly lines: Lines;
}

interface Weighed extends Assumption {
  readonly posterior: ScalePosterior;
  readonly matches: readonly Match[];
  readonly logWeight: number;
}

/** Motion models this much (ln) less likely than the best are not tried at other loudnesses. */
const NOT_WORTH_TRYING = 5;

const weigh = (
  run: RunEvidence,
  prior: ScalePrior,
  steady: readonly SteadyTone[],
  { model, lines }: Assumption,
): Weighed => {
  const { histories, limit } = run;
  const { factor, held = null } = model;
  const ofNothing = isOfNothing(model, histories);
  const { road, engine, twins, absentRoad, absentEngine, loudness } = lines;
  const tied = !model.joined ? unlocked(prior) : model.road !== null ? locked(prior) : prior;
  const following = (track: number | null): Following => ({
    track,
    factor,
    held,
    beside: track === null ? model.beside : null,
    followed: track !== null && run.tones.some((tone) => isOnTrack(tone, histories, track)),
    ofNothing,
  });
  const ofRoad = following(model.road);
  const ofEngine = following(model.engine);
  const densities = run.tones.map((tone): ToneDensities => ({
    background: backgroundAt(tone, run.tones, limit.samplingRateHz, histories, steady, { factor, held, ofNothing }),
    road: supportsOf(road, tone, prior.road, limit, histories, ofRoad, twins),
    engine: supportsOf(engine, tone, prior.engine, limit, histories, ofEngine, twins),
  }));
  const posterior = scalePosterior(tied, densities, absentRoad, absentEngine);
  const matches = matchesOf(run.tones, densities, posterior);
  const logWeight = posterior.logEvidence + model.logPrior + Math.log(loudness.prior);
  return { model, lines, posterior, matches, logWeight };
};

/** Matches name the origins as they were given, not as one assumption has them. */
const asGiven = (matches: readonly Match[], origins: readonly Origin[]): readonly Match[] => {
  const byLabel = new Map(origins.map((origin) => [origin.line.label, origin]));
  return matches.map((match) => ({
    ...match,
    lines: match.lines.map((share) => ({ ...share, origin: byLabel.get(share.origin.line.label) ?? share.origin })),
  }));
};

/** The run's tones weighed under every motion model, the lines as loud as usual. */
const atUsualLoudness = (
  run: RunEvidence,
  origins: readonly Origin[],
  prior: ScalePrior,
  steady: readonly SteadyTone[],
): readonly Weighed[] => {
  const linesHz = origins.map((origin) => origin.trueHz);
  const onTrackHz = run.tones.filter((tone) => isOnTrack(tone, run.histories)).map(({ peak }) => peak.frequencyHz);
  // A history that was logged is the vehicle's own.
  const factors = run.histories.logged ? [] : imageFactors(onTrackHz, linesHz, run.limit.samplingRateHz);
  const models = motionModels(run.histories, run.slipPossible, factors, run.tones);
  const usual = linesAt(origins, MIDDLE, prior, run.limit);
  return models.map((model) => weigh(run, prior, steady, { model, lines: usual }));
};

/**
 * How likely these lines make what was seen, for comparing statements about one run.
 * @returns ln of a probability density, up to a constant of the run
 */
export const runEvidence = (run: RunEvidence, origins: readonly Origin[], prior: ScalePrior): number => {
  const weights = atUsualLoudness(run, origins, prior, []).map(({ logWeight }) => logWeight);
  const most = Math.max(...weights);
  return most + Math.log(weights.reduce((sum, weight) => sum + Math.exp(weight - most), 0));
};

/** @param steady tones of other runs that may be heard here again */
export const inferRun = (
  run: RunEvidence,
  origins: readonly Origin[],
  prior: ScalePrior,
  steady: readonly SteadyTone[],
): RunInference => {
  const middle = atUsualLoudness(run, origins, prior, steady);
  const likeliest = Math.max(...middle.map(({ logWeight }) => logWeight));
  const worth = middle.filter(({ logWeight }) => logWeight > likeliest - NOT_WORTH_TRYING);
  const others = OTHERS.map((loudness) => linesAt(origins, loudness, prior, run.limit));
  const all = [
    ...middle,
    ...worth.flatMap(({ model }) => others.map((lines) => weigh(run, prior, steady, { model, lines }))),
  ];
  const most = Math.max(...all.map(({ logWeight }) => logWeight));
  const weights = all.map(({ logWeight }) => Math.exp(logWeight - most));
  const sum = weights.reduce((a, b) => a + b, 0);
  const shares = heldToFactors(
    all.map(({ model }) => model.factor),
    weights.map((weight) => weight / sum),
  );
  const matches = mixedMatches(
    all.map((one) => one.matches),
    shares,
  );
  const named = asGiven(matches, origins);
  return {
    run,
    origins,
    prior,
    posterior: mixedPosterior(
      prior,
      all.map(({ posterior }) => posterior),
      shares,
    ),
    matches: run.expected?.engineTiedToRoad ? heldToTwins(named, twinsOf(origins)) : named,
    model: all[shares.indexOf(Math.max(...shares))]!.model,
  };
};
