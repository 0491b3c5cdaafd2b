/**
 * Tail probabilities and quantiles of the normal, χ², gamma and F distributions, accurate in relative terms far into
 * the tail (a false-alarm probability of 1e-30 is a number here, not zero).
 *
 * Formulas: NIST Digital Library of Mathematical Functions, chapters 7 and 8. Tested against SciPy.
 */
import { lnBetaLower, lnGammaLower, lnGammaUpper } from './special-functions.ts';

/** ln P(Z > z) for a standard normal Z; not a number of what is none. */
export const normalLogTail = (z: number): number => {
  if (Number.isNaN(z)) return NaN;
  return z >= 0 ? lnGammaUpper(0.5, 0.5 * z * z) - Math.LN2 : Math.log1p(-Math.exp(normalLogTail(-z)));
};

/** P(Z > z) for a standard normal Z. */
export const normalTail = (z: number): number => Math.exp(normalLogTail(z));

/** ln P(X > x), X gamma with the given shape and scale 1. */
export const gammaLogTail = (x: number, shape: number): number => lnGammaUpper(shape, x);

/** ln P(X > x), X of F distribution with the given degrees of freedom above and below. */
export const fLogTail = (x: number, above: number, below: number): number => {
  if (x <= 0) return 0;
  const denominator = below + above * x;
  return lnBetaLower(0.5 * below, 0.5 * above, below / denominator, (above * x) / denominator);
};

/** Root of a monotone function by bracketing and bisection-guarded secant steps. */
const solve = (f: (x: number) => number, low: number, high: number): number => {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  for (let i = 0; i < 200 && Math.abs(b - a) > 4e-16 * (Math.abs(a) + Math.abs(b)); i++) {
    // Alternate: the secant step is fast, the halving keeps the bracket shrinking.
    let x = i % 3 === 2 ? 0.5 * (a + b) : b - (fb * (b - a)) / (fb - fa);
    if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = 0.5 * (a + b);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0 === fa > 0) [a, fa] = [x, fx];
    else [b, fb] = [x, fx];
  }
  return 0.5 * (a + b);
};

/** x with P(X > x) = tail, X gamma with the given shape and scale 1; 0 < tail < 1. */
export const gammaTailQuantile = (tail: number, shape: number): number => {
  // ln is taken of whichever side is small, so that both far ends keep their digits.
  const upper = tail < 0.5;
  const target = upper ? Math.log(tail) : Math.log1p(-tail);
  const f = (x: number): number => (upper ? target - lnGammaUpper(shape, x) : lnGammaLower(shape, x) - target);
  let low = shape;
  let high = shape;
  while (f(low) > 0) low *= 0.5;
  while (f(high) < 0) high = 2 * high + 1;
  return solve(f, low, high);
};

/** x with P(X > x) = tail, X χ² with the given degrees of freedom. */
export const chiSquaredTailQuantile = (tail: number, degrees: number): number =>
  2 * gammaTailQuantile(tail, 0.5 * degrees);

/** z with P(Z > z) = tail, Z standard normal; 0 < tail < 1. */
export const normalTailQuantile = (tail: number): number => {
  if (tail > 0.5) return -normalTailQuantile(1 - tail);
  return tail === 0.5 ? 0 : Math.sqrt(2 * gammaTailQuantile(2 * tail, 0.5));
};

/**
 * Median over mean of an average of `averages` independent exponential powers (χ² with 2·averages degrees of freedom).
 * 1 → ln 2; grows to 1. Dividing a running median of such powers by it gives their mean.
 */
export const medianOverMean = (averages: number): number => gammaTailQuantile(0.5, averages) / averages;

/** Natural logarithm of the normal density at z. */
export const normalLogDensity = (z: number): number => -0.5 * z * z - 0.5 * Math.log(2 * Math.PI);
