/** One run's tones weighed against its lines: the posterior of its speed scales, and the matches. */
import { logAbsence } from './absence.ts';
import { backgroundAt, supportsOf } from './intensity.ts';
import { matchesOf, mixedMatches, type Match } from './match.ts';
import { imageFactors, motionModels, tonesOnTrack, type MotionModel } from './motion-model.ts';
import type { Origin } from './origin.ts';
import type { RunEvidence } from './run-evidence.ts';
import { mixedPosterior, scalePosterior, type ScalePosterior, type ToneDensities } from './scale-posterior.ts';
import { locked, unlocked, type ScalePrior } from './scale-prior.ts';
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

/** The run under one model of which group follows which history. */
const underModel = (
  run: RunEvidence,
  origins: readonly Origin[],
  prior: ScalePrior,
  steady: readonly SteadyTone[],
  model: MotionModel,
  twins: ReadonlyMap<Origin, readonly Origin[]>,
): { readonly posterior: ScalePosterior; readonly matches: readonly Match[]; readonly logWeight: number } => {
  const { histories, limit } = run;
  const { factor, held = null } = model;
  const road = origins.filter((origin) => origin.group === 'road');
  const engine = origins.filter((origin) => origin.group === 'engine');
  const tied = !model.joined ? unlocked(prior) : histories.count > 0 ? locked(prior) : prior;
  const densities = run.tones.map((tone): ToneDensities => ({
    background: backgroundAt(tone, limit.samplingRateHz, histories, steady, held),
    road: supportsOf(road, tone, prior.road, limit, histories, { track: model.road, factor, held }, twins),
    engine: supportsOf(engine, tone, prior.engine, limit, histories, { track: model.engine, factor, held }, twins),
  }));
  const absentRoad = logAbsence(road, prior.road, limit);
  const absentEngine = logAbsence(engine, prior.engine, limit);
  const posterior = scalePosterior(tied, densities, absentRoad, absentEngine);
  const matches = matchesOf(run.tones, densities, posterior);
  return { posterior, matches, logWeight: posterior.logEvidence + model.logPrior };
};

/** @param steady tones of other runs that may be heard here again */
export const inferRun = (
  run: RunEvidence,
  origins: readonly Origin[],
  prior: ScalePrior,
  steady: readonly SteadyTone[],
): RunInference => {
  const linesHz = origins.map((origin) => origin.trueHz);
  const factors = imageFactors(tonesOnTrack(run.tones, run.histories), linesHz, run.limit.samplingRateHz);
  const models = motionModels(run.histories, run.slipPossible, factors, run.tones);
  const twins = twinsOf(origins);
  const under = models.map((model) => underModel(run, origins, prior, steady, model, twins));
  const most = Math.max(...under.map(({ logWeight }) => logWeight));
  const weights = under.map(({ logWeight }) => Math.exp(logWeight - most));
  const sum = weights.reduce((a, b) => a + b, 0);
  const shares = weights.map((weight) => weight / sum);
  return {
    run,
    origins,
    prior,
    posterior: mixedPosterior(
      prior,
      under.map(({ posterior }) => posterior),
      shares,
    ),
    matches: mixedMatches(
      under.map(({ matches }) => matches),
      shares,
    ),
    model: models[shares.indexOf(Math.max(...shares))]!,
  };
};
