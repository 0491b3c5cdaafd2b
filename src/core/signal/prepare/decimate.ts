/** Fewer samples without aliasing: a linear-phase low-pass and every q-th sample of it. */
import type { Prepared } from '../spectra/spectrum.ts';
import { besselI0 } from '../numeric/special-functions.ts';

/** Share of the new half rate that is kept flat; above it the filter falls. */
const FLAT_SHARE = 0.8;
/** Kaiser's β for 70 dB (J. F. Kaiser, 1974: β = 0.1102(A − 8.7)). */
const BETA = 0.1102 * (70 - 8.7);

/** Largest factor that keeps `highestHz` within the flat part. */
export const decimationFor = (samplingRateHz: number, highestHz: number): number =>
  Math.max(1, Math.floor((samplingRateHz * FLAT_SHARE) / (2 * highestHz)));

/**
 * Low-pass taps for a factor q: passband to 0.8 of the new half rate, 70 dB down from 1.2 of it, so that what folds
 * back lies outside the passband; the middle one and those to one side. Length by Kaiser's rule N = (A − 8)/(2.285·Δω).
 */
const lowPass = (factor: number): Float64Array => {
  const cutoff = 1 / factor;
  const half = Math.ceil((70 - 8) / (2.285 * Math.PI * 2 * (1 - FLAT_SHARE) * cutoff) / 2);
  const taps = new Float64Array(half + 1);
  let sum = 0;
  for (let i = 0; i <= half; i++) {
    const sinc = i === 0 ? cutoff : Math.sin(Math.PI * cutoff * i) / (Math.PI * i);
    const r = i / (half + 1);
    taps[i] = (sinc * besselI0(BETA * Math.sqrt(1 - r * r))) / besselI0(BETA);
    sum += (i === 0 ? 1 : 2) * taps[i]!;
  }
  return taps.map((t) => t / sum);
};

/**
 * Every `factor`-th sample of a signal filtered by symmetric taps, the first kept at the first. At the ends the signal is
 * continued by its end values.
 * @param taps the middle one and those to one side of it
 */
export const filteredEvery = (samples: Float64Array, taps: Float64Array, factor: number): Float64Array => {
  const half = taps.length - 1;
  const last = samples.length - 1;
  const out = new Float64Array(Math.floor(last / factor) + 1);
  for (let o = 0; o < out.length; o++) {
    const i = o * factor;
    let sum = taps[0]! * samples[i]!;
    if (i >= half && i + half <= last) {
      for (let k = 1; k <= half; k++) sum += taps[k]! * (samples[i - k]! + samples[i + k]!);
    } else {
      for (let k = 1; k <= half; k++) {
        sum += taps[k]! * (samples[Math.max(0, i - k)]! + samples[Math.min(last, i + k)]!);
      }
    }
    out[o] = sum;
  }
  return out;
};

/** Every `factor`-th sample of the low-passed signal. Flat within 0.06 % to 0.8 of the new half rate. */
export const decimate = (samples: Float64Array, factor: number): Float64Array =>
  factor <= 1 ? samples : filteredEvery(samples, lowPass(factor), factor);

/** The recording at a rate no higher than its content up to `highestHz` needs. */
export const withoutIdleRate = (prepared: Prepared, highestHz: number): Prepared => {
  const factor = decimationFor(prepared.samplingRateHz, highestHz);
  if (factor === 1) return prepared;
  return {
    ...prepared,
    samplingRateHz: prepared.samplingRateHz / factor,
    pieces: prepared.pieces.map((piece) => ({ ...piece, axes: piece.axes.map((axis) => decimate(axis, factor)) })),
  };
};
