/** The noise floor under a spectrum: what it would show if no line were there. */
import { medianOverMean } from '../numeric/distributions.ts';
import type { AmplitudeSpectrum } from './spectrum.ts';
import { runningMedian } from '../numeric/statistics.ts';

/** Half the width of the running median, Hz: wide against a line's main lobe, narrow against the road's humps. */
const HALF_WIDTH_HZ = 3;
const LEAST_HALF_BINS = 12;
const MOST_HALF_BINS = 400;

/**
 * Mean power of the noise at each bin: running median of the powers (taken in the logarithm, which leaves a median
 * where it is), over the ratio of median to mean of a χ² variable with 2K degrees of freedom.
 * @param power averaged powers, any scale
 * @param averages K, independent averages (axes counted in, where powers of axes are added)
 */
export const noiseFloor = (power: Float64Array, averages: number, halfBins: number): Float64Array => {
  const correction = 1 / medianOverMean(averages);
  return runningMedian(power, halfBins).map((p) => p * correction);
};

/**
 * Floor under an amplitude spectrum, m/s² at each bin: the amplitude (root mean square over realisations) that a bin
 * of the local noise shows, √E[A²].
 * @param axisCount axes added up in the spectrum; 3 for 'all' of a three-axis recording
 */
export const amplitudeFloor = (spectrum: AmplitudeSpectrum, axisCount = 1): Float64Array => {
  const half = Math.round(HALF_WIDTH_HZ / spectrum.stepHz);
  const halfBins = Math.min(MOST_HALF_BINS, Math.max(LEAST_HALF_BINS, half));
  const power = spectrum.amplitudeMps2.map((a) => a * a);
  return noiseFloor(power, spectrum.effectiveAverages * axisCount, halfBins).map(Math.sqrt);
};
