/** Two steady lines close together, through a window of choice and a record of any length. */
import { welchAmplitude } from '../../core/signal/spectra/welch.ts';
import type { WindowName } from '../../core/signal/spectra/windows.ts';
import { lobeWidthBins, noiseBandwidthBins } from '../../core/signal/spectra/windows.ts';
import { dbFromAmplitudeRatio } from '../../core/units.ts';
import type { Point } from '../plot/plot.ts';
import { sampled } from './sampled.ts';

export interface TwoLines {
  readonly lengthS: number;
  readonly gapHz: number;
  /** How much weaker the second line is, dB. */
  readonly weakerDb: number;
  readonly window: WindowName;
}

/** The stronger line. Not a round number, as real lines are none. */
export const FIRST_HZ = 20.137;
const RATE_HZ = 100;
/** Shown around the lines, Hz, and down to, dB. */
export const SHOWN_HZ = [FIRST_HZ - 3, FIRST_HZ + 5] as const;
export const LOWEST_DB = -100;
/** A dip this deep between two lines is seen as two; common practice, no source. */
const DIP_DB = 3;

/** Level of each bin near the lines, dB over the stronger one. */
export function nearSpectrum({ lengthS, gapHz, weakerDb, window }: TwoLines): readonly Point[] {
  const second = 10 ** (-weakerDb / 20);
  const samples = Math.round(lengthS * RATE_HZ);
  const motion = sampled(
    RATE_HZ,
    samples,
    (timeS) =>
      Math.sin(2 * Math.PI * FIRST_HZ * timeS) + second * Math.sin(2 * Math.PI * (FIRST_HZ + gapHz) * timeS + 1),
  );
  const { amplitudeMps2: level, stepHz } = welchAmplitude(motion, { segmentLength: samples, window });
  const from = Math.ceil(SHOWN_HZ[0] / stepHz);
  const to = Math.floor(SHOWN_HZ[1] / stepHz);
  return Array.from({ length: to - from + 1 }, (_, index) => {
    const value = level[from + index] ?? 0;
    return [(from + index) * stepHz, Math.max(LOWEST_DB, dbFromAmplitudeRatio(Math.max(value, 1e-12)))] as const;
  });
}

/**
 * Depth of the dip between the two lines below the lower of their tops, dB; null where the weaker has no top of its
 * own within a bin and a half of its place.
 */
export function dipDb(points: readonly Point[], { gapHz, lengthS }: TwoLines): number | null {
  const tops = points.map((_, index) => index).filter((index) => isTop(points, index));
  const nearest = (hz: number): number | undefined =>
    tops
      .filter((index) => Math.abs((points[index]?.[0] ?? 0) - hz) * lengthS <= 1.5)
      .sort((a, b) => Math.abs((points[a]?.[0] ?? 0) - hz) - Math.abs((points[b]?.[0] ?? 0) - hz))[0];
  const first = nearest(FIRST_HZ);
  const second = nearest(FIRST_HZ + gapHz);
  if (first === undefined || second === undefined || first === second) return null;
  const between = points.slice(Math.min(first, second), Math.max(first, second) + 1).map(([, level]) => level);
  const lowerTop = Math.min(points[first]?.[1] ?? 0, points[second]?.[1] ?? 0);
  return lowerTop - Math.min(...between);
}

const isTop = (points: readonly Point[], index: number): boolean => {
  const here = points[index]?.[1] ?? 0;
  return here > (points[index - 1]?.[1] ?? Infinity) && here >= (points[index + 1]?.[1] ?? Infinity);
};

export const areApart = (dip: number | null): boolean => dip !== null && dip >= DIP_DB;

/** Half-power width and noise bandwidth of a lone line, Hz. */
export const widthsHz = ({ window, lengthS }: TwoLines): { readonly halfPower: number; readonly noise: number } => ({
  halfPower: lobeWidthBins(window) / lengthS,
  noise: noiseBandwidthBins(window) / lengthS,
});
