/**
 * The noise at each frequency as it is most of the time: a line that wanders over several hertz fills a long spectrum's
 * surroundings, and would pass for the noise there; in any short stretch it is narrow, and it has soon moved on.
 */
import { median, runningMedian } from '../../signal/numeric/statistics.ts';

/** Noise is read this far to each side, Hz. */
const FLOOR_HALF_HZ = 2.5;
/** A floor may stand this much over the usual one: loud stretches of the road, and chance. */
const OVER_USUAL = 3;

/** Half width of the running median, in bins of `stepHz`; never so few that a line's own lobe fills it. */
export const floorHalfBins = (stepHz: number): number => Math.max(8, Math.round(FLOOR_HALF_HZ / stepHz));

/**
 * Mean power of noise at each bin, in the powers' unit, by the median over time and then over frequency.
 * @param powers of short even stretches, row by row: `powers[row * bins + bin]`
 * @param stepHz from bin to bin
 */
export const usualFloor = (
  powers: Float32Array | Float64Array,
  rows: number,
  bins: number,
  stepHz: number,
): Float64Array => {
  const column = new Float64Array(rows);
  const middle = Float64Array.from({ length: bins }, (_, k) => {
    for (let r = 0; r < rows; r++) column[r] = powers[r * bins + k]!;
    // The median of an exponential variable is ln 2 times its mean.
    return median(column) / Math.LN2;
  });
  return runningMedian(middle, floorHalfBins(stepHz));
};

/** A floor read over frequency, held to what is usual at the same place; both in one unit of power. */
export const heldToUsual = (floor: number, usual: number): number => Math.min(floor, OVER_USUAL * usual);
