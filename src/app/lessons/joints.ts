/** One or two cross joints in motion, driven steadily from the front. */
import type { ChainMotion } from '../../core/driveline/angles/exact-chain.ts';
import { chainMotion } from '../../core/driveline/angles/exact-chain.ts';
import type { ChainJoint } from '../../core/driveline/angles/joint-chain.ts';
import { chainRipple, planeChain } from '../../core/driveline/angles/joint-chain.ts';
import { rippleOfAngle } from '../../core/driveline/angles/single-joint.ts';
import { radPerSFromRpm } from '../../core/units.ts';
import type { Point } from '../plot/plot.ts';

export interface JointSetting {
  readonly count: 1 | 2;
  readonly firstDeg: number;
  readonly secondDeg: number;
  /** How far the forks of the middle shaft stand out of line, degrees. */
  readonly twistDeg: number;
}

const chainOf = ({ count, firstDeg, secondDeg, twistDeg }: JointSetting): ChainJoint[] =>
  count === 1 ? planeChain([firstDeg]) : planeChain([firstDeg, secondDeg], [twistDeg]);

/** Motion of every shaft behind a joint when the driving shaft stands at an angle. */
export const motionsAt = (setting: JointSetting, angleDeg: number): readonly ChainMotion[] =>
  chainMotion(chainOf(setting), angleDeg);

/**
 * How far each shaft behind a joint is ahead of even turning, degrees. A fork that starts at another angle, as that of
 * a second joint does, is not ahead for that: the mean over a turn is taken off.
 */
export function leadsAt(setting: JointSetting, angleDeg: number): number[] {
  const chain = chainOf(setting);
  return chain.map((_, joint) => {
    const lead = (at: number): number => (chainMotion(chain, at)[joint]?.angleDeg ?? at) - at;
    const turn = Array.from({ length: 72 }, (_step, step) => lead(5 * step));
    return lead(angleDeg) - turn.reduce((sum, value) => sum + value, 0) / turn.length;
  });
}

/** Speed of each shaft behind a joint over one turn of the driving shaft, every 3°, percent of the steady speed. */
export function speedTraces(setting: JointSetting): readonly (readonly Point[])[] {
  const chain = chainOf(setting);
  const angles = Array.from({ length: 121 }, (_, index) => 3 * index);
  const motions = angles.map((angle) => chainMotion(chain, angle));
  return chain.map((_, joint) =>
    angles.map((angle, index) => [angle, 100 * (motions[index]?.[joint]?.speedRatio ?? 1)] as const),
  );
}

/** Highest minus lowest of a trace. */
export const swingOf = (trace: readonly Point[]): number => {
  const values = trace.map(([, value]) => value);
  return Math.max(...values) - Math.min(...values);
};

export type JointVerdict = 'alone' | 'cancels' | 'partly' | 'adds';

export interface JointOutcome {
  /** Angle of the single joint that would run as unevenly as the whole, degrees. */
  readonly leftDeg: number;
  readonly peakRadPerS2: number;
  readonly verdict: JointVerdict;
}

/** Below this share of both ripples together the second joint is said to cancel. */
const CANCELS_BELOW = 0.02;

export function outcomeOf(setting: JointSetting, rpm: number): JointOutcome {
  const ripple = chainRipple(chainOf(setting));
  const peakRadPerS2 = ripple.peakAccelerationRatio * radPerSFromRpm(rpm) ** 2;
  return { leftDeg: ripple.equivalentAngleDeg, peakRadPerS2, verdict: verdictOf(setting, ripple.doubleAmplitudeRad) };
}

function verdictOf({ count, firstDeg, secondDeg }: JointSetting, left: number): JointVerdict {
  if (count === 1) return 'alone';
  const first = rippleOfAngle(firstDeg);
  const both = first + rippleOfAngle(secondDeg);
  if (left <= CANCELS_BELOW * both) return 'cancels';
  return left > first * (1 + CANCELS_BELOW) ? 'adds' : 'partly';
}
