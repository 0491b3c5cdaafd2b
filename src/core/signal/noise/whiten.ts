/**
 * The spectrum of all axes measured against its own noise: T(f) = tr(Σ(f)⁻¹ S(f)) / axes is 1 on average in noise,
 * hardly changes when the sensor is turned or an axis is scaled (only as far as other bins then count as noise), and
 * weighs each direction by how quiet it is.
 */
import { packedLength, type Hermitian } from '../numeric/hermitian.ts';
import type { Level } from './levels.ts';
import { noiseBands, type Band } from './noise-bands.ts';

export interface Whitened {
  /** T at each bin; zero below the first bin asked for. */
  readonly t: Float64Array;
  /** Independent averages behind a bin. */
  readonly averages: number;
  /** Independent powers behind the noise level at each bin. */
  readonly bandSamples: Float64Array;
  /** Inverse noise matrix at a bin, packed. */
  readonly whitenerAt: (bin: number) => Hermitian;
}

/** Between two bands the height runs geometrically (spectra are straighter in decibels), the shape linearly. */
const between = (left: Band, right: Band, bin: number, out: Hermitian): void => {
  const share = right === left ? 0 : Math.min(1, Math.max(0, (bin - left.centre) / (right.centre - left.centre)));
  const size = left.size * (right.size / left.size) ** share;
  for (let q = 0; q < out.length; q++) out[q] = size * (left.shape[q]! + share * (right.shape[q]! - left.shape[q]!));
};

/** The level's spectrum against its own noise. */
export const whiten = (axes: number, level: Level, fromBin: number): Whitened => {
  const { bands, averages } = noiseBands(axes, level, fromBin);
  const t = new Float64Array(level.bins);
  const bandSamples = new Float64Array(level.bins);
  // From band to band, entry by entry: the same as a whitener for each bin, see `between`, without making one.
  for (let i = 0; i < Math.max(1, bands.length - 1); i++) {
    const left = bands[i]!;
    const right = bands[i + 1] ?? left;
    const from = i === 0 ? fromBin : Math.max(fromBin, Math.ceil(left.centre));
    const to = i >= bands.length - 2 ? level.bins : Math.min(level.bins, Math.ceil(right.centre));
    const width = right.centre - left.centre;
    const growth = Math.log(right.size / left.size);
    bandSamples.fill(left.samples, from, to);
    for (let q = 0; q < left.shape.length; q++) {
      const entries = level.matrix[q]!;
      const factor = (q < axes ? 1 : 2) / axes;
      const start = factor * left.shape[q]!;
      const rise = width > 0 ? (factor * (right.shape[q]! - left.shape[q]!)) / width : 0;
      for (let k = from; k < to; k++) {
        const off = Math.min(width, Math.max(0, k - left.centre));
        t[k]! += (start + rise * off) * entries[k]!;
      }
    }
    const logSize = Math.log(left.size);
    const perBin = width > 0 ? growth / width : 0;
    for (let k = from; k < to; k++) t[k]! *= Math.exp(logSize + perBin * Math.min(width, Math.max(0, k - left.centre)));
  }
  const whitenerAt = (bin: number): Hermitian => {
    let b = 0;
    while (b < bands.length - 2 && bands[b + 1]!.centre < bin) b++;
    const out = new Float64Array(packedLength(axes));
    between(bands[b]!, bands[b + 1] ?? bands[b]!, bin, out);
    return out;
  };
  return { t, averages, bandSamples, whitenerAt };
};
