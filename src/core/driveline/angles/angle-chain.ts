/** From angle readings, front to rear, to the chain of joints with their true angles and phasing. */
import type { JointKind } from '../../vehicle/vehicle.ts';
import type { Direction, JointPlane } from './compound-angle.ts';
import { anyAcross, combine, directionFromSlope, jointPlane, turnAboutDeg } from './compound-angle.ts';
import { radFromDeg } from '../../units.ts';
import type { ChainJoint } from './joint-chain.ts';
import type { ShaftReading } from '../measurement.ts';

/** A driveline as measured: one more shaft than joints. */
export interface AngleSetup {
  /** Front to rear: what drives or carries the shaft, each piece, what it drives. */
  readonly shafts: readonly ShaftReading[];
  /**
   * Fork twist of each shaft piece (not the outer two), degrees; 0 = forks in line, positive where the rear fork is
   * turned counter-clockwise against the front one, seen from behind.
   */
  readonly phasingDeg?: readonly number[] | undefined;
  /** Kind of each joint, front to rear; a cross where absent. */
  readonly joints?: readonly JointKind[] | undefined;
  /** Double-Cardan joints: how far each half-angle is off the half, degrees (front half larger = positive). */
  readonly splitErrorDeg?: readonly number[] | undefined;
}

export interface ChainedJoint {
  readonly kind: JointKind;
  /** True angle between the shafts, degrees. */
  readonly angleDeg: number;
  /** Turn about the shaft in front from the plane of the joint before to this joint's plane; 0 for the first. */
  readonly planeTurnDeg: number;
  /** The crosses in this joint: one, two (double-Cardan), or none (constant velocity, flexible disc). */
  readonly crosses: readonly ChainJoint[];
}

export interface AngleChain {
  readonly joints: readonly ChainedJoint[];
  /** All crosses in order, with the turns between them. */
  readonly crosses: readonly ChainJoint[];
}

/** Joints that pass motion on evenly, whatever their angle. A flexible disc does so at the few degrees it may bend. */
const runsEvenly = (kind: JointKind): boolean => kind === 'constant-velocity' || kind === 'flexible-disc';

/**
 * The chain of joints.
 *
 * A cross hands the fork over a quarter turn on: its driven fork stands square to the driving one. A constant-velocity
 * joint hands the angle over as it is, so a piece's twist behind one counts from the last fork in front of it.
 */
export const angleChain = (setup: AngleSetup): AngleChain => {
  const directions = setup.shafts.map((shaft) => directionFromSlope(shaft.slopeDeg, shaft.planDeg));
  const joints: ChainedJoint[] = [];
  const first = directions[0] ?? directionFromSlope(0);
  let across = anyAcross(first);
  // Turn still to be handed to the next cross: quarter turns, twists, and turns of constant-velocity joints between.
  let pendingDeg = 0;
  for (let index = 0; index + 1 < directions.length; index++) {
    const front = directions[index]!;
    const rear = directions[index + 1]!;
    const kind = setup.joints?.[index] ?? 'cross';
    const twistDeg = index === 0 ? 0 : (setup.phasingDeg?.[index - 1] ?? 0);
    const plane = jointPlane(front, rear, across);
    const planeTurnDeg = turnAboutDeg(front, across, plane.acrossFront);
    pendingDeg += twistDeg - planeTurnDeg;
    const crosses = crossesOf(kind, front, plane, pendingDeg, setup.splitErrorDeg?.[index] ?? 0);
    if (crosses.length > 0) pendingDeg = 90;
    across = plane.acrossRear;
    joints.push({ kind, angleDeg: plane.angleDeg, planeTurnDeg: index === 0 ? 0 : planeTurnDeg, crosses });
  }
  return { joints, crosses: joints.flatMap((joint) => joint.crosses) };
};

const crossesOf = (
  kind: JointKind,
  front: Direction,
  plane: JointPlane,
  turnDeg: number,
  splitErrorDeg: number,
): ChainJoint[] => {
  if (runsEvenly(kind)) return [];
  if (kind === 'cross') return [{ angleDeg: plane.angleDeg, turnDeg }];
  const firstHalf = radFromDeg(plane.angleDeg / 2 + splitErrorDeg);
  const middle = combine(front, Math.cos(firstHalf), plane.acrossFront, Math.sin(firstHalf));
  const whole = radFromDeg(plane.angleDeg);
  const rear = combine(front, Math.cos(whole), plane.acrossFront, Math.sin(whole));
  const frontPlane = jointPlane(front, middle, plane.acrossFront);
  const rearPlane = jointPlane(middle, rear, frontPlane.acrossRear);
  // Both crosses work in the joint's own plane, so the turn between them is the quarter turn of the forks.
  return [
    { angleDeg: frontPlane.angleDeg, turnDeg },
    { angleDeg: rearPlane.angleDeg, turnDeg: 90 },
  ];
};
