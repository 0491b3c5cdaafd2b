/**
 * The bending (secondary) couple a joint under torque puts on its two shafts. Derived: the cross can carry a pure
 * couple only along the normal of its own plane. It shakes the supports at 2× even where the speed ripple cancels;
 * for its place in vehicle noise see Gillespie, "Fundamentals of Vehicle Dynamics", ride chapter (from memory).
 */
import { radFromDeg } from '../../units.ts';

export interface SecondaryCouple {
  /** Greatest couple in a turn, T·tan β, N·m. */
  readonly peakNm: number;
  /** Part that stands still in the vehicle, N·m, and the part that turns at twice shaft speed; both T·tan β/2. */
  readonly steadyNm: number;
  readonly doubleNm: number;
  /** Force at 2× on bearings this far apart, N; null where the span is not known. */
  readonly doubleReactionN: number | null;
}

/**
 * Couple on the driving shaft split into its steady and its 2× part.
 * @param bearingSpanMm distance of the two supports of that shaft
 */
export const secondaryCouple = (torqueNm: number, jointAngleDeg: number, bearingSpanMm?: number): SecondaryCouple => {
  const peakNm = Math.abs(torqueNm) * Math.tan(radFromDeg(jointAngleDeg));
  return {
    peakNm,
    steadyNm: peakNm / 2,
    doubleNm: peakNm / 2,
    doubleReactionN: bearingSpanMm === undefined ? null : peakNm / 2 / (bearingSpanMm / 1000),
  };
};
