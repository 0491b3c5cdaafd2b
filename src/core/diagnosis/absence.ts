/** What the absence of a line says: how likely it was to be seen had the speed scale been so. */
import { shareAbove, type LevelPrior } from './levels.ts';
import { observedHz, type Origin } from './origin.ts';
import { scaleAt, type ScaleAxis } from './scale-prior.ts';

/** The least 0-to-peak amplitude that would have been found, over frequency. */
export interface DetectionLimit {
  readonly samplingRateHz: number;
  readonly stepHz: number;
  readonly limitMps2: Float64Array;
}

/** A line may hide for reasons no model holds (its own phase against another path, a wheel balanced by chance). */
const MOST_SURELY_SEEN = 0.85;
/** Through an unknown anti-alias filter the absence of an image says next to nothing. */
const IMAGE_SEEN = 0.2;

export const limitAt = ({ stepHz, limitMps2 }: DetectionLimit, frequencyHz: number): number =>
  limitMps2[Math.min(limitMps2.length - 1, Math.max(0, Math.round(frequencyHz / stepHz)))] ?? Infinity;

const aboveLimit = (levels: LevelPrior, limitMps2: number): number =>
  Math.min(MOST_SURELY_SEEN, shareAbove(levels.normal, limitMps2) + shareAbove(levels.fault, limitMps2));

/** Probability that the origin is there and shows above the detection limit at an observed frequency. */
export const seenProbability = (origin: Origin, frequencyHz: number, limit: DetectionLimit): number =>
  aboveLimit(origin.levels, limitAt(limit, frequencyHz));

/** Log probability, at each point of the axis, that none of the origins shows (each taken as seen when it is). */
export const logAbsence = (origins: readonly Origin[], axis: ScaleAxis, limit: DetectionLimit): Float64Array => {
  const log = new Float64Array(axis.logPrior.length);
  for (const origin of origins) {
    for (let i = 0; i < log.length; i++) {
      const trueHz = origin.trueHz * Math.exp(scaleAt(axis, i));
      const image = trueHz > limit.samplingRateHz / 2;
      const seen = seenProbability(origin, observedHz(trueHz, limit.samplingRateHz), limit);
      log[i]! += Math.log1p(-(image ? IMAGE_SEEN * seen : seen));
    }
  }
  return log;
};
