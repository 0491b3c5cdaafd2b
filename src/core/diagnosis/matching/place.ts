/** Where a line is expected once the recording itself has told the speed. */
import type { RunInference } from './infer-run.ts';
import type { Origin } from '../origins/origin.ts';

export interface ExpectedPlace {
  readonly hz: number;
  readonly sdHz: number;
}

const scaleOf = (inference: RunInference, origin: Origin): { mean: number; sd: number } =>
  origin.group === 'road' ? inference.posterior.road : inference.posterior.engine;

/** True frequency after the speed scale, and its standard uncertainty from scale and place together. */
export const expectedPlace = (inference: RunInference, origin: Origin): ExpectedPlace => {
  const { mean, sd } = scaleOf(inference, origin);
  const own = Math.sqrt(origin.place.reduce((sum, p) => sum + p.weight * (p.sd ** 2 + p.mean ** 2), 0));
  const hz = origin.trueHz * Math.exp(mean);
  return { hz, sdHz: hz * Math.hypot(sd, own) };
};
