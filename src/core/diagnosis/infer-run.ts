/** One run's tones weighed against its lines: the posterior of its speed scales, and the matches. */
import type { Vehicle } from '../vehicle/vehicle.ts';
import { logAbsence } from './absence.ts';
import { backgroundAt, supportsOf } from './intensity.ts';
import { matchesOf, type Match } from './match.ts';
import { originsOf, type Origin } from './origin.ts';
import { linesOrNone, type RunEvidence } from './run-evidence.ts';
import { runPrior } from './run-prior.ts';
import { scalePosterior, type ScalePosterior, type ToneDensities } from './scale-posterior.ts';

export interface RunInference {
  readonly run: RunEvidence;
  readonly origins: readonly Origin[];
  readonly posterior: ScalePosterior;
  readonly matches: readonly Match[];
}

export const inferRun = (vehicle: Vehicle, run: RunEvidence): RunInference => {
  const expected = linesOrNone(run.expected);
  const origins = originsOf(expected);
  const prior = runPrior(vehicle, run.condition, expected);
  const tied = expected.engineTiedToRoad;
  const road = origins.filter((origin) => origin.group === 'road');
  const engine = origins.filter((origin) => origin.group === 'engine');
  const densities = run.tones.map((tone): ToneDensities => ({
    background: backgroundAt(tone, run.limit.samplingRateHz),
    road: supportsOf(road, tone, prior.road, run.limit, tied),
    engine: supportsOf(engine, tone, prior.engine, run.limit, tied),
  }));
  const posterior = scalePosterior(
    prior,
    densities,
    logAbsence(road, prior.road, run.limit),
    logAbsence(engine, prior.engine, run.limit),
  );
  return { run, origins, posterior, matches: matchesOf(run.tones, densities, posterior) };
};
