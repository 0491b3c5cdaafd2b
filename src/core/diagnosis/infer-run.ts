/** One run's tones weighed against its lines: the posterior of its speed scales, and the matches. */
import { logAbsence } from './absence.ts';
import { backgroundAt, supportsOf } from './intensity.ts';
import { matchesOf, type Match } from './match.ts';
import type { Origin } from './origin.ts';
import { linesOrNone, type RunEvidence } from './run-evidence.ts';
import { scalePosterior, type ScalePosterior, type ToneDensities } from './scale-posterior.ts';
import type { ScalePrior } from './scale-prior.ts';
import type { SteadyTone } from './steady-tones.ts';

export interface RunInference {
  readonly run: RunEvidence;
  readonly origins: readonly Origin[];
  readonly prior: ScalePrior;
  readonly posterior: ScalePosterior;
  readonly matches: readonly Match[];
}

/** @param steady tones of other runs that may be heard here again */
export const inferRun = (
  run: RunEvidence,
  origins: readonly Origin[],
  prior: ScalePrior,
  steady: readonly SteadyTone[],
): RunInference => {
  const tied = linesOrNone(run.expected).engineTiedToRoad;
  const road = origins.filter((origin) => origin.group === 'road');
  const engine = origins.filter((origin) => origin.group === 'engine');
  const densities = run.tones.map((tone): ToneDensities => ({
    background: backgroundAt(tone, run.limit.samplingRateHz, steady),
    road: supportsOf(road, tone, prior.road, run.limit, tied),
    engine: supportsOf(engine, tone, prior.engine, run.limit, tied),
  }));
  const posterior = scalePosterior(
    prior,
    densities,
    logAbsence(road, prior.road, run.limit),
    logAbsence(engine, prior.engine, run.limit),
  );
  return { run, origins, prior, posterior, matches: matchesOf(run.tones, densities, posterior) };
};
