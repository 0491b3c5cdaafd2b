/** Working angles held to their limits, and what to say about them. */
import type { Note } from '../../note.ts';
import { rpmFromHz } from '../../units.ts';
import type { AngleChain } from './angle-chain.ts';
import { angleNotes, forkNotes } from './angle-notes.ts';
import { jointName } from './driveline-names.ts';
import { isTwisted, outOfLineDeg } from './forks.ts';
import type { ShaftReading } from '../measurement.ts';
import type { JudgedNumber, LimitId, LimitOverrides } from '../limits/limit.ts';
import { judge, limitOf } from '../limits/limit.ts';
import type { Ripple, RippleAtSpeed } from './joint-chain.ts';

export interface AngleFacts {
  readonly chain: AngleChain;
  readonly residual: RippleAtSpeed;
  readonly inertiaDrive: RippleAtSpeed;
  readonly inertiaCoast: RippleAtSpeed;
  /** What would be left with the forks of every piece in line. */
  readonly residualInLine: Ripple;
}

export interface AngleJudgment {
  readonly judged: readonly JudgedNumber[];
  readonly advisory: readonly JudgedNumber[];
  readonly residualLimitRpm: number | null;
  readonly verdict: 'inside' | 'outside' | 'cannot-tell';
  readonly notes: readonly Note[];
}

export interface AngleSettings {
  readonly shafts: readonly ShaftReading[];
  readonly phasingDeg?: readonly number[] | undefined;
  readonly limits?: LimitOverrides | undefined;
}

/** Below this equivalent angle (degrees) there is nothing left to speak of, and no speed limit to give. */
const NOTHING_LEFT_DEG = 0.01;

/**
 * Hold angles to the limits. The accelerations decide, where a speed is known, and for a one-piece shaft the
 * difference of its two angles: at low speed a shaft may be far from equal angles and still inside its accelerations.
 * Twist of the forks decides at any speed, but only where forks in line would leave less: some are set out of line.
 */
export const judgeAngles = (facts: AngleFacts, { shafts, phasingDeg = [], limits }: AngleSettings): AngleJudgment => {
  const { chain, residual } = facts;
  const limit = (id: LimitId) => limitOf(id, limits);
  const judged: JudgedNumber[] = [];
  const accelerations: readonly (readonly [LimitId, RippleAtSpeed])[] = [
    ['residual-acceleration', residual],
    ['inertia-drive', facts.inertiaDrive],
    ['inertia-coast', facts.inertiaCoast],
  ];
  for (const [id, { accelerationRadPerS2 }] of accelerations) {
    if (accelerationRadPerS2 !== null) judged.push(judge(accelerationRadPerS2, limit(id)));
  }
  const advisory: JudgedNumber[] = [];
  const [first, second] = chain.joints;
  if (chain.joints.length === 2 && first?.kind === 'cross' && second?.kind === 'cross') {
    judged.push(judge(Math.abs(first.angleDeg - second.angleDeg), limit('joint-angle-difference')));
  }
  const twistHarms = residual.equivalentAngleDeg - facts.residualInLine.equivalentAngleDeg > NOTHING_LEFT_DEG;
  for (const [index, twistDeg] of phasingDeg.entries()) {
    if (isTwisted(twistDeg) && !twistHarms) continue;
    judged.push(
      judge(Math.abs(outOfLineDeg(twistDeg)), limit('fork-twist'), `forks of shaft piece ${index + 1} out of line`),
    );
  }
  for (const [index, joint] of chain.joints.entries()) {
    const name = jointName(shafts, index);
    for (const [half, { angleDeg }] of joint.crosses.entries()) {
      const which = joint.crosses.length < 2 ? '' : half === 0 ? ', front half' : ', rear half';
      advisory.push(
        judge(angleDeg, limit('joint-angle-least'), `angle of the ${name}${which}, for its needles to turn`),
      );
    }
    if (joint.kind === 'cross') {
      advisory.push(judge(joint.angleDeg, limit('joint-angle-most'), `angle of the ${name}, at road speed`));
    }
    if (joint.kind === 'flexible-disc') {
      judged.push(judge(joint.angleDeg, limit('flexible-disc-angle'), `angle of the flexible disc, ${name}`));
    }
    const [frontHalf, rearHalf] = joint.crosses;
    if (frontHalf && rearHalf) {
      const split = Math.abs(frontHalf.angleDeg - rearHalf.angleDeg);
      advisory.push(judge(split, limit('double-cardan-split'), `${name}, difference of its half-angles`));
    }
  }
  const limitRadPerS2 = limit('residual-acceleration').value;
  return {
    judged,
    advisory,
    residualLimitRpm:
      residual.equivalentAngleDeg < NOTHING_LEFT_DEG
        ? null
        : rpmFromHz(Math.sqrt(limitRadPerS2 / residual.peakAccelerationRatio) / (2 * Math.PI)),
    verdict: verdictOf(judged, chain),
    notes: [
      ...angleNotes(chain, shafts, judged, residual.accelerationRadPerS2 === null),
      ...forkNotes(phasingDeg, twistHarms),
    ],
  };
};

/**
 * Forks in line do not say that the joints cancel; forks out of line say that they do not. Where nothing is judged of a
 * joint, as of a constant-velocity one, the driveline as a whole is not called inside.
 */
const verdictOf = (judged: readonly JudgedNumber[], { joints }: AngleChain): AngleJudgment['verdict'] => {
  if (judged.some(({ inside }) => !inside)) return 'outside';
  const says = judged.some(({ limit: { id } }) => id !== 'fork-twist' && id !== 'flexible-disc-angle');
  const allDiscs = joints.every(({ kind }) => kind === 'flexible-disc');
  return (says || allDiscs) && joints.every(({ kind }) => kind !== 'constant-velocity') ? 'inside' : 'cannot-tell';
};
