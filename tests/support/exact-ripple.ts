/** Ripple of a chain of joints turned step by step: the slow judge of the closed form in joint-chain.ts. */
import type { ChainMotion } from '../../src/core/driveline/angles/exact-chain.ts';
import { chainMotion } from '../../src/core/driveline/angles/exact-chain.ts';
import type { ChainJoint } from '../../src/core/driveline/angles/joint-chain.ts';
import { radFromDeg } from '../../src/core/units.ts';

interface ExactRipple {
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
