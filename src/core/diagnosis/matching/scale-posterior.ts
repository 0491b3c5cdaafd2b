/**
 * One speed explains all: the joint posterior of the road's and the engine's log scale, from every tone of a run and
 * from the lines that are missing, and with it each tone's origin probabilities.
 *
 * Likelihood at a pair of scales: Π over lines (1 − P(line there and above the detection limit)) × Π over tones
 * (background + Σ origins' densities), the densities of a line being raised by 1/(1 − that probability), since a line
 * that is seen is not also missing. (A marked point process with one tone at the most from a line.)
 */
import { totalBackground, type Background, type Support } from './intensity.ts';
import { sumPairs, type Ratios } from './scale-pairs.ts';
import { momentsOf, type Moments, type ScaleAxis, type ScalePrior } from '../origins/scale-prior.ts';

/** One tone's densities: what moves with neither scale, and the origins of each group. */
export interface ToneDensities {
  readonly background: Background;
  readonly road: readonly Support[];
  readonly engine: readonly Support[];
}

export interface ScalePosterior {
  /** Posterior weight on each point of the axis; adds up to 1. */
  readonly roadWeight: Float64Array;
  readonly engineWeight: Float64Array;
  readonly road: Moments;
  readonly engine: Moments;
  /** Per tone: for each road support, then each engine support, the probability of being the origin. */
  readonly origins: readonly { readonly road: readonly number[]; readonly engine: readonly number[] }[];
  /** Log evidence of the run: the sum over the grid (for comparing assumptions about the run). */
  readonly logEvidence: number;
}

/** Posteriors under several models on the same axes, weighted. Per-tone origins are those of the first. */
export const mixedPosterior = (
  prior: ScalePrior,
  models: readonly ScalePosterior[],
  shares: readonly number[],
): ScalePosterior => {
  const mix = (side: 'roadWeight' | 'engineWeight'): Float64Array =>
    models[0]![side].map((_, i) => models.reduce((sum, model, m) => sum + shares[m]! * model[side][i]!, 0));
  const roadWeight = mix('roadWeight');
  const engineWeight = mix('engineWeight');
  return {
    ...models[0]!,
    roadWeight,
    engineWeight,
    road: momentsOf(prior.road, roadWeight),
    engine: momentsOf(prior.engine, engineWeight),
  };
};

/** An origin this much below the background moves nothing. */
const WORTH_COUNTING = 1e-5;

const summed = (supports: readonly Support[], size: number, background: number): Float64Array => {
  const total = new Float64Array(size);
  for (const { first, values } of supports) {
    for (let i = 0; i < values.length; i++) total[first + i]! += values[i]! / background;
  }
  return total;
};

const ratiosOf = (tone: ToneDensities, prior: ScalePrior): Ratios => {
  const background = totalBackground(tone.background);
  const engine = summed(tone.engine, prior.engine.logPrior.length, background);
  const engineSpots: number[] = [];
  for (let e = 0; e < engine.length; e++) if (engine[e]! > WORTH_COUNTING) engineSpots.push(e);
  return { road: summed(tone.road, prior.road.logPrior.length, background), engine, engineSpots };
};

/** Log of prior × absence × tones along one axis, the other group left out. */
const alone = (
  axis: ScaleAxis,
  absent: Float64Array,
  ratios: readonly Ratios[],
  side: 'road' | 'engine',
): Float64Array => {
  const log = axis.logPrior.map((p, i) => p + absent[i]!);
  for (const tone of ratios) {
    const ratio = tone[side];
    for (let i = 0; i < log.length; i++) if (ratio[i]! > 0) log[i]! += Math.log1p(ratio[i]!);
  }
  return log;
};

const share = ({ first, values }: Support, inverse: Float64Array, background: number): number => {
  let total = 0;
  for (let i = 0; i < values.length; i++) total += values[i]! * inverse[first + i]!;
  return total / background;
};

/**
 * @param absentRoad log probability, at each point of the road axis, that all road lines stay below the detection limit
 * @param absentEngine the same for the engine axis
 */
export const scalePosterior = (
  prior: ScalePrior,
  tones: readonly ToneDensities[],
  absentRoad: Float64Array,
  absentEngine: Float64Array,
): ScalePosterior => {
  const ratios = tones.map((tone) => ratiosOf(tone, prior));
  const roadLog = alone(prior.road, absentRoad, ratios, 'road');
  const engineLog = alone(prior.engine, absentEngine, ratios, 'engine');
  // Tones that both groups reach need the pairs themselves; for the others one axis at a time is enough.
  const both = ratios.filter(
    (tone) => tone.engineSpots.length > 0 && tone.road.some((ratio) => ratio > WORTH_COUNTING),
  );
  const sums = sumPairs(prior, both, roadLog, engineLog);
  const { sum } = sums;
  const roadWeight = sums.road.map((weight) => weight / sum);
  const engineWeight = sums.engine.map((weight) => weight / sum);
  const contested = new Map(sums.contested.map((one) => [one.ratios, one]));
  const origins = tones.map((tone, t) => {
    const own = ratios[t]!;
    const pairs = contested.get(own);
    const inverseRoad =
      pairs?.inverseRoad.map((weight) => weight / sum) ?? roadWeight.map((weight, i) => weight / (1 + own.road[i]!));
    const inverseEngine =
      pairs?.inverseEngine.map((weight) => weight / sum) ??
      engineWeight.map((weight, i) => weight / (1 + own.engine[i]!));
    const background = totalBackground(tone.background);
    return {
      road: tone.road.map((support) => share(support, inverseRoad, background)),
      engine: tone.engine.map((support) => share(support, inverseEngine, background)),
    };
  });
  const backgrounds = tones.reduce((sum, tone) => sum + Math.log(totalBackground(tone.background)), 0);
  return {
    roadWeight,
    engineWeight,
    road: momentsOf(prior.road, roadWeight),
    engine: momentsOf(prior.engine, engineWeight),
    origins,
    logEvidence: sums.logUnit + Math.log(sum) + backgrounds,
  };
};
