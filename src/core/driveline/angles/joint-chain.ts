/**
 * Joints in series, closed form.
 *
 * With z = e^(j2φ) the law tan φ₂ = tan φ₁/cos β becomes z₂ = (z₁ − q)/(1 − q·z₁), q = tan²(β/2): a map of the unit
 * circle onto itself. Maps of this kind, with turns between them, compose to one more of the same kind, so a whole
 * chain is exactly one single joint of ripple number |a|, where a is the point it takes to zero (derived; check:
 * stepwise composition in tests/support/exact-ripple.ts). To first order a is the known rule |Σ q·e^(j2ψ)|.
 */
import type { Complex } from '../../complex.ts';
import { add, conjugate, multiply, polar, scale, size, ZERO } from '../../complex.ts';
import { angleOfRipple, peakAcceleration, rippleOfAngle } from './single-joint.ts';

/** One cross of a chain. A constant-velocity joint is one of angle 0. */
export interface ChainJoint {
  /** Angle between the two shafts the joint connects, degrees. */
  readonly angleDeg: number;
  /**
   * From the angle of the shaft in front (as driven by the joint before; the first shaft's own angle for the first
   * joint) to the angle of this joint's driving fork out of the plane of this joint, degrees.
   */
  readonly turnDeg: number;
}

export interface Ripple {
  /** 2× amplitude of the angle error in radians; also the ripple number q of the equivalent single joint. */
  readonly doubleAmplitudeRad: number;
  /** Angle of the single joint that would run as unevenly, degrees. */
  readonly equivalentAngleDeg: number;
  /** Peak acceleration over the driving speed squared. */
  readonly peakAccelerationRatio: number;
}

/** A ripple with its peak acceleration at the speed asked for, rad/s²; null where no speed is known. */
export interface RippleAtSpeed extends Ripple {
  readonly accelerationRadPerS2: number | null;
}

const rippleOf = (doubleAmplitudeRad: number): Ripple => {
  const equivalentAngleDeg = angleOfRipple(doubleAmplitudeRad);
  return {
    doubleAmplitudeRad,
    equivalentAngleDeg,
    peakAccelerationRatio: peakAcceleration(equivalentAngleDeg).ratio,
  };
};

/**
 * Ripple of the last shaft of the chain while the first turns steadily, exact. Turned about, it is also the ripple of
 * the first shaft while the last turns steadily.
 * @returns zeros for an empty chain
 */
export const chainRipple = (joints: readonly ChainJoint[]): Ripple => {
  // The map z → (top·z + bottom)/(bottom*·z + top*), started as z itself.
  let top: Complex = { re: 1, im: 0 };
  let bottom: Complex = ZERO;
  for (const joint of joints) {
    const turn = polar(1, joint.turnDeg);
    const turnedTop = multiply(turn, top);
    const turnedBottom = multiply(turn, bottom);
    const ripple = rippleOfAngle(joint.angleDeg);
    top = add(turnedTop, scale(conjugate(turnedBottom), -ripple));
    bottom = add(turnedBottom, scale(conjugate(turnedTop), -ripple));
  }
  return rippleOf(size(bottom) / size(top));
};

/** The small-angle rule on squared angles, √|Σ β²·e^(j2ψ)|, degrees: for working by hand. */
export const handResidualDeg = (joints: readonly ChainJoint[]): number => {
  let sum = ZERO;
  let turnDeg = 0;
  for (const joint of joints) {
    turnDeg += joint.turnDeg;
    sum = add(sum, scale(polar(1, 2 * turnDeg), joint.angleDeg ** 2));
  }
  return Math.sqrt(size(sum));
};

/** Joints that all lie in one plane; fork twist of each shaft between two joints, degrees, 0 = forks in line. */
export const planeChain = (anglesDeg: readonly number[], twistsDeg: readonly number[] = []): ChainJoint[] =>
  anglesDeg.map((angleDeg, index) => ({ angleDeg, turnDeg: index === 0 ? 0 : 90 + (twistsDeg[index - 1] ?? 0) }));
