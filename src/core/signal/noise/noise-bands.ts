/** The noise matrix of all axes in bands of a spectrum: the middle of the scatter, so that lines do not raise it. */
import { gammaTailQuantile } from '../numeric/distributions.ts';
import { inverse, packedLength, trace, type Hermitian } from '../numeric/hermitian.ts';
import type { Level } from './levels.ts';
import { nthSmallest } from '../numeric/statistics.ts';

/** Least band, natural bins, and band relative to frequency: wide against a line, narrow against the road's humps. */
const LEAST_BAND_BINS = 32;
const RELATIVE_BAND = 0.06;
/** Share of a band that shapes its matrix; the rest may be lines. */
const KEPT_SHARE = 0.8;
/** Share of a band whose height, over the median, shows how much the powers scatter. */
const UPPER_SHARE = 0.9;
/** Averages this much short of theory are believed to be short; less is the uncertainty of the estimate. */
const BELIEVED_SHORTFALL = 0.85;

export interface Band {
  /** Middle bin. */
  readonly centre: number;
  /** Independent powers in it. */
  readonly samples: number;
  /** Inverse noise matrix over its own trace, and that trace. */
  readonly shape: Hermitian;
  readonly size: number;
}

export interface NoiseBands {
  readonly bands: readonly Band[];
  /** Independent averages as the scatter of the spectrum itself shows them; never more than the level's. */
  readonly averages: number;
}

/** First bins of the bands, and the end of the last. */
const bandEdges = (level: Level, fromBin: number): number[] => {
  const edges = [fromBin];
  let k = fromBin;
  while (k < level.bins) {
    const width = Math.max(LEAST_BAND_BINS * level.pad, RELATIVE_BAND * k);
    k = Math.round(k + width);
    // A stub at the end joins its neighbour.
    if (level.bins - k < width / 2) k = level.bins;
    edges.push(k);
  }
  return edges;
};

/** tr(W·S) at each bin of [from, to) into t. */
const weigh = (axes: number, w: Hermitian, matrix: readonly Float64Array[], from: number, t: Float64Array): void => {
  t.fill(0);
  for (let q = 0; q < w.length; q++) {
    const entries = matrix[q]!;
    const c = (q < axes ? 1 : 2) * w[q]!;
    for (let i = 0; i < t.length; i++) t[i]! += c * entries[from + i]!;
  }
};

interface RawBand extends Omit<Band, 'size'> {
  readonly trace: number;
  readonly median: number;
  /** Upper quantile over median. */
  readonly spread: number;
}

const rawBand = (axes: number, level: Level, from: number, to: number): RawBand => {
  const count = to - from;
  const t = new Float64Array(count);
  const { matrix } = level;
  // First against the median power of each axis, then twice against the matrix of what was not loud.
  let whitener: Hermitian = new Float64Array(packedLength(axes));
  for (let a = 0; a < axes; a++) {
    whitener[a] = 1 / Math.max(nthSmallest(matrix[a]!.slice(from, to), count >> 1), Number.MIN_VALUE);
  }
  for (let pass = 0; pass < 2; pass++) {
    weigh(axes, whitener, matrix, from, t);
    const limit = nthSmallest(t.slice(), Math.floor(KEPT_SHARE * (count - 1)));
    const mean = new Float64Array(whitener.length);
    for (let q = 0; q < mean.length; q++) {
      const entries = matrix[q]!;
      let sum = 0;
      for (let i = 0; i < count; i++) if (t[i]! <= limit) sum += entries[from + i]!;
      mean[q] = sum;
    }
    // A dead axis must not make the matrix singular.
    const least = 1e-12 * Math.max(trace(axes, mean), Number.MIN_VALUE);
    for (let q = 0; q < axes; q++) mean[q]! += least;
    whitener = inverse(axes, mean);
  }
  weigh(axes, whitener, matrix, from, t);
  const median = Math.max(nthSmallest(t, count >> 1), Number.MIN_VALUE);
  const size = trace(axes, whitener);
  return {
    centre: (from + to - 1) / 2,
    samples: count / level.binCorrelation,
    shape: whitener.map((w) => w / size),
    trace: size,
    median,
    spread: nthSmallest(t, Math.floor(UPPER_SHARE * (count - 1))) / median,
  };
};

/** Averages that would scatter as much as seen: the gamma shape whose upper quantile over median is the spread. */
const averagesFromSpread = (axes: number, spread: number, most: number): number => {
  const spreadOf = (averages: number): number =>
    gammaTailQuantile(1 - UPPER_SHARE, axes * averages) / gammaTailQuantile(0.5, axes * averages);
  if (spread <= spreadOf(BELIEVED_SHORTFALL * most)) return most;
  let low = 0.05;
  let high = most;
  for (let i = 0; i < 20; i++) {
    const mid = Math.sqrt(low * high);
    if (spreadOf(mid) > spread) low = mid;
    else high = mid;
  }
  return high;
};

export const noiseBands = (axes: number, level: Level, fromBin: number): NoiseBands => {
  const edges = bandEdges(level, fromBin);
  const raw: RawBand[] = [];
  for (let i = 0; i + 1 < edges.length; i++) raw.push(rawBand(axes, level, edges[i]!, edges[i + 1]!));
  // The median over the bands: bands with lines or humps in them scatter more and say nothing of the averages.
  const spreads = raw.map((band) => band.spread).sort((a, b) => a - b);
  const averages = averagesFromSpread(axes, spreads[spreads.length >> 1] ?? 1, level.averages);
  // Median of tr(Σ⁻¹S) in noise; dividing by it sets the height.
  const expected = gammaTailQuantile(0.5, axes * averages) / averages;
  const bands = raw.map((band) => ({ ...band, size: (band.trace * expected) / band.median }));
  return { bands, averages };
};
