/**
 * One cross (Hooke, Cardan) joint: driven angle, speed and acceleration from the driving angle.
 *
 * The driving angle is 0 where the driving fork lies in the plane of the two shafts. Source of the laws:
 * Seherr-Thoss, Schmelz, Aucktor, "Universal Joints and Driveshafts", Springer 2006 (from memory); the
 * peak is derived, and checked by numbers.
 */
import { degFromRad, radFromDeg } from '../../units.ts';

/**
 * Ripple number of a joint, q = tan²(β/2): the 2× amplitude of the driven shaft's angle error in radians, exact.
 * The 2× speed ripple is 2q of the speed, the 2× part of the acceleration 4q·ω².
 */
export const rippleOfAngle = (jointAngleDeg: number): number => Math.tan(radFromDeg(jointAngleDeg) / 2) ** 2;

/** Joint angle of a single joint with this ripple number, degrees: β = 2·atan√q. */
export const angleOfRipple = (ripple: number): number => degFromRad(2 * Math.atan(Math.sqrt(ripple)));

/** Driven angle, degrees, in the same turn as the driving angle: tan φ₂ = tan φ₁ / cos β. */
export const drivenAngleDeg = (drivingAngleDeg: number, jointAngleDeg: number): number => {
  const driving = radFromDeg(drivingAngleDeg);
  const wrapped = degFromRad(Math.atan2(Math.sin(driving), Math.cos(driving) * Math.cos(radFromDeg(jointAngleDeg))));
  return wrapped + 360 * Math.round((drivingAngleDeg - wrapped) / 360);
};

/** Speed of the driven shaft over that of the driving shaft: cos β / (1 − sin²β·cos²φ₁). */
export const speedRatio = (drivingAngleDeg: number, jointAngleDeg: number): number => {
  const angle = radFromDeg(jointAngleDeg);
  return Math.cos(angle) / (1 - Math.sin(angle) ** 2 * Math.cos(radFromDeg(drivingAngleDeg)) ** 2);
};

/**
 * Acceleration of the driven shaft over the driving speed squared, at steady driving speed (no unit):
 * −cos β·sin²β·sin 2φ₁ / (1 − sin²β·cos²φ₁)².
 */
export const accelerationRatio = (drivingAngleDeg: number, jointAngleDeg: number): number => {
  const angle = radFromDeg(jointAngleDeg);
  const driving = radFromDeg(drivingAngleDeg);
  const sineSquared = Math.sin(angle) ** 2;
  return (-Math.cos(angle) * sineSquared * Math.sin(2 * driving)) / (1 - sineSquared * Math.cos(driving) ** 2) ** 2;
};

export interface PeakAcceleration {
  /** Peak acceleration of the driven shaft over the driving speed squared. */
  readonly ratio: number;
  /** First driving angle at which the peak occurs, degrees (the peak there is a slowing down). */
  readonly atDrivingAngleDeg: number;
}

/**
 * Peak acceleration of the driven shaft at steady driving speed. With s = sin²β, A = 1 − s/2, B = s/2 it occurs
 * where cos 2φ = c, B·c² + A·c − 2B = 0 (derived; the textbook form 2s/(2 − s) leaves the square term out).
 */
export const peakAcceleration = (jointAngleDeg: number): PeakAcceleration => {
  const half = Math.sin(radFromDeg(jointAngleDeg)) ** 2 / 2;
  const rest = 1 - half;
  // (−A + √(A² + 8B²))/(2B), written so that it holds for B = 0.
  const cosineOfDouble = (4 * half) / (rest + Math.sqrt(rest * rest + 8 * half * half));
  const atDrivingAngleDeg = degFromRad(Math.acos(cosineOfDouble)) / 2;
  return { ratio: Math.abs(accelerationRatio(atDrivingAngleDeg, jointAngleDeg)), atDrivingAngleDeg };
};
