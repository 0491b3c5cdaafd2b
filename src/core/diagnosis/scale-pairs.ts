/** Sums over pairs of a road and an engine scale: all that the tie between them allows and the posterior does not rule out. */
import type { ScalePrior } from './scale-prior.ts';
import type { Ratios } from './scale-posterior.ts';

/** Pairs less likely than the best by more than this (in ln) are left out; all of them together are below 1e-4. */
const NEGLIGIBLE = 20;

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

/** Log posterior of a row of pairs (one road scale), into `row`; returns the range of engine points and the best. */
const fillRow = (
  row: Float64Array,
  r: number,
  band: Band,
  contested: readonly Ratios[],
  roadLog: Float64Array,
  engineLog: Float64Array,
): { from: number; to: number; best: number } => {
  const from = Math.max(0, band.first + r);
  const to = Math.min(engineLog.length, band.first + r + band.log.length);
  const shift = band.first + r;
  for (let e = from; e < to; e++) row[e] = roadLog[r]! + engineLog[e]! + band.log[e - shift]!;
  for (const tone of contested) {
    const road = tone.road[r]!;
    if (road < 1e-6) continue;
    // Both groups together are less than each alone says: log(1 + a + b) in place of log(1 + a) + log(1 + b).
    for (const e of tone.engineSpots) {
      if (e < from || e >= to) continue;
      const engine = tone.engine[e]!;
      row[e]! += Math.log1p(road + engine) - Math.log1p(road) - Math.log1p(engine);
    }
  }
  let best = -Infinity;
  for (let e = from; e < to; e++) if (row[e]! > best) best = row[e]!;
  return { from, to, best };
};

/**
 * Visits each row of pairs (one road scale) that matters, with the posterior weights of its pairs: `weights[e]` for
 * engine points from ≤ e < to. All weights add up to 1. The array is used again for the next row.
 * @returns the log of the sum before it was made 1
 */
export const forEachRow = (
  prior: ScalePrior,
  contested: readonly Ratios[],
  roadLog: Float64Array,
  engineLog: Float64Array,
  visit: (road: number, weights: Float64Array, from: number, to: number) => void,
): number => {
  const band = bandOf(prior);
  const row = new Float64Array(engineLog.length);
  const bound = maximum(engineLog) + maximum(band.log);
  // First the best pair and the sum, row by row from the likeliest on; rows that cannot matter end it.
  const order = Int32Array.from(roadLog.keys()).sort((a, b) => roadLog[b]! - roadLog[a]!);
  let best = -Infinity;
  let sum = 0;
  let rows = 0;
  const rowBest = new Float64Array(roadLog.length);
  for (const r of order) {
    if (roadLog[r]! + bound < best - NEGLIGIBLE) break;
    rows++;
    const { from, to, best: most } = fillRow(row, r, band, contested, roadLog, engineLog);
    rowBest[r] = most;
    if (most < best - NEGLIGIBLE) continue;
    if (most > best) {
      sum *= Math.exp(best - most);
      best = most;
    }
    for (let e = from; e < to; e++) if (row[e]! > best - NEGLIGIBLE) sum += Math.exp(row[e]! - best);
  }
  for (const r of order.subarray(0, rows)) {
    if (rowBest[r]! < best - NEGLIGIBLE) continue;
    const { from, to } = fillRow(row, r, band, contested, roadLog, engineLog);
    for (let e = from; e < to; e++) row[e] = row[e]! > best - NEGLIGIBLE ? Math.exp(row[e]! - best) / sum : 0;
    visit(r, row, from, to);
  }
  return best + Math.log(sum);
};
