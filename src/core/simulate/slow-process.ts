/** Quantities that wander slowly about zero, one value after each further step. */
import type { RandomSource } from './random.ts';

/**
 * A smooth wander of unit variance: white noise through two equal memories in a row, so that its rate is finite.
 * A driver's foot on a long road moves the speed like this, and tire and load the level of an order.
 * @param timeConstantS Of each memory. @param stepS Time between values.
 * @returns A function giving the value at each further step, from the steady state on.
 */
export const smoothWander = (timeConstantS: number, stepS: number, random: RandomSource): (() => number) => {
  const keep = Math.exp(-stepS / timeConstantS);
  const fresh = Math.sqrt(1 - keep * keep);
  // In the steady state the second memory has half the variance of the first and a covariance of one half.
  let first = random.normal();
  let second = 0.5 * first + 0.5 * random.normal();
  return () => {
    const now = second * Math.SQRT2;
    second = keep * second + (1 - keep) * first;
    first = keep * first + fresh * random.normal();
    return now;
  };
};
