/** A motion given by a formula of time, sampled evenly and handed to the analysis as a recording would be. */
import type { Prepared } from '../../core/signal/spectra/spectrum.ts';

/** @param at Value at a time in seconds; one axis. */
export function sampled(samplingRateHz: number, samples: number, at: (timeS: number) => number): Prepared {
  const axis = Float64Array.from({ length: samples }, (_, index) => at(index / samplingRateHz));
  return { samplingRateHz, durationS: samples / samplingRateHz, pieces: [{ startS: 0, axes: [axis] }], up: null };
}
