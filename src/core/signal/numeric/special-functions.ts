/**
 * The few special functions behind the tail probabilities, in logarithms so that far tails do not underflow.
 *
 * Sources: C. Lanczos, SIAM J. Numer. Anal. 1 (1964) for lnΓ (the nine-term coefficients for g = 7 are from memory;
 * checked against SciPy); W. Gautschi's and Lentz's continued fractions as given in the NIST Digital Library of
 * Mathematical Functions, 8.9.2 (incomplete gamma) and 8.17.22 (incomplete beta).
 */

const LANCZOS_G = 7;
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** ln Γ(x) for x > 0. Relative accuracy about 1e-14. */
export const lnGamma = (x: number): number => {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - lnGamma(1 - x);
  // Stirling's series (DLMF 5.11.1) is exact to rounding from here and loses nothing for large x.
  if (x > 40) {
    const r = 1 / (x * x);
    const tail = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r / 1680))) / x;
    return (x - 0.5) * Math.log(x) - x + 0.5 * Math.log(2 * Math.PI) + tail;
  }
  const y = x - 1;
  let sum: number = LANCZOS[0];
  for (let i = 1; i < LANCZOS.length; i++) sum += LANCZOS[i]! / (y + i);
  const t = y + LANCZOS_G + 0.5;
  return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
};

const TINY = 1e-300;
const EPSILON = 5e-16;
/** Far more than any argument met here needs (the count grows as √a); reached only by a bug. */
const MOST_STEPS = 100_000;

/** Σ of the ascending series of the lower incomplete gamma function, DLMF 8.7.1, as a logarithm of P(a, x). */
const lnLowerBySeries = (a: number, x: number): number => {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MOST_STEPS; n++) {
    term *= x / (a + n);
    sum += term;
    if (!(term >= sum * EPSILON)) break;
  }
  return a * Math.log(x) - x - lnGamma(a) + Math.log(sum);
};

/** Continued fraction of the upper incomplete gamma function, as a logarithm of Q(a, x). */
const lnUpperByFraction = (a: number, x: number): number => {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < MOST_STEPS; i++) {
    const an = -i * (i - a);
    b += 2;
    d = an * d + b;
    if (Math.abs(d) < TINY) d = TINY;
    c = b + an / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    const step = d * c;
    h *= step;
    if (!(Math.abs(step - 1) >= EPSILON)) break;
  }
  return a * Math.log(x) - x - lnGamma(a) + Math.log(h);
};

/** ln(1 − e^y) for y < 0 without cancellation. */
const lnOneMinusExp = (y: number): number => (y > -Math.LN2 ? Math.log(-Math.expm1(y)) : Math.log1p(-Math.exp(y)));

/** ln P(a, x), P the regularised lower incomplete gamma function; a > 0, x ≥ 0. */
export const lnGammaLower = (a: number, x: number): number => {
  if (x <= 0) return -Infinity;
  if (x === Infinity) return 0;
  return x < a + 1 ? Math.min(0, lnLowerBySeries(a, x)) : lnOneMinusExp(Math.min(-1e-320, lnUpperByFraction(a, x)));
};

/** ln Q(a, x) = ln(1 − P(a, x)); accurate into the far tail. */
export const lnGammaUpper = (a: number, x: number): number => {
  if (x <= 0) return 0;
  // Noise of no power at all under a line: the fraction below would never end.
  if (x === Infinity) return -Infinity;
  return x < a + 1 ? lnOneMinusExp(Math.min(-1e-320, lnLowerBySeries(a, x))) : Math.min(0, lnUpperByFraction(a, x));
};

const betaFraction = (a: number, b: number, x: number): number => {
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  if (Math.abs(d) < TINY) d = TINY;
  d = 1 / d;
  let h = d;
  for (let m = 1; m < MOST_STEPS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 + even * d;
    if (Math.abs(d) < TINY) d = TINY;
    c = 1 + even / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 + odd * d;
    if (Math.abs(d) < TINY) d = TINY;
    c = 1 + odd / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    const step = d * c;
    h *= step;
    if (!(Math.abs(step - 1) >= EPSILON)) break;
  }
  return h;
};

/**
 * ln I_x(a, b), I the regularised incomplete beta function, 0 ≤ x ≤ 1. Both x and its complement are taken, so that
 * neither end loses digits.
 */
export const lnBetaLower = (a: number, b: number, x: number, oneMinusX: number = 1 - x): number => {
  if (x <= 0) return -Infinity;
  if (oneMinusX <= 0) return 0;
  const front = lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log(oneMinusX);
  if (x < (a + 1) / (a + b + 2)) return Math.min(0, front - Math.log(a) + Math.log(betaFraction(a, b, x)));
  const other = front - Math.log(b) + Math.log(betaFraction(b, a, oneMinusX));
  return lnOneMinusExp(Math.min(-1e-320, other));
};

/** Modified Bessel function of order zero by its power series (DLMF 10.25.2). */
export const besselI0 = (x: number): number => {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-16; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
};

/** From here on the large-argument series, five terms of it, is exact to a double's last digits but a few. */
const LARGE_ARGUMENT = 30;

/** ln of the same, also where it would overflow: for large x ln I₀ = x − ½·ln 2πx + ln(1 + 1/8x + 9/128x² + …) (DLMF 10.40.1). */
export const logBesselI0 = (x: number): number => {
  if (x < LARGE_ARGUMENT) return Math.log(besselI0(x));
  let term = 1;
  let sum = 1;
  for (let k = 1; k <= 5; k++) {
    term *= (2 * k - 1) ** 2 / (8 * k * x);
    sum += term;
  }
  return x - 0.5 * Math.log(2 * Math.PI * x) + Math.log(sum);
};
