/**
 * The spectrum of all axes measured against its own noise: T(f) = tr(Σ(f)⁻¹ S(f)) / axes is 1 on average in noise, does
 * not change when the sensor is turned or an axis is scaled, and weighs each direction by how quiet it is.
 */
import { packedLength, type Hermitian } from './hermitian.ts';
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
  const whitener = new Float64Array(packedLength(axes));
  const factors = Float64Array.from(whitener, (_, q) => (q < axes ? 1 : 2) / axes);
  let i = 0;
  for (let k = fromBin; k < level.bins; k++) {
    while (i < bands.length - 2 && bands[i + 1]!.centre < k) i++;
    const left = bands[i]!;
    between(left, bands[i + 1] ?? left, k, whitener);
    let sum = 0;
    for (let q = 0; q < whitener.length; q++) sum += factors[q]! * whitener[q]! * level.matrix[q]![k]!;
    t[k] = sum;
    bandSamples[k] = left.samples;
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
