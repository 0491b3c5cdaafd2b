/**
 * A chain of joints turned step by step through the joint laws, nothing simplified: the judge of the closed form in
 * joint-chain.ts, and the motion that lessons show.
 */
import { radFromDeg } from '../../units.ts';
import type { ChainJoint } from './joint-chain.ts';
import { accelerationRatio, drivenAngleDeg, speedRatio } from './single-joint.ts';

export interface ChainMotion {
  /** Angle of the shaft behind the joint, degrees. */
  readonly angleDeg: number;
  /** Its speed over the speed of the first shaft. */
  readonly speedRatio: number;
  /** Its acceleration over the first shaft's speed squared, the first shaft running steadily. */
  readonly accelerationRatio: number;
}

/**
 * Motion behind each joint when the first shaft stands at this angle.
 * @param joints front to rear; a joint of angle 0 passes motion on unchanged
 * @returns one motion a joint, in order; derivative by the chain rule, exact
 */
export const chainMotion = (joints: readonly ChainJoint[], firstAngleDeg: number): ChainMotion[] => {
  const motions: ChainMotion[] = [];
  let angleDeg = firstAngleDeg;
  let speed = 1;
  let acceleration = 0;
  for (const joint of joints) {
    const drivingDeg = angleDeg + joint.turnDeg;
    const ratio = speedRatio(drivingDeg, joint.angleDeg);
    acceleration = accelerationRatio(drivingDeg, joint.angleDeg) * speed * speed + ratio * acceleration;
    speed *= ratio;
    angleDeg = drivenAngleDeg(drivingDeg, joint.angleDeg);
    motions.push({ angleDeg, speedRatio: speed, accelerationRatio: acceleration });
  }
  return motions;
};

export interface ExactRipple {
  /** 2× amplitude of the last shaft's angle error, radians. */
  readonly doubleAmplitudeRad: number;
  /** Peak acceleration of the last shaft over the first shaft's speed squared. */
  readonly peakAccelerationRatio: number;
}

/**
 * Ripple of the last shaft by stepping through one turn.
 * @param steps positions in a turn; the amplitude is a trapezoid sum over a period, exact to rounding from about 100
 *   on; the peak is refined between steps
 */
export const exactRipple = (joints: readonly ChainJoint[], steps = 720): ExactRipple => {
  const last = (firstAngleDeg: number): ChainMotion =>
    chainMotion(joints, firstAngleDeg).at(-1) ?? { angleDeg: firstAngleDeg, speedRatio: 1, accelerationRatio: 0 };
  let cosineSum = 0;
  let sineSum = 0;
  let peak = 0;
  let peakAtDeg = 0;
  const stepDeg = 360 / steps;
  for (let step = 0; step < steps; step++) {
    const firstDeg = step * stepDeg;
    const motion = last(firstDeg);
    const errorRad = radFromDeg(motion.angleDeg - firstDeg);
    cosineSum += errorRad * Math.cos(2 * radFromDeg(firstDeg));
    sineSum += errorRad * Math.sin(2 * radFromDeg(firstDeg));
    if (Math.abs(motion.accelerationRatio) > peak) {
      peak = Math.abs(motion.accelerationRatio);
      peakAtDeg = firstDeg;
    }
  }
  // Parabola through the top step and its neighbours.
  const left = Math.abs(last(peakAtDeg - stepDeg).accelerationRatio);
  const right = Math.abs(last(peakAtDeg + stepDeg).accelerationRatio);
  const bend = left - 2 * peak + right;
  const shift = bend === 0 ? 0 : (0.5 * (left - right)) / bend;
  const refined = Math.abs(last(peakAtDeg + shift * stepDeg).accelerationRatio);
  return {
    doubleAmplitudeRad: (2 / steps) * Math.hypot(cosineSum, sineSum),
    peakAccelerationRatio: Math.max(peak, refined),
  };
};

/** Angle error of the last shaft against the first, degrees, at even steps of one turn: what a picture draws. */
export const angleErrorTraceDeg = (joints: readonly ChainJoint[], steps: number): number[] => {
  const errors = Array.from({ length: steps }, (_, step) => {
    const firstDeg = (360 * step) / steps;
    return (chainMotion(joints, firstDeg).at(-1)?.angleDeg ?? firstDeg) - firstDeg;
  });
  const mean = errors.reduce((sum, error) => sum + error, 0) / steps;
  return errors.map((error) => error - mean);
};
