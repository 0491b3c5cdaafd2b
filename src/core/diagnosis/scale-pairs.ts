/** Sums over pairs of a road and an engine scale: all that the tie between them allows and the posterior does not rule out. */
import type { ScalePrior } from './scale-prior.ts';
import type { Ratios } from './scale-posterior.ts';

/** Rows whose pairs are each less likely than this share of the sum so far are left out. */
const NEGLIGIBLE = 1e-11;

interface Band {
  /** Index of the engine axis that belongs to gap `from` at road index 0. */
  readonly first: number;
  readonly log: Float64Array;
}

/** The tie tabulated over whole steps; without one every pair is as good. */
const bandOf = (prior: ScalePrior): Band => {
  const { road, engine, tie } = prior;
  const widest = road.logPrior.length + engine.logPrior.length;
  const offset = (road.start - engine.start) / road.step;
  if (!tie) return { first: -road.logPrior.length, log: new Float64Array(2 * widest) };
  const first = Math.max(-widest, Math.ceil(offset + tie.from / road.step - 1e-6));
  const last = Math.min(widest, Math.floor(offset + tie.to / road.step + 1e-6));
  const log = Float64Array.from({ length: Math.max(0, last - first + 1) }, (_, k) =>
    tie.logDensity((first + k - offset) * road.step),
  );
  return { first, log };
};

const maximum = (values: Float64Array): number => {
  let most = -Infinity;
  for (const v of values) if (v > most) most = v;
  return most;
};

/**
 * Greatest of `values` in each of `count` windows of the given length, the k-th from index first + k on; what lies
 * outside the values is 0. (Two running maxima a block: M. van Herk, Pattern Recognition Letters 13(7), 1992.)
 */
const windowMaxima = (values: Float64Array, first: number, length: number, count: number): Float64Array => {
  const size = count + length;
  const at = (i: number): number => values[first + i] ?? 0;
  const forward = new Float64Array(size);
  const backward = new Float64Array(size);
  for (let i = 0; i < size; i++) forward[i] = i % length === 0 ? at(i) : Math.max(forward[i - 1]!, at(i));
  for (let i = size - 1; i >= 0; i--) {
    backward[i] = (i + 1) % length === 0 || i === size - 1 ? at(i) : Math.max(backward[i + 1]!, at(i));
  }
  return Float64Array.from({ length: count }, (_, k) => Math.max(backward[k]!, forward[k + length - 1]!));
};

/** exp of logs less their greatest, so that nothing overflows. */
const relativeTo = (most: number, logs: Float64Array): Float64Array => logs.map((log) => Math.exp(log - most));

/** Posterior of a row of pairs (one road scale), up to a factor, into `row`; returns the range of engine points. */
const fillRow = (
  row: Float64Array,
  r: number,
  road: number,
  engine: Float64Array,
  band: Band,
  tie: Float64Array,
  contested: readonly Ratios[],
): { from: number; to: number } => {
  const shift = band.first + r;
  const from = Math.max(0, shift);
  const to = Math.min(engine.length, shift + tie.length);
  for (let e = from; e < to; e++) row[e] = road * engine[e]! * tie[e - shift]!;
  for (const tone of contested) {
    const a = tone.road[r]!;
    if (a < 1e-6) continue;
    // Both groups together are less than each alone says: 1 + a + b in place of (1 + a)·(1 + b).
    for (const e of tone.engineSpots) {
      if (e < from) continue;
      if (e >= to) break;
      const b = tone.engine[e]!;
      row[e]! *= (1 + a + b) / ((1 + a) * (1 + b));
    }
  }
  return { from, to };
};

/**
 * Visits each row of pairs (one road scale) that matters, with the posterior weights of its pairs: `weights[e]` for
 * engine points from ≤ e < to, all up to one common factor. The array is used again for the next row.
 * @param visit gives back the sum of the row's weights
 * @returns the sum of all weights, and the log of what a weight of 1 stands for
 */
export const forEachRow = (
  prior: ScalePrior,
  contested: readonly Ratios[],
  roadLog: Float64Array,
  engineLog: Float64Array,
  visit: (road: number, weights: Float64Array, from: number, to: number) => number,
): { readonly sum: number; readonly logUnit: number } => {
  const band = bandOf(prior);
  const logMost = [maximum(roadLog), maximum(engineLog), maximum(band.log)] as const;
  const road = relativeTo(logMost[0], roadLog);
  const engine = relativeTo(logMost[1], engineLog);
  const tie = relativeTo(logMost[2], band.log);
  const row = new Float64Array(engineLog.length);
  const within = windowMaxima(engine, band.first, tie.length, road.length);
  // From the row on that can hold most: what follows a row that cannot matter cannot either.
  const bound = road.map((weight, r) => weight * within[r]!);
  const order = Int32Array.from(road.keys()).sort((a, b) => bound[b]! - bound[a]!);
  let sum = 0;
  for (const r of order) {
    if (!(bound[r]! > NEGLIGIBLE * sum)) break;
    const { from, to } = fillRow(row, r, road[r]!, engine, band, tie, contested);
    sum += visit(r, row, from, to);
  }
  return { sum, logUnit: logMost[0] + logMost[1] + logMost[2] };
};
