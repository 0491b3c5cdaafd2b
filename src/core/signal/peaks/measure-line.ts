/**
 * Frequency, amplitude and direction of a line that has been found, with uncertainties that own up to drift: each block
 * is fitted by itself and the fit is tried on eight parts of it.
 */
import {
  inverse,
  outer,
  packedLength,
  trace,
  traceOfProduct,
  type ComplexVector,
  type Hermitian,
} from '../numeric/hermitian.ts';
import { amplitudeAt, powerAt } from './band-power.ts';
import { frequencyWander, partAmplitudes, type PartAmplitude } from './phase-steadiness.ts';
import { fitTone, greatest, subtractTone, type ToneFit } from './tone-fit.ts';
import { sliceBand, type Band, type Zoom } from './zoom.ts';

export interface MeasuredLine {
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  /** Mean of |a|² over time per axis with the noise's share taken off, (m/s²)²: packed outer product, 0-to-peak. */
  readonly power: Hermitian;
  /** Standard deviation of that by noise alone, where there is no line, (m/s²)²: packed as the power. */
  readonly noise: Hermitian;
  readonly amplitudeSdMps2: number;
  /** Wander of its frequency that its phases leave room for, Hz (rms); absent of a line that was read in slices. */
  readonly wanderHz?: number;
}

/** Least half width of the band in which a line is measured, and least in natural bins, for its noise. */
const BAND_HZ = 0.6;
const BAND_BINS = 44;

export const bandHalfWidth = (zoom: Zoom): number => Math.max(BAND_HZ, BAND_BINS / zoom.longestS);

/**
 * Misfit of a steady line over the parts of a block beyond what chance makes of it: χ² over its degrees of freedom, less 1
 * and one standard deviation; 0 for a steady line.
 */
const unsteadiness = (parts: readonly PartAmplitude[], fit: ToneFit, axes: number, whitener: Hermitian): number => {
  let square = 0;
  for (const { amplitude: a, lengthS } of parts) {
    const off: ComplexVector = {
      re: a.re.map((v, i) => v - fit.amplitude.re[i]!),
      im: a.im.map((v, i) => v - fit.amplitude.im[i]!),
    };
    square += traceOfProduct(axes, whitener, outer(axes, off)) * lengthS;
  }
  const used = parts.length;
  // Each whitened complex deviation adds one per axis; the fit itself takes about two of the parts.
  if (used <= 2) return 0;
  const pairs = axes * (used - 2);
  return Math.max(0, square / pairs - 1 - Math.sqrt(2 / pairs));
};

const addTo = (sum: Hermitian, add: Hermitian, factor: number): void => {
  for (let q = 0; q < sum.length; q++) sum[q]! += factor * add[q]!;
};

/** Fit of the lines in one block's band about the first of them, the others taken out in turn. */
const fitAmong = (band: Band, frequencies: readonly number[], weights: Hermitian): ToneFit => {
  const bin = 1 / band.lengthS;
  const inside = frequencies.filter((f) => Math.abs(f - band.centreHz) < band.flatHz);
  let fits: (ToneFit | null)[] = inside.map(() => null);
  const rounds = inside.length > 1 ? 3 : 1;
  for (let round = 0; round < rounds; round++) {
    fits = inside.map((f, i) => {
      const own = fits[i];
      if (own) subtractTone(band, own, 1);
      const others = inside.filter((_, j) => j !== i);
      // A near neighbour must not be mistaken for the line itself.
      const nearest = Math.min(...others.map((other) => Math.abs(other - f)), 4 * bin);
      const fit = fitTone(band, own?.frequencyHz ?? f, weights, others, Math.min(1, (0.4 * nearest) / bin));
      subtractTone(band, fit);
      fits[i] = fit;
      return fit;
    });
  }
  fits.forEach((fit) => fit && subtractTone(band, fit, 1));
  return fits[0]!;
};

/**
 * A line that is steady over a whole block.
 * @param others lines near enough to share the band; they are fitted along
 * @param weights inverse noise matrix about the line, up to a factor
 */
export const measureSteadyLine = (
  zoom: Zoom,
  frequencyHz: number,
  others: readonly number[],
  weights: Hermitian,
): MeasuredLine => {
  const axes = zoom.axisCount;
  const power = new Float64Array(packedLength(axes));
  const noise = new Float64Array(packedLength(axes));
  let precision = 0;
  let mean = 0;
  let noiseTrace = 0;
  let length = 0;
  let wanderHz = 0;
  const found: { f: number; variance: number }[] = [];
  for (let b = 0; b < zoom.blocks; b++) {
    const band = zoom.band(b, frequencyHz, bandHalfWidth(zoom));
    const fit = fitAmong(band, [frequencyHz, ...others], weights);
    const whitener = inverse(axes, fit.noise);
    const parts = partAmplitudes(band, fit.frequencyHz);
    const misfit = unsteadiness(parts, fit, axes, whitener);
    const energyPerS = traceOfProduct(axes, whitener, outer(axes, fit.amplitude));
    wanderHz = Math.max(wanderHz, frequencyWander(parts, fit.amplitude, energyPerS, band.lengthS) ?? Infinity);
    // Near the threshold of detection the bound is no longer reached; the excess is measured (noise study).
    const nearThreshold = 1 + 3 / Math.max(1, fit.energy - axes);
    // What the parts disagree by beyond noise is drift; a mean over it is less sure than the bound says.
    const variance = fit.boundHz ** 2 * (nearThreshold + 3 * misfit);
    found.push({ f: fit.frequencyHz, variance });
    precision += 1 / variance;
    mean += fit.frequencyHz / variance;
    addTo(power, outer(axes, fit.amplitude), band.lengthS);
    addTo(power, fit.noise, -1);
    addTo(noise, fit.noise, 1);
    noiseTrace += trace(axes, fit.noise);
    length += band.lengthS;
  }
  mean /= precision;
  // Blocks that disagree by more than their uncertainties widen the answer (Birge's ratio).
  const scatter =
    found.reduce((sum, { f, variance }) => sum + (f - mean) ** 2 / variance, 0) / Math.max(1, found.length - 1);
  for (let q = 0; q < power.length; q++) {
    power[q]! /= length;
    // Of so many blocks each.
    noise[q]! /= length * Math.sqrt(zoom.blocks);
  }
  return {
    frequencyHz: mean,
    frequencySdHz: Math.sqrt(Math.max(1, scatter) / precision),
    power,
    noise,
    amplitudeSdMps2: Math.sqrt(noiseTrace / axes / zoom.blocks / 2 / length),
    ...(Number.isFinite(wanderHz) && { wanderHz }),
  };
};

