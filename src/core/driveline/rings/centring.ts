/** What an off-centre joint does: offset of the shaft's end, unbalance in both planes, force at speed. Derived. */
import { angleDegOf, size } from '../../complex.ts';
import { forceOfUnbalanceN, permissibleUnbalanceGmm } from '../balance/balance-grade.ts';
import type { SeatedAxis } from './ring-seat.ts';

export interface JointOffset {
  /** Offset of the shaft's end, mm, and its direction, degrees from the first axis (towards its ring 1). */
  readonly offsetMm: number;
  readonly angleDeg: number;
  /** The most it can be with the play on both axes pushed the wrong way, mm. */
  readonly greatestMm: number;
}

/** The two axes of a joint stand at right angles, so their offsets add as vectors. */
export const jointOffset = (axes: readonly SeatedAxis[]): JointOffset => {
  const [first, second] = axes;
  const vector = { re: first?.offsetMm ?? 0, im: second?.offsetMm ?? 0 };
  const worst = axes.map(({ offsetRangeMm: [least, most] }) => Math.max(Math.abs(least), Math.abs(most)));
  return { offsetMm: size(vector), angleDeg: angleDegOf(vector), greatestMm: Math.hypot(...worst) };
};

export interface CentringInput {
  readonly offsetMm: number;
  /** Mass of the shaft piece, kg, and of the yoke and joint that sit at its off-centre end, kg. */
  readonly massKg: number;
  readonly endMassKg?: number | undefined;
  /** Speed of the complaint, rev/min; greatest service speed for the allowance, the same where absent. */
  readonly rpm: number;
  readonly serviceRpm?: number | undefined;
  /** Balance grade for the allowance, mm/s. */
  readonly gradeMmps: number;
}

export interface PlaneUnbalance {
  readonly unbalanceGmm: number;
  readonly forceN: number;
  /** Share of the plane's allowance (half the piece's); 1 = all of it. */
  readonly shareOfAllowance: number;
}

export interface Centring {
  readonly allowancePerPlaneGmm: number;
  /** Plane of the off-centre joint, and the other end of the piece. */
  readonly near: PlaneUnbalance;
  readonly far: PlaneUnbalance;
  readonly totalGmm: number;
}

/**
 * Unbalance of a uniform piece held off centre at one end: half its mass times the offset, two thirds of that in the
 * plane of the end and one third at the other; what sits at the end itself adds there in full.
 */
export const centringEffect = (input: CentringInput): Centring => {
  const { offsetMm, massKg, endMassKg = 0, rpm, serviceRpm = rpm, gradeMmps } = input;
  const allowancePerPlaneGmm = permissibleUnbalanceGmm(gradeMmps, massKg, serviceRpm) / 2;
  const plane = (unbalanceGmm: number): PlaneUnbalance => ({
    unbalanceGmm,
    forceN: forceOfUnbalanceN(unbalanceGmm, rpm),
    shareOfAllowance: unbalanceGmm / allowancePerPlaneGmm,
  });
  // kg·mm = 1000 g·mm.
  const shaftGmm = massKg * offsetMm * 1000;
  const near = plane(shaftGmm / 3 + endMassKg * offsetMm * 1000);
  const far = plane(shaftGmm / 6);
  return { allowancePerPlaneGmm, near, far, totalGmm: near.unbalanceGmm + far.unbalanceGmm };
};

/** Offset, mm, at which the near plane's allowance is used up: what the rings must hold. */
export const offsetOfWholeAllowanceMm = (input: Omit<CentringInput, 'offsetMm'>): number => {
  const perMm = centringEffect({ ...input, offsetMm: 1 });
  return 1 / perMm.near.shareOfAllowance;
};
