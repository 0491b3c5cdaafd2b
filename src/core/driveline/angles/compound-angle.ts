/**
 * True angle between two shafts from what is measured in side view and plan, and the plane the joint works in.
 *
 * Axes: x to the rear, y to the right, z up. A slope is positive where the rear end is lower, a plan angle where the
 * rear end lies to the right. Derived; β = atan2(|e×e'|, e·e') is the form that stays exact near 0°.
 */
import { degFromRad, radFromDeg } from '../../units.ts';

/** A unit vector along a shaft, front to rear. */
export type Direction = readonly [x: number, y: number, z: number];

export const cross = (a: Direction, b: Direction): Direction => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const dot = (a: Direction, b: Direction): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const lengthOf = (a: Direction): number => Math.sqrt(dot(a, a));
export const combine = (a: Direction, factorA: number, b: Direction, factorB: number): Direction => [
  a[0] * factorA + b[0] * factorB,
  a[1] * factorA + b[1] * factorB,
  a[2] * factorA + b[2] * factorB,
];
export const unit = (a: Direction): Direction => combine(a, 1 / lengthOf(a), a, 0);

/** Direction of a shaft from an inclinometer laid on it (slope) and its plan angle. */
export const directionFromSlope = (slopeDeg: number, planDeg = 0): Direction => {
  const slope = radFromDeg(slopeDeg);
  const plan = radFromDeg(planDeg);
  return [Math.cos(slope) * Math.cos(plan), Math.cos(slope) * Math.sin(plan), -Math.sin(slope)];
};

/** True angle between two shafts, degrees. */
export const jointAngleDeg = (front: Direction, rear: Direction): number =>
  degFromRad(Math.atan2(lengthOf(cross(front, rear)), dot(front, rear)));

/** Below this sine (about 0.00006°) two shafts are in line and their plane is anyone's guess. */
const IN_LINE = 1e-6;

export interface JointPlane {
  readonly angleDeg: number;
  /** Across the front shaft, in the joint's plane, towards where the rear shaft goes. */
  readonly acrossFront: Direction;
  /** The same, carried through the joint: across the rear shaft, in the joint's plane. */
  readonly acrossRear: Direction;
}

/**
 * Plane of a joint.
 * @param fallback direction across the front shaft to use where the shafts are in line (any will do, as the joint
 *   then passes motion on evenly, but it must be the one the joint before ended with for turns to add up)
 */
export const jointPlane = (front: Direction, rear: Direction, fallback: Direction): JointPlane => {
  const angleDeg = jointAngleDeg(front, rear);
  const sine = Math.sin(radFromDeg(angleDeg));
  if (sine < IN_LINE) return { angleDeg: 0, acrossFront: fallback, acrossRear: fallback };
  const cosine = Math.cos(radFromDeg(angleDeg));
  const acrossFront = unit(combine(rear, 1, front, -cosine));
  return { angleDeg, acrossFront, acrossRear: combine(acrossFront, cosine, front, -sine) };
};

/** Turn about a shaft from one direction across it to another, degrees, −180..180. */
export const turnAboutDeg = (shaft: Direction, from: Direction, to: Direction): number =>
  degFromRad(Math.atan2(dot(shaft, cross(from, to)), dot(from, to)));

/** Some direction across a shaft: the sideways one. */
export const anyAcross = (shaft: Direction): Direction => {
  const sideways: Direction = [-shaft[1], shaft[0], 0];
  return lengthOf(sideways) > IN_LINE ? unit(sideways) : [0, 1, 0];
};
