/** A chain of joints turned through the joint laws, nothing simplified: the motion that lessons show. */
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
