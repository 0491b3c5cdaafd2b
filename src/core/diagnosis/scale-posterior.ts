/**
 * One speed explains all: the joint posterior of the road's and the engine's log scale, from every tone of a run and
 * from the lines that are missing, and with it each tone's origin probabilities.
 *
 * Likelihood at a pair of scales: Π over lines (1 − P(line there and above the detection limit)) × Π over tones
 * (background + Σ origins' densities), the densities of a line being raised by 1/(1 − that probability), since a line
 * that is seen is not also missing. (A marked point process with one tone at the most from a line.)
 */
import { totalBackground, type Background, type Support } from './intensity.ts';
import type { ScaleAxis, ScalePrior } from './scale-prior.ts';
import { scaleAt } from './scale-prior.ts';

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
  readonly road: { readonly mean: number; readonly sd: number };
  readonly engine: { readonly mean: number; readonly sd: number };
  /** Per tone: for each road support, then each engine support, the probability of being the origin. */
  readonly origins: readonly { readonly road: readonly number[]; readonly engine: readonly number[] }[];
  /** Log evidence of the run: the sum over the grid (for comparing assumptions about the run). */
  readonly logEvidence: number;
}

/** Rows and cells that are this much less likely (in ln) than the best are left out. */
const NEGLIGIBLE = 18;

const summed = (supports: readonly Support[], size: number): Float64Array => {
  const total = new Float64Array(size);
  for (const { first, values } of supports) for (let i = 0; i < values.length; i++) total[first + i]! += values[i]!;
  return total;
};

const momentsOf = (axis: ScaleAxis, weight: Float64Array): { mean: number; sd: number } => {
  let mean = 0;
  for (let i = 0; i < weight.length; i++) mean += weight[i]! * scaleAt(axis, i);
  let variance = 0;
  for (let i = 0; i < weight.length; i++) variance += weight[i]! * (scaleAt(axis, i) - mean) ** 2;
  return { mean, sd: Math.sqrt(variance + axis.step ** 2 / 12) };
};

/** A tone's total densities over both axes, with the stretch of the engine axis where they are not zero. */
interface Totals {
  readonly background: number;
  readonly road: Float64Array;
  readonly engine: Float64Array;
  readonly engineSpots: Int32Array;
}

const totalsOf = (tones: readonly ToneDensities[], prior: ScalePrior): readonly Totals[] =>
  tones.map((tone) => {
    const background = totalBackground(tone.background);
    const engine = summed(tone.engine, prior.engine.logPrior.length);
    const spots: number[] = [];
    for (let e = 0; e < engine.length; e++) if (engine[e]! > 1e-4 * background) spots.push(e);
    return {
      background,
      road: summed(tone.road, prior.road.logPrior.length),
      engine,
      engineSpots: Int32Array.from(spots),
    };
  });

const alone = (
  axis: ScaleAxis,
  absent: Float64Array,
  totals: readonly Totals[],
  side: 'road' | 'engine',
): Float64Array => {
  const log = axis.logPrior.map((p, i) => p + absent[i]!);
  for (const tone of totals) {
    const density = tone[side];
    for (let i = 0; i < log.length; i++) if (density[i]! > 0) log[i]! += Math.log1p(density[i]! / tone.background);
  }
  return log;
};

const maximum = (values: Float64Array): number => {
  let most = -Infinity;
  for (const v of values) if (v > most) most = v;
  return most;
};

/** Calls `visit` with each pair of scales that matters and its log posterior (up to a constant), row by row. */
const forEachCell = (
  prior: ScalePrior,
  totals: readonly Totals[],
  roadLog: Float64Array,
  engineLog: Float64Array,
  visit: (road: number, engine: number, log: number) => void,
): void => {
  const sizeRoad = roadLog.length;
  const sizeEngine = engineLog.length;
  const offset = prior.engine.start - prior.road.start;
  const tie = new Float64Array(sizeRoad + sizeEngine - 1);
  // Index engine − road + (sizeRoad − 1).
  if (prior.tie) {
    for (let k = 0; k < tie.length; k++) tie[k] = prior.tie(offset + (k - sizeRoad + 1) * prior.road.step);
  }
  const bestEngine = maximum(engineLog) + maximum(tie);
  const row = new Float64Array(sizeEngine);
  let best = -Infinity;
  // Rows from the likeliest on, so that the bound prunes early.
  const order = Array.from(roadLog.keys()).sort((a, b) => roadLog[b]! - roadLog[a]!);
  for (const r of order) {
    if (roadLog[r]! + bestEngine < best - NEGLIGIBLE) break;
    for (let e = 0; e < sizeEngine; e++) row[e] = engineLog[e]! + tie[e - r + sizeRoad - 1]!;
    for (const tone of totals) {
      const road = tone.road[r]! / tone.background;
      if (road < 1e-6) continue;
      for (const e of tone.engineSpots) {
        const engine = tone.engine[e]! / tone.background;
        row[e]! += Math.log1p(road + engine) - Math.log1p(road) - Math.log1p(engine);
      }
    }
    for (let e = 0; e < sizeEngine; e++) {
      const log = roadLog[r]! + row[e]!;
      if (log > best) best = log;
      if (log > best - NEGLIGIBLE) visit(r, e, log);
    }
  }
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
  const totals = totalsOf(tones, prior);
  const roadLog = alone(prior.road, absentRoad, totals, 'road');
  const engineLog = alone(prior.engine, absentEngine, totals, 'engine');
  const cells: { roads: number[]; engines: number[]; logs: number[] } = { roads: [], engines: [], logs: [] };
  forEachCell(prior, totals, roadLog, engineLog, (r, e, log) => {
    cells.roads.push(r);
    cells.engines.push(e);
    cells.logs.push(log);
  });
  const best = cells.logs.reduce((a, b) => Math.max(a, b), -Infinity);
  const weights = Float64Array.from(cells.logs, (log) => Math.exp(log - best));
  const sum = weights.reduce((a, b) => a + b, 0);
  const roadWeight = new Float64Array(roadLog.length);
  const engineWeight = new Float64Array(engineLog.length);
  // Σ over the other scale of weight ÷ total density, per tone: what an origin's own density is multiplied with.
  const roadInverse = totals.map(() => new Float64Array(roadLog.length));
  const engineInverse = totals.map(() => new Float64Array(engineLog.length));
  for (let c = 0; c < weights.length; c++) {
    const r = cells.roads[c]!;
    const e = cells.engines[c]!;
    const weight = weights[c]! / sum;
    roadWeight[r]! += weight;
    engineWeight[e]! += weight;
    for (let t = 0; t < totals.length; t++) {
      const { background, road, engine } = totals[t]!;
      const inverse = weight / (background + road[r]! + engine[e]!);
      roadInverse[t]![r]! += inverse;
      engineInverse[t]![e]! += inverse;
    }
  }
  const share = ({ first, values }: Support, inverse: Float64Array): number =>
    values.reduce((total, density, i) => total + density * inverse[first + i]!, 0);
  return {
    roadWeight,
    engineWeight,
    road: momentsOf(prior.road, roadWeight),
    engine: momentsOf(prior.engine, engineWeight),
    origins: tones.map((tone, t) => ({
      road: tone.road.map((support) => share(support, roadInverse[t]!)),
      engine: tone.engine.map((support) => share(support, engineInverse[t]!)),
    })),
    logEvidence: best + Math.log(sum) + totals.reduce((total, tone) => total + Math.log(tone.background), 0),
  };
};
