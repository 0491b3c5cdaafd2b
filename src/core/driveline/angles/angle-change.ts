/** What a shim, a mount, a bearing bracket, a spline or the suspension does to the angles of a driveline. */
import { degFromRad, inchFromMm, radFromDeg } from '../../units.ts';
import type { AngleSetup } from './angle-chain.ts';
import { isFrontShaft, mountName } from './driveline-names.ts';
import type { ShaftReading } from '../measurement.ts';

export type AngleChangeKind =
  'axle-shim' | 'mount-height' | 'center-bearing-height' | 'phasing' | 'ride-height' | 'pinion-wind-up';

export interface AngleChange {
  readonly kind: AngleChangeKind;
  /**
   * Degrees for 'axle-shim' and 'pinion-wind-up' (positive turns the pinion's front end up) and for 'phasing' (added
   * to the twist); mm upward for the heights ('ride-height': the body against the axle).
   */
  readonly amount: number;
  /** 'phasing': which shaft piece, 0 = first. 'center-bearing-height': the joint behind which piece, 0 = first. */
  readonly piece?: number;
  /** 'phasing': how many whole teeth of the slip spline that is; absent where it is not counted in teeth. */
  readonly teeth?: number;
}

/** Distances that turn a height into an angle. What is not given is assumed and said so. */
export interface AngleGeometry {
  /** Joint centre to joint centre of each shaft piece, mm. */
  readonly pieceLengthsMm?: readonly (number | undefined)[] | undefined;
  /** Front (engine) mounts to the transmission mount, mm, along the vehicle. */
  readonly mountSpanMm?: number | undefined;
  /** Front mounts to the joint at the transmission, mm. */
  readonly frontMountToJointMm?: number | undefined;
  /** Axle centre to the joint at the pinion, mm. */
  readonly pinionLengthMm?: number | undefined;
}

/** Usual sizes on a light truck; this program's judgment, used where the real ones were not measured. */
const ASSUMED = { pieceLengthMm: 1300, mountSpanMm: 900, frontMountToJointMm: 1150, pinionLengthMm: 280 } as const;

export interface CompleteGeometry {
  readonly pieceLengthsMm: readonly number[];
  readonly mountSpanMm: number;
  readonly frontMountToJointMm: number;
  readonly pinionLengthMm: number;
  /** What had to be assumed, in words. */
  readonly assumed: readonly string[];
}

/** Fill in what was not measured. */
export const completeGeometry = (geometry: AngleGeometry, setup: AngleSetup): CompleteGeometry => {
  const assumed: string[] = [];
  const known = (value: number | undefined, fallback: number, what: string): number => {
    if (value !== undefined && value > 0) return value;
    assumed.push(`${what} at ${fallback} mm (${inchFromMm(fallback).toFixed(0)} in)`);
    return fallback;
  };
  const pieces = Math.max(setup.shafts.length - 2, 0);
  return {
    pieceLengthsMm: Array.from({ length: pieces }, (_, piece) =>
      known(geometry.pieceLengthsMm?.[piece], ASSUMED.pieceLengthMm, `length of shaft piece ${piece + 1}`),
    ),
    mountSpanMm: known(geometry.mountSpanMm, ASSUMED.mountSpanMm, `front mounts to ${mountName(setup.shafts)}`),
    frontMountToJointMm: known(geometry.frontMountToJointMm, ASSUMED.frontMountToJointMm, 'front mounts to joint'),
    pinionLengthMm: known(geometry.pinionLengthMm, ASSUMED.pinionLengthMm, 'axle center to pinion joint'),
    assumed,
  };
};

/**
 * The driveline after a change. Joints move up or down with what they sit on, and the shafts between follow.
 * A driveline whose pinion comes first (a front axle) is understood as such.
 */
export const applyChange = (setup: AngleSetup, geometry: CompleteGeometry, change: AngleChange): AngleSetup => {
  const last = setup.shafts.length - 1;
  if (change.kind === 'phasing') {
    const piece = change.piece ?? 0;
    const twists = Array.from({ length: Math.max(last - 1, 0) }, (_, index) => setup.phasingDeg?.[index] ?? 0);
    return { ...setup, phasingDeg: twists.map((twist, index) => (index === piece ? twist + change.amount : twist)) };
  }
  const pinionIsFirst = isFrontShaft(setup.shafts);
  const pinion = pinionIsFirst ? 0 : last;
  const powertrain = pinionIsFirst ? last : 0;
  const pinionJoint = pinionIsFirst ? 0 : last - 1;
  const turnedDeg = new Array<number>(last + 1).fill(0);
  const raisedMm = new Array<number>(last).fill(0);
  switch (change.kind) {
    case 'axle-shim':
    case 'pinion-wind-up':
      // Front end up is a steeper slope down to the rear; the joint goes up on a rear axle, down on a front one.
      turnedDeg[pinion] = change.amount;
      raisedMm[pinionJoint] = geometry.pinionLengthMm * Math.sin(radFromDeg(change.amount)) * (pinionIsFirst ? -1 : 1);
      break;
    case 'mount-height':
      turnedDeg[powertrain] = -degFromRad(Math.atan(change.amount / geometry.mountSpanMm));
      raisedMm[powertrain === 0 ? 0 : last - 1] = (change.amount * geometry.frontMountToJointMm) / geometry.mountSpanMm;
      break;
    case 'center-bearing-height':
      raisedMm[(change.piece ?? 0) + 1] = change.amount;
      break;
    case 'ride-height':
      // Everything on the body goes up; the joint at the pinion stays.
      raisedMm.fill(change.amount);
      raisedMm[pinionJoint] = 0;
      break;
  }
  /** Of a piece whose ends were raised by different amounts. */
  const tiltedDeg = (slopeDeg: number, index: number): number => {
    const dropMm = raisedMm[index - 1]! - raisedMm[index]!;
    const sine = Math.sin(radFromDeg(slopeDeg)) + dropMm / geometry.pieceLengthsMm[index - 1]!;
    return degFromRad(Math.asin(Math.max(-1, Math.min(1, sine))));
  };
  const shafts = setup.shafts.map((shaft, index): ShaftReading => {
    const isPiece = index > 0 && index < last;
    const slopeDeg = isPiece ? tiltedDeg(shaft.slopeDeg, index) : shaft.slopeDeg;
    return { ...shaft, slopeDeg: slopeDeg + turnedDeg[index]! };
  });
  return { ...setup, shafts };
};
