/**
 * The noise of all axes as a matrix that changes slowly with frequency, and the spectrum measured against it.
 *
 * T(f) = tr(Σ(f)⁻¹ S(f)) / axes is 1 on average in noise, does not change when the sensor is turned or an axis is
 * scaled, and weighs each direction by how quiet it is. Σ comes from bands: the middle of the scatter, so that lines do
 * not raise it (trimmed mean for its shape, median for its height with the χ² correction).
 */
import { gammaTailQuantile } from './distributions.ts';
import { inverse, packedLength, trace, type Hermitian } from './hermitian.ts';
import type { Level } from './levels.ts';

/** Least band, natural bins, and band relative to frequency: wide against a line, narrow against the road's humps. */
const LEAST_BAND_BINS = 32;
const RELATIVE_BAND = 0.06;
/** Share of a band that shapes its matrix; the rest may be lines. */
const KEPT_SHARE = 0.8;

export interface Whitened {
  /** T at each bin. */
  readonly t: Float64Array;
  /** Independent powers behind a band's level, per band width, for the uncertainty of the level. */
  readonly bandSamples: Float64Array;
  /** Inverse noise matrix at a bin, packed. */
  readonly whitenerAt: (bin: number) => Hermitian;
}

interface Band {
  readonly centre: number;
  readonly samples: number;
  /** Inverse matrix over its own trace, and that trace. */
  readonly shape: Hermitian;
  readonly size: number;
}

/** Adjoining Hann bins are correlated: |ρ1|² = 4/9, |ρ2|² = 1/36. A mean over m natural bins is worth m/1.944. */
export const HANN_BIN_CORRELATION = 1 + 2 * (4 / 9 + 1 / 36);

const bandEdges = (level: Level, fromBin: number): number[] => {
  const edges = [fromBin];
  for (let k = fromBin; k < level.bins;) {
    const width = Math.max(LEAST_BAND_BINS * level.pad, RELATIVE_BAND * k);
    k = Math.round(k + width);
    // A stub at the end joins its neighbour.
    edges.push(level.bins - k < width / 2 ? level.bins : Math.min(k, level.bins));
    if (edges.at(-1) === level.bins) break;
  }
  return edges;
};

const weighted = (axes: number, coefficients: Hermitian, matrix: readonly Float64Array[], k: number): number => {
  let sum = 0;
  for (let q = 0; q < coefficients.length; q++) sum += (q < axes ? 1 : 2) * coefficients[q]! * matrix[q]![k]!;
  return sum;
};

/** Inverse noise matrix of the bins [from, to). */
const bandOf = (axes: number, level: Level, from: number, to: number): Band => {
  const count = to - from;
  const t = new Float64Array(count);
  const quadratics = packedLength(axes);
  // First against the mean power of each axis, then twice against the matrix of what was not loud.
  let whitener: Hermitian = new Float64Array(quadratics);
  for (let a = 0; a < axes; a++) {
    const own = level.matrix[a]!.slice(from, to).sort();
    whitener[a] = 1 / Math.max(own[count >> 1]!, Number.MIN_VALUE);
  }
  for (let pass = 0; pass < 2; pass++) {
    for (let i = 0; i < count; i++) t[i] = weighted(axes, whitener, level.matrix, from + i);
    const limit = t.slice().sort()[Math.floor(KEPT_SHARE * (count - 1))]!;
    const mean = new Float64Array(quadratics);
    let kept = 0;
    for (let i = 0; i < count; i++) {
      if (t[i]! > limit) continue;
      kept++;
      for (let q = 0; q < quadratics; q++) mean[q]! += level.matrix[q]![from + i]!;
    }
    // A dead axis must not make the matrix singular.
    const least = 1e-12 * Math.max(trace(axes, mean), Number.MIN_VALUE);
    for (let q = 0; q < quadratics; q++) mean[q] = (mean[q]! + (q < axes ? least : 0)) / Math.max(1, kept);
    whitener = inverse(axes, mean);
  }
  for (let i = 0; i < count; i++) t[i] = weighted(axes, whitener, level.matrix, from + i);
  const middle = t.slice().sort()[count >> 1]!;
  const shapeOfT = axes * level.averages;
  const expected = gammaTailQuantile(0.5, shapeOfT) / level.averages;
  const height = Math.max(middle, Number.MIN_VALUE) / expected;
  const size = trace(axes, whitener);
  return {
    centre: (from + to - 1) / 2,
    samples: count / level.pad / HANN_BIN_CORRELATION,
    shape: whitener.map((w) => w / size),
    size: size / height,
  };
};

/** The level's spectrum against its own noise. Bins below `fromBin` are left at zero. */
export const whiten = (axes: number, level: Level, fromBin: number): Whitened => {
  const edges = bandEdges(level, fromBin);
  const bands: Band[] = [];
  for (let i = 0; i + 1 < edges.length; i++) bands.push(bandOf(axes, level, edges[i]!, edges[i + 1]!));
  const whitenerBetween = (left: Band, right: Band, share: number, out: Hermitian): void => {
    // The height between two bands runs geometrically: spectra are straighter in decibels.
    const size = left.size * (right.size / left.size) ** share;
    for (let q = 0; q < out.length; q++) out[q] = size * (left.shape[q]! + share * (right.shape[q]! - left.shape[q]!));
  };
  const t = new Float64Array(level.bins);
  const bandSamples = new Float64Array(level.bins);
  const whitener = new Float64Array(packedLength(axes));
  const locate = (bin: number): { left: Band; right: Band; share: number } => {
    let i = 0;
    while (i < bands.length - 1 && bands[i + 1]!.centre < bin) i++;
    const left = bands[i]!;
    const right = bands[Math.min(i + 1, bands.length - 1)]!;
    const share = right === left ? 0 : Math.min(1, Math.max(0, (bin - left.centre) / (right.centre - left.centre)));
    return { left, right, share };
  };
  let i = 0;
  for (let k = fromBin; k < level.bins; k++) {
    while (i < bands.length - 2 && bands[i + 1]!.centre < k) i++;
    const left = bands[i]!;
    const right = bands[Math.min(i + 1, bands.length - 1)]!;
    const share = right === left ? 0 : Math.min(1, Math.max(0, (k - left.centre) / (right.centre - left.centre)));
    whitenerBetween(left, right, share, whitener);
    t[k] = weighted(axes, whitener, level.matrix, k) / axes;
    bandSamples[k] = left.samples;
  }
  const whitenerAt = (bin: number): Hermitian => {
    const { left, right, share } = locate(bin);
    const out = new Float64Array(packedLength(axes));
    whitenerBetween(left, right, share, out);
    return out;
  };
  return { t, bandSamples, whitenerAt };
};