/**
 * A line that wanders, over slices of the given length: each slice has its own frequency, the answer is their mean,
 * their spread goes into its uncertainty.
 */
export const measureWanderingLine = (
  zoom: Zoom,
  frequencyHz: number,
  sliceS: number,
  weights: Hermitian,
): MeasuredLine => {
  const axes = zoom.axisCount;
  const slices: { f: number; energy: number; power: Hermitian }[] = [];
  const bin = 1.5 / sliceS;
  for (let b = 0; b < zoom.blocks; b++) {
    const band = zoom.band(b, frequencyHz, Math.max(bandHalfWidth(zoom), 3 * bin));
    const lengthS = band.envelope.length * band.stepS;
    const count = Math.max(1, Math.round((2 * (lengthS - sliceS)) / sliceS) + 1);
    for (let k = 0; k < count; k++) {
      const from = band.startS + (count === 1 ? 0 : (k * (lengthS - sliceS)) / (count - 1));
      const slice = sliceBand(band, from, from + sliceS);
      const power = (f: number): number => powerAt(slice, weights, f);
      const f = greatest(power, frequencyHz, bin, bin / 8);
      slices.push({ f, energy: power(f) * slice.lengthS, power: outer(axes, amplitudeAt(slice, f)) });
    }
  }
  const noise = inverse(axes, weights);
  const power = new Float64Array(packedLength(axes));
  let sum = 0;
  let total = 0;
  for (const { f, energy, power: own } of slices) {
    const w = Math.max(energy - 2 * axes, 0.1);
    sum += w * f;
    total += w;
    addTo(power, own, 1 / slices.length);
  }
  // The best of a few frequencies in each slice reads about half as much noise again.
  const perSlice = (1.5 * 1.5) / sliceS;
  addTo(power, noise, -perSlice);
  const mean = sum / total;
  const spread = slices.reduce(
    (s, { f, energy }) => s + (Math.max(energy - 2 * axes, 0.1) / total) * (f - mean) ** 2,
    0,
  );
  const independent = Math.max(1, slices.length / 2);
  const amplitude = Math.sqrt(Math.max(trace(axes, power), 1e-30));
  const ownTrace = slices.map((slice) => trace(axes, slice.power));
  const scatter = ownTrace.reduce((s, v) => s + (v - trace(axes, power)) ** 2, 0) / Math.max(1, slices.length - 1);
  return {
    frequencyHz: mean,
    // The wander itself is what one may be off by when the speed is a mean of other moments than these.
    frequencySdHz: Math.sqrt(spread / Math.min(independent, 4)),
    power,
    noise: noise.map((n) => (n * perSlice) / Math.sqrt(independent)),
    amplitudeSdMps2: Math.sqrt(scatter / independent) / (2 * amplitude),
  };
};

/** A steady fit that holds this share of the power that slices see has lost nothing to wander. As among levels. */
const KEPT_POWER = 0.6;
/** Slices shorter than this share of the block are what a line that wanders is found by. */
const LEAST_SLICE = 0.24;
/** The steady line is looked for this far about the place a slice tells, in natural bins of the slice. */
const SLICE_REACH = 0.75;

/**
 * A line that only slices showed. Near the threshold of detection that may be chance, and a steady line is measured far
 * better as one: so it is, where that holds the power.
 */
export const measureFaintLine = (
  zoom: Zoom,
  frequencyHz: number,
  sliceS: number,
  others: readonly number[],
  weights: Hermitian,
): MeasuredLine => {
  const wandering = measureWanderingLine(zoom, frequencyHz, sliceS, weights);
  if (zoom.blocks > 1 || sliceS < LEAST_SLICE * zoom.longestS) return wandering;
  const reachHz = SLICE_REACH / sliceS;
  const band = zoom.band(0, frequencyHz, Math.max(bandHalfWidth(zoom), 2 * reachHz));
  const start = greatest((f) => powerAt(band, weights, f), frequencyHz, reachHz, 0.1 / band.lengthS);
  const steady = measureSteadyLine(zoom, start, others, weights);
  const axes = zoom.axisCount;
  return trace(axes, steady.power) >= KEPT_POWER * trace(axes, wandering.power) ? steady : wandering;
};
