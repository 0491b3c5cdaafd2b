/**
 * One cross (Hooke, Cardan) joint: driven angle, speed and acceleration from the driving angle.
 *
 * The driving angle is 0 where the driving fork lies in the plane of the two shafts. Source of the laws:
 * Seherr-Thoss, Schmelz, Aucktor, "Universal Joints and Driveshafts", Springer 2006 (from memory); the harmonic
 * series and the peak are derived, checked against each other by numbers.
 */
import { degFromRad, radFromDeg, radPerSFromRpm } from '../../units.ts';

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

export interface SpeedSwing {
  /** Highest and lowest speed of the driven shaft over that of the driving shaft. */
  readonly highest: number;
  readonly lowest: number;
  /** Highest minus lowest (peak to peak), not "plus or minus". */
  readonly total: number;
}

/** Speed swing of the driven shaft: 1/cos β, cos β, and their difference sin β·tan β. */
export const speedSwing = (jointAngleDeg: number): SpeedSwing => {
  const cosine = Math.cos(radFromDeg(jointAngleDeg));
  return { highest: 1 / cosine, lowest: cosine, total: 1 / cosine - cosine };
};

/** Most the driven shaft runs ahead of (or behind) the driving one, degrees: arcsin q. */
export const greatestLeadDeg = (jointAngleDeg: number): number => degFromRad(Math.asin(rippleOfAngle(jointAngleDeg)));

/** Amplitudes, in radians, of the driven angle error at 2×, 4×, 6× …: q, q²/2, q³/3 … */
export const angleErrorSeriesRad = (jointAngleDeg: number, terms: number): number[] => {
  const ripple = rippleOfAngle(jointAngleDeg);
  return Array.from({ length: terms }, (_, index) => ripple ** (index + 1) / (index + 1));
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

/** Peak acceleration of the driven shaft, rad/s², at this shaft speed, rev/min. */
export const peakAccelerationRadPerS2 = (jointAngleDeg: number, rpm: number): number =>
  peakAcceleration(jointAngleDeg).ratio * radPerSFromRpm(rpm) ** 2;

/** Shaft speed, rev/min, at which one joint's peak acceleration reaches the limit, rad/s²; Infinity at 0°. */
export const speedLimitRpm = (jointAngleDeg: number, limitRadPerS2: number): number =>
  Math.sqrt(limitRadPerS2 / peakAcceleration(jointAngleDeg).ratio) * (60 / (2 * Math.PI));

/** Product of speed and joint angle, °·rev/min, at a peak acceleration, for small angles (α = ω²β²). */
export const angleTimesSpeed = (accelerationRadPerS2: number): number =>
  Math.sqrt(accelerationRadPerS2) * (60 / (2 * Math.PI)) * (180 / Math.PI);
