/** Sums over pairs of a road and an engine scale: all that the tie between them allows and the posterior does not rule out. */
import type { ScalePrior } from '../origins/scale-prior.ts';
import { tiedByTransform, tiedOneByOne, untied, type Tie, type TiedSums } from './tied-sums.ts';

/** A tone's origins' densities over both axes, each over its background. */
export interface Ratios {
  readonly road: Float64Array;
  readonly engine: Float64Array;
  /** Points of the engine axis where that is worth counting. */
  readonly engineSpots: readonly number[];
}

/** A tone that both groups reach, with the sums of weight ÷ (1 + its ratios), what an origin's own ratio is multiplied with. */
export interface Contested {
  readonly ratios: Ratios;
  readonly inverseRoad: Float64Array;
  /** Where the tone has spots; 0 elsewhere. */
  readonly inverseEngine: Float64Array;
}

export interface PairSums {
  readonly road: Float64Array;
  readonly engine: Float64Array;
  readonly contested: readonly Contested[];
  /** Of all weights. */
  readonly sum: number;
  /** Log of what a weight of 1 stands for. */
  readonly logUnit: number;
}

/** A road ratio below this does not contest a tone with the engine. */
const CONTESTS = 1e-6;

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

/** exp of logs less their greatest, so that nothing overflows. */
const relativeTo = (most: number, logs: Float64Array): Float64Array => logs.map((log) => Math.exp(log - most));

/** Road points where at least one tone is contested. */
const contestedRows = (tones: readonly Contested[], count: number): Uint8Array => {
  const rows = new Uint8Array(count);
  for (const { ratios } of tones) ratios.road.forEach((a, r) => a >= CONTESTS && (rows[r] = 1));
  return rows;
};

/** Pairs up to here are summed term by term. */
const MOST_ONE_BY_ONE = 3e5;
/** The sums by transform are taken where their rounding is at most this share of the whole. */
const ROUNDING = 1e-7;
const EPSILON = 1e-15;

const euclidean = (values: Float64Array): number => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0));
const total = (values: Float64Array): number => values.reduce((sum, v) => sum + v, 0);

/**
 * Posterior weights of pairs, summed over each axis, up to one common factor.
 *
 * A pair's weight is a product over the axes and the tie but where a tone is contested: at engine spots in contested
 * rows. Only these pairs are gone through one by one.
 */
export const sumPairs = (
  prior: ScalePrior,
  tones: readonly Ratios[],
  roadLog: Float64Array,
  engineLog: Float64Array,
): PairSums => {
  const band = bandOf(prior);
  const logMost = [maximum(roadLog), maximum(engineLog), maximum(band.log)] as const;
  const road = relativeTo(logMost[0], roadLog);
  const engine = relativeTo(logMost[1], engineLog);
  const tie: Tie = { first: band.first, weight: relativeTo(logMost[2], band.log) };
  const logUnit = logMost[0] + logMost[1] + logMost[2];
  const sumsBy = (sums: TiedSums): PairSums => ({ ...sumBy(sums, tie, tones, road, engine), logUnit });
  if (!prior.tie) return sumsBy(untied(road.length, engine.length));
  if (road.length * Math.min(engine.length, tie.weight.length) > MOST_ONE_BY_ONE) {
    const fast = sumsBy(tiedByTransform(tie, road.length, engine.length));
    const lengths = Math.max(total(road) * euclidean(engine), total(engine) * euclidean(road));
    if (EPSILON * lengths * euclidean(tie.weight) < ROUNDING * fast.sum) return fast;
  }
  return sumsBy(tiedOneByOne(tie, road.length, engine.length));
};

const sumBy = (
  { overEngine, overRoad }: TiedSums,
  tie: Tie,
  tones: readonly Ratios[],
  road: Float64Array,
  engine: Float64Array,
): Omit<PairSums, 'logUnit'> => {
  const contested = tones.map((ratios): Contested => ({
    ratios,
    inverseRoad: new Float64Array(road.length),
    inverseEngine: new Float64Array(engine.length),
  }));
  const isContested = contestedRows(contested, road.length);
  const spots = Int32Array.from(new Set(tones.flatMap((tone) => tone.engineSpots))).sort();
  const offSpots = engine.slice();
  for (const e of spots) offSpots[e] = 0;
  const [all, off] = overEngine(engine, offSpots);
  const [plain, besides] = overRoad(
    road.map((weight, r) => (isContested[r] ? 0 : weight)),
    road.map((weight, r) => (isContested[r] ? weight : 0)),
  );
  const rest = road.map((weight, r) => weight * (isContested[r] ? off[r]! : all[r]!));
  // Contested tones only lessen a pair.
  const most = road.map((weight, r) => (isContested[r] ? weight * all[r]! : 0));
  const single = singlePairs(tie, contested, most, spots, road, engine, rest);
  for (const { ratios, inverseEngine } of contested) {
    for (const e of ratios.engineSpots) inverseEngine[e]! += (engine[e]! * plain[e]!) / (1 + ratios.engine[e]!);
  }
  const roadSum = rest.map((weight, r) => weight + single.road[r]!);
  const engineSum = engine.map((weight, e) => weight * plain[e]! + offSpots[e]! * besides[e]! + single.engine[e]!);
  return { road: roadSum, engine: engineSum, contested, sum: total(roadSum) };
};

