/** Names of measurements for the paper. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import { measurementTitle } from '../bench/judged-words.ts';

export const measuredTitles = (measurements: readonly Measurement[]): string[] => [
  ...new Set(measurements.map(measurementTitle)),
];
