/** Uncertainty of a vector answer from the uncertainties of the readings it was computed from. */
import type { Complex } from '../../complex.ts';
import { angleDegOf, size } from '../../complex.ts';
import { degFromRad } from '../../units.ts';

export interface UncertainVector {
  readonly size: number;
  readonly angleDeg: number;
  /** Standard uncertainty along the vector and, as an angle, across it; null where no reading had one. */
  readonly sizeSd: number | null;
  readonly angleSdDeg: number | null;
}

/**
 * Carry independent standard uncertainties through a function, by its differences over ± one standard uncertainty
 * of each reading (so that mild bends of the function count).
 * @param compute vectors from readings; null where the readings have no answer
 * @returns null where the readings themselves have no answer; null uncertainties where some reading has none at all
 *   or the answer fails within one standard uncertainty
 */
export const propagate = (
  compute: (readings: readonly number[]) => readonly Complex[] | null,
  readings: readonly number[],
  sds: readonly (number | undefined)[],
): readonly UncertainVector[] | null => {
  const vectors = compute(readings);
  if (vectors === null) return null;
  // Along and across the vector of each answer, variances summed over readings.
  const along = vectors.map(() => 0);
  const across = vectors.map(() => 0);
  let known = sds.some((sd) => sd !== undefined && sd > 0);
  for (const [index, sd] of sds.entries()) {
    if (sd === undefined || sd === 0 || !known) continue;
    const shifted = (by: number) => compute(readings.map((value, at) => (at === index ? value + by : value)));
    const up = shifted(sd);
    const down = shifted(-sd);
    if (up === null || down === null) {
      known = false;
      break;
    }
    for (const [at, vector] of vectors.entries()) {
      const difference = { re: (up[at]!.re - down[at]!.re) / 2, im: (up[at]!.im - down[at]!.im) / 2 };
      const length = size(vector) || 1;
      along[at]! += ((difference.re * vector.re + difference.im * vector.im) / length) ** 2;
      across[at]! += ((difference.im * vector.re - difference.re * vector.im) / length) ** 2;
    }
  }
  return vectors.map((vector, at) => ({
    size: size(vector),
    angleDeg: angleDegOf(vector),
    sizeSd: known ? Math.sqrt(along[at]!) : null,
    angleSdDeg: known && size(vector) > 0 ? degFromRad(Math.sqrt(across[at]!) / size(vector)) : null,
  }));
};