/** Contested rows that together weigh no more than this share of the whole are left out. */
const NEGLIGIBLE = 1e-9;

/** Indices from `from` to before `to`. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** First index of a sorted list whose value is not below. */
const firstFrom = (sorted: Int32Array, value: number): number => {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** A contested tone's engine ratios at the spots, and the weight of pairs in rows where the road contests it. */
interface OnSpots {
  readonly tone: Contested;
  readonly ratios: Float64Array;
  readonly inContestedRows: Float64Array;
}

/**
 * The pairs of contested rows at the engine spots, one by one: their sums over each axis, and each tone's inverses.
 * Both groups together are less than each alone says: 1 + a + b in place of (1 + a)·(1 + b). Where a tone's road ratio
 * is too small to contest it, both are 1 + b: such a tone changes no pair of the row.
 * @param most what the pairs of each contested row weigh at the most; 0 for the other rows
 * @param rest sums of the rows' other pairs
 */
const singlePairs = (
  { first, weight }: Tie,
  contested: readonly Contested[],
  most: Float64Array,
  spots: Int32Array,
  road: Float64Array,
  engine: Float64Array,
  rest: Float64Array,
): { readonly road: Float64Array; readonly engine: Float64Array } => {
  const sums = { road: new Float64Array(road.length), engine: new Float64Array(engine.length) };
  const pairs = new Float64Array(spots.length);
  const tones = contested.map((tone): OnSpots => ({
    tone,
    ratios: Float64Array.from(spots, (e) => tone.ratios.engine[e]!),
    inContestedRows: new Float64Array(spots.length),
  }));
  const rows = Array.from(most.keys()).filter((r) => most[r]! > 0);
  rows.sort((a, b) => most[b]! - most[a]!);
  let sum = total(rest);
  let left = total(most);
  for (const r of rows) {
    if (left <= NEGLIGIBLE * sum) break;
    left -= most[r]!;
    const here = tones.filter(({ tone }) => tone.ratios.road[r]! >= CONTESTS);
    const tied: Stretch = { from: firstFrom(spots, first + r), to: firstFrom(spots, first + r + weight.length) };
    for (let k = tied.from; k < tied.to; k++) pairs[k] = road[r]! * engine[spots[k]!]! * weight[spots[k]! - first - r]!;
    for (const { tone, ratios } of here) {
      const a = tone.ratios.road[r]!;
      for (let k = tied.from; k < tied.to; k++) pairs[k]! *= (1 + a + ratios[k]!) / ((1 + a) * (1 + ratios[k]!));
    }
    for (let k = tied.from; k < tied.to; k++) {
      sums.road[r]! += pairs[k]!;
      sums.engine[spots[k]!]! += pairs[k]!;
    }
    sum += sums.road[r]!;
    for (const { inverseRoad } of contested) inverseRoad[r] = rest[r]! + sums.road[r]!;
    for (const { tone, ratios, inContestedRows } of here) {
      tone.inverseRoad[r] = addInverses(tone, pairs, spots, tied, ratios, tone.ratios.road[r]!);
      tone.inverseRoad[r]! += rest[r]! / (1 + tone.ratios.road[r]!);
      for (let k = tied.from; k < tied.to; k++) inContestedRows[k]! += pairs[k]!;
    }
  }
  for (const { tone, ratios, inContestedRows } of tones) {
    spots.forEach((e, k) => {
      tone.inverseEngine[e]! += Math.max(0, sums.engine[e]! - inContestedRows[k]!) / (1 + ratios[k]!);
    });
  }
  return sums;
};

/** One row's pairs ÷ (1 + road ratio + engine ratio), added to the tone's sums by engine. @returns their sum */
const addInverses = (
  { inverseEngine }: Contested,
  pairs: Float64Array,
  spots: Int32Array,
  { from, to }: Stretch,
  ratios: Float64Array,
  roadRatio: number,
): number => {
  let sum = 0;
  for (let k = from; k < to; k++) {
    const part = pairs[k]! / (1 + roadRatio + ratios[k]!);
    inverseEngine[spots[k]!]! += part;
    sum += part;
  }
  return sum;
};
