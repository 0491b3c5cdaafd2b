/** What the absence of a line says: how likely it was to be seen had the speed scale been so. */
import { shareAbove, type LevelPrior } from './levels.ts';
import { aliasOfHz } from '../../vehicle/alias.ts';
import type { Origin } from './origin.ts';
import { scaleAt, type ScaleAxis } from './scale-prior.ts';

/** The least 0-to-peak amplitude that would have been found, over frequency; infinite where nothing was looked for. */
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

/** Probability that the origin is there and shows above the detection limit, by itself or as the image of `trueHz`. */
export const seenProbability = (origin: Origin, trueHz: number, limit: DetectionLimit): number => {
  const isImage = trueHz > limit.samplingRateHz / 2;
  const shownHz = aliasOfHz(trueHz, limit.samplingRateHz);
  return (isImage ? IMAGE_SEEN : 1) * aboveLimit(origin.levels, limitAt(limit, shownHz));
};

/** The limit is smooth over frequency: it is looked up at every so many points of the axis, and joined by lines. */
const STRIDE = 16;

const logUnseen = (origin: Origin, scale: number, limit: DetectionLimit): number =>
  Math.log1p(-seenProbability(origin, origin.trueHz * Math.exp(scale), limit));

/** Log probability, at each point of the axis, that none of the origins shows (each taken as seen when it is). */
export const logAbsence = (origins: readonly Origin[], axis: ScaleAxis, limit: DetectionLimit): Float64Array => {
  const size = axis.logPrior.length;
  const log = new Float64Array(size);
  const at = (index: number): number =>
    origins.reduce((sum, origin) => sum + logUnseen(origin, scaleAt(axis, index), limit), 0);
  log[0] = at(0);
  for (let i = 0; i < size - 1; i += STRIDE) {
    const next = Math.min(size - 1, i + STRIDE);
    const after = at(next);
    for (let j = i + 1; j <= next; j++) log[j] = log[i]! + ((after - log[i]!) * (j - i)) / (next - i);
  }
  return log;
};
