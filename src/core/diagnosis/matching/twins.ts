/**
 * Origins that turn in one ratio: where one stands, there stands the other, and no frequency tells them apart. What is
 * left to choose by is the table of levels, which is judgment: it may make one of them likelier, but not sure.
 */
import type { Origin } from '../origins/origin.ts';

/** Rates closer than this share are not told apart in a minute: a bin of 1/60 Hz at 40 Hz. */
const SAME_RATIO = 5e-4;
/** Judgment gives no more than this share to one of two that nothing measured tells apart. */
const MOST_SHARE = 0.7;
/** The table of levels makes no twin less likely than this beside the other; a place that is off does. */
const ELSEWHERE = 1e-4;
/** An order that is at fault less often than this is no rival. */
const LEAST_PRIOR = 0.02;

const isRival = ({ levels }: Origin): boolean => levels.fault.presence >= LEAST_PRIOR;

/** True of two that turn in one ratio. */
export const turnAlike = (one: Origin, other: Origin): boolean => Math.abs(other.trueHz / one.trueHz - 1) < SAME_RATIO;

/** For each origin, the others that turn in the same ratio and may as well be at fault. */
export const twinsOf = (origins: readonly Origin[]): ReadonlyMap<Origin, readonly Origin[]> =>
  new Map(
    origins.map((origin) => [
      origin,
      isRival(origin) ? origins.filter((other) => other !== origin && isRival(other) && turnAlike(origin, other)) : [],
    ]),
  );

/** An origin's weight with its twins' beside it, the greatest of them held to its share; their sum stays. */
export const amongTwins = (own: number, twins: readonly number[]): number => {
  const sum = twins.reduce((a, b) => a + b, own);
  const most = Math.max(own, ...twins);
  const rest = sum - most;
  // What a slipping converter has moved elsewhere is no twin here: its weight is nothing, and frequency has told.
  if (twins.length === 0 || !(rest > ELSEWHERE * most) || most <= MOST_SHARE * sum) return own;
  return own === most ? MOST_SHARE * sum : (own * (1 - MOST_SHARE) * sum) / rest;
};
