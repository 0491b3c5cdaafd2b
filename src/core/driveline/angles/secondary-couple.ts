/**
 * The bending (secondary) couple a joint under torque puts on its two shafts. Derived: the cross can carry a pure
 * couple only along the normal of its own plane. It shakes the supports at 2× even where the speed ripple cancels;
 * for its place in vehicle noise see Gillespie, "Fundamentals of Vehicle Dynamics", ride chapter (from memory).
 */
import { radFromDeg } from '../../units.ts';
import { drivenAngleDeg, speedRatio } from './single-joint.ts';

export interface CoupleAt {
  /** Bending couple on the driving and on the driven shaft, N·m. */
  readonly drivingNm: number;
  readonly drivenNm: number;
}

/**
 * Bending couples at one driving angle (0 where the driving fork lies in the plane of the shafts):
 * T·tan β·|sin φ₁| on the driving shaft, T·(ω₁/ω₂)·tan β·|cos φ₂| on the driven one.
 */
export const coupleAt = (torqueNm: number, jointAngleDeg: number, drivingAngleDeg: number): CoupleAt => {
  const tangent = Math.tan(radFromDeg(jointAngleDeg));
  const driven = radFromDeg(drivenAngleDeg(drivingAngleDeg, jointAngleDeg));
  const drivenTorqueNm = torqueNm / speedRatio(drivingAngleDeg, jointAngleDeg);
  return {
    drivingNm: torqueNm * tangent * Math.abs(Math.sin(radFromDeg(drivingAngleDeg))),
    drivenNm: drivenTorqueNm * tangent * Math.abs(Math.cos(driven)),
  };
};

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
