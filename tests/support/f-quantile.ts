/** Quantiles of the F distribution, for the studies’ intervals of a rate. */
import { fLogTail } from '../../src/core/signal/numeric/distributions.ts';

/** x with P(X > x) = tail, X of F distribution with the given degrees of freedom above and below. */
export const fTailQuantile = (tail: number, above: number, below: number): number => {
  const isBelow = (x: number): boolean => fLogTail(x, above, below) > Math.log(tail);
  let low = 0;
  let high = 1;
  while (isBelow(high)) high *= 2;
  for (let i = 0; i < 200; i += 1) {
    const middle = 0.5 * (low + high);
    if (isBelow(middle)) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
};
