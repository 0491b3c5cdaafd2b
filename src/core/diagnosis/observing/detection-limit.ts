/** The weakest line that would have been found, over frequency. */
import { chiSquaredTailQuantile } from '../../signal/numeric/distributions.ts';
import type { AmplitudeSpectrum } from '../../signal/spectra/spectrum.ts';
import type { DetectionLimit } from '../origins/absence.ts';

/** Over the whole spectrum, as in peak finding. */
const FALSE_ALARM = 0.01;

/**
 * From a spectrum's floor: a line is found when its bin rises to the level that noise reaches in one recording of a
 * hundred; half the lines of that power do.
 * @param samplingRateHz of the recording itself, which images fold about
 * @param highestHz to which lines are looked for: above, any may hide
 */
export const detectionLimit = (
  spectrum: AmplitudeSpectrum,
  floorMps2: Float64Array,
  axisCount: number,
  samplingRateHz: number,
  highestHz: number,
): DetectionLimit => {
  const degrees = 2 * spectrum.effectiveAverages * axisCount;
  const threshold = chiSquaredTailQuantile(FALSE_ALARM / floorMps2.length, degrees) / degrees;
  const factor = Math.sqrt(Math.max(0.1, threshold - 1));
  return {
    samplingRateHz,
    stepHz: spectrum.stepHz,
    limitMps2: floorMps2.map((floor, k) => (k * spectrum.stepHz > highestHz ? Infinity : floor * factor)),
  };
};
