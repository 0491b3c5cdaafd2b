/** Working angles held to their limits, and what to say about them. */
import type { Note } from '../../note.ts';
import { rpmFromHz } from '../../units.ts';
import type { AngleChain } from './angle-chain.ts';
import { isTwisted, outOfLineDeg } from './forks.ts';
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

/** Below this equivalent angle (degrees) there is nothing left to speak of, and no speed limit to give. */
const NOTHING_LEFT_DEG = 0.01;

/**
 * Hold angles to the limits. The accelerations decide, where a speed is known, and for a one-piece shaft the
 * difference of its two angles: at low speed a shaft may be far from equal angles and still inside its accelerations.
 * Twist of the forks decides at any speed, but only where forks in line would leave less: some are set out of line.
 */
export const judgeAngles = (
  facts: AngleFacts,
  { phasingDeg = [], limits }: { phasingDeg?: readonly number[] | undefined; limits?: LimitOverrides | undefined },
): AngleJudgment => {
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
    for (const { angleDeg } of joint.crosses) {
      advisory.push(judge(angleDeg, limit('joint-angle-least'), `joint ${index + 1} angle, for its needles to turn`));
    }
    if (joint.kind === 'cross') {
      advisory.push(judge(joint.angleDeg, limit('joint-angle-most'), `joint ${index + 1} angle, at road speed`));
    }
    const [frontHalf, rearHalf] = joint.crosses;
    if (frontHalf && rearHalf) {
      const split = Math.abs(frontHalf.angleDeg - rearHalf.angleDeg);
      advisory.push(judge(split, limit('double-cardan-split'), `joint ${index + 1}, difference of its half-angles`));
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
    verdict: verdictOf(judged),
    notes: [
      ...angleNotes(chain, judged.length > 0 && residual.accelerationRadPerS2 === null),
      ...forkNotes(phasingDeg, twistHarms),
    ],
  };
};

/** Forks in line do not say that the joints cancel; forks out of line say that they do not. */
const verdictOf = (judged: readonly JudgedNumber[]): AngleJudgment['verdict'] =>
  judged.some(({ inside }) => !inside)
    ? 'outside'
    : judged.some(({ limit }) => limit.id !== 'fork-twist')
      ? 'inside'
      : 'cannot-tell';

const angleNotes = (chain: AngleChain, noSpeed: boolean): Note[] => {
  const notes: Note[] = [
    {
      code: 'ride-height',
      severity: 'info',
      text: 'Angles count only with the vehicle at ride height, its weight on the wheels or the axle supported there.',
    },
  ];
  if (noSpeed) {
    notes.push({
      code: 'no-speed',
      severity: 'warning',
      text: 'Without the driveshaft speed only forks and the difference of the two angles can be judged, not the acceleration.',
    });
  }
  if (chain.joints.some((joint) => Math.abs(outOfLineDeg(joint.planeTurnDeg)) > 1 && joint.angleDeg > 0.5)) {
    notes.push({
      code: 'joint-planes-differ',
      severity: 'info',
      text: 'The joints do not work in one plane, so equal angles alone do not cancel; the residual takes this in.',
    });
  }
  return notes;
};

const forkNotes = (phasingDeg: readonly number[], twistHarms: boolean): Note[] =>
  phasingDeg.flatMap((twistDeg, index): Note[] => {
    if (!isTwisted(twistDeg)) return [];
    const head = `The forks of shaft piece ${index + 1} stand ${Math.abs(outOfLineDeg(twistDeg)).toFixed(1)}° out of line`;
    return [
      twistHarms
        ? {
            code: 'forks-twisted',
            severity: 'warning',
            text: `${head}. Unless the maker set them so, they belong in line.`,
          }
        : {
            code: 'forks-set-so',
            severity: 'info',
            text: `${head}, but in line they would leave no less: the maker may have set them so. Compare before turning them.`,
          },
    ];
  });
