/** The size of gravity as the judge of units: at rest and on the road alike, an accelerometer's mean is 1 g upward. */
import { mps2FromG, STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import type { AccelerationUnit } from './header-units.ts';

/**
 * Share by which gravity may look too large or too small: sensors are off by a few per cent, and a braking or
 * cornering stretch tilts the mean. The usual units lie a factor of about ten apart, so no two ranges touch.
 */
const TOLERANCE = 0.2;

export const USUAL_UNITS: readonly AccelerationUnit[] = [
  { unit: 'm/s²', mps2PerUnit: 1 },
  { unit: 'g', mps2PerUnit: mps2FromG(1) },
  { unit: 'mg', mps2PerUnit: mps2FromG(1) / 1000 },
  { unit: 'mm/s²', mps2PerUnit: 0.001 },
];

/** Median of the finite values. @returns NaN of none */
export function medianOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).filter(Number.isFinite).sort();
  const half = sorted.length >> 1;
  if (sorted.length === 0) return NaN;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Length of the vector of the axes' medians: gravity, robust against shocks and glitches. */
export const steadyPart = (axes: readonly ArrayLike<number>[]): number => Math.hypot(...axes.map(medianOf));

/** The usual unit in which this steady part is gravity, or null. */
export const unitByGravity = (steady: number, tolerance = TOLERANCE): AccelerationUnit | null =>
  USUAL_UNITS.find(({ mps2PerUnit }) => Math.abs((steady * mps2PerUnit) / STANDARD_GRAVITY_MPS2 - 1) <= tolerance) ??
  null;

/** Do these columns look like acceleration with gravity in it? */
export function gravityLike(axes: readonly (readonly number[])[]): boolean {
  const steady = steadyPart(axes);
  if (unitByGravity(steady)) return true;
  return steady >= 100 && axes.every((axis) => axis.every(Number.isInteger));
}
