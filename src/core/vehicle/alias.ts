/** Where a line lies against half the sampling rate. */
import type { Line } from './line.ts';

/** Frequency under which a tone shows after sampling: |f − fs·round(f/fs)|. */
export const aliasOfHz = (frequencyHz: number, samplingRateHz: number): number =>
  Math.abs(frequencyHz - samplingRateHz * Math.round(frequencyHz / samplingRateHz));

/** Whether a line can be seen at a sampling rate, and under which frequency its image falls if not. */
export const visibilityOf = (
  frequencyHz: number,
  samplingRateHz: number | undefined,
): Pick<Line, 'visibility' | 'aliasHz'> =>
  samplingRateHz === undefined || frequencyHz < samplingRateHz / 2
    ? { visibility: 'below-half-rate' }
    : { visibility: 'above-half-rate', aliasHz: aliasOfHz(frequencyHz, samplingRateHz) };
