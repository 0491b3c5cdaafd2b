/** End play of a joint along each of its two axes, read on a dial, against its limit. */
import type { Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import type { JudgedNumber, LimitOverrides } from '../limits/limit.ts';
import { judge, limitOf } from '../limits/limit.ts';

export interface EndPlayJudgment {
  readonly axes: readonly [JudgedNumber, JudgedNumber];
  readonly inside: boolean;
  /** How far off centre the play lets the shaft sit, mm: half the play on each axis, as a vector. */
  readonly freeOffsetMm: number;
}

/**
 * Hold dial readings to the end-play limit: 0.05 mm (0.002 in) by default, too little to feel by hand.
 * @param axisPlayMm total movement along each axis, mm, not negative
 */
export const judgeEndPlay = (
  axisPlayMm: readonly [number, number],
  limits?: LimitOverrides,
): Result<EndPlayJudgment> => {
  if (!axisPlayMm.every((play) => Number.isFinite(play) && play >= 0)) {
    return failure({
      code: 'end-play-not-a-distance',
      key: 'axisPlayMm',
      message: `End play of ${axisPlayMm.join(' mm and ')} mm is not two distances.`,
      remedy: 'Push the joint both ways along each axis and enter how far the dial moved, in mm, 0 if it did not.',
    });
  }
  const limit = limitOf('end-play', limits);
  const [one, two] = axisPlayMm;
  const axes = [judge(one, limit, 'end play, first axis'), judge(two, limit, 'end play, second axis')] as const;
  return success({ axes, inside: axes.every((axis) => axis.inside), freeOffsetMm: Math.hypot(one, two) / 2 });
};
