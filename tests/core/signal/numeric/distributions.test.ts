import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chiSquaredTailQuantile,
  fLogTail,
  gammaLogTail,
  gammaTailQuantile,
  medianOverMean,
  normalLogDensity,
  normalLogTail,
  normalTail,
  normalTailQuantile,
} from '../../../../src/core/signal/numeric/distributions.ts';
import {
  besselI0,
  lnBetaLower,
  lnGamma,
  lnGammaLower,
  lnGammaUpper,
  logBesselI0,
} from '../../../../src/core/signal/numeric/special-functions.ts';
import { tails } from '../../../reference/signal.json' with { type: 'json' };
import { fTailQuantile } from '../../../support/f-quantile.ts';

/** Relative, or absolute near a logarithm of one. */
const near = (own: number, known: number, tolerance = 1e-10): void => {
  expect(Math.abs(own - known) / Math.max(Math.abs(known), 1e-3), `${own} for ${known}`).toBeLessThan(tolerance);
};

describe('special functions against SciPy and mpmath (tests/reference/make_signal.py)', () => {
  it('of the incomplete gamma function ends at once at infinity, where noise has no power at all', () => {
    expect(lnGammaUpper(3, Infinity)).toBe(-Infinity);
    expect(lnGammaLower(3, Infinity)).toBe(0);
    expect(lnGammaUpper(3, Number.NaN)).toBeNaN();
  });

  it.each(tails.lnGamma as [number, number][])('ln Γ(%f)', (x, known) => near(lnGamma(x), known, 1e-12));

  // DLMF 5.4.6: Γ(½) = √π; Γ(1/3) and Γ(1/4) to 15 digits from memory (mathematical tables); DLMF 5.5.3: reflection.
  it('ln Γ below one half', () => {
    near(lnGamma(0.5), 0.5 * Math.log(Math.PI), 1e-13);
    near(lnGamma(1 / 3), Math.log(2.678938534707747), 1e-13);
    near(lnGamma(0.25), Math.log(3.625609908221908), 1e-13);
    near(lnGamma(0.25) + lnGamma(0.75), Math.log(Math.PI * Math.SQRT2), 1e-13);
  });

  it.each(tails.gamma as [number, number, number, number][])('ln P and ln Q of %f, %f', (a, x, lower, upper) => {
    near(lnGammaUpper(a, x), upper);
    near(gammaLogTail(x, a), upper);
    // A lower part within 1e-17 of one is one.
    if (lower < -1e-17) near(Math.log(-lnGammaLower(a, x)), Math.log(-lower), 1e-6);
    else expect(Math.abs(lnGammaLower(a, x))).toBeLessThan(1e-15);
    if (lower < -1e-3) near(lnGammaLower(a, x), lower);
    if (upper > -1e-3) near(Math.log(-lnGammaUpper(a, x)), Math.log(-upper), 1e-9);
  });

  it.each(tails.beta as [number, number, number, number][])('I(%f, %f) at %f', (a, b, x, known) =>
    near(lnBetaLower(a, b, x), Math.log(known)),
  );

  it.each(tails.besselI0 as [number, number][])('I₀(%f)', (x, known) => near(besselI0(x), known, 1e-14));

  it.each(tails.logBesselI0 as [number, number][])('ln I₀(%f)', (x, known) => near(logBesselI0(x), known, 1e-8));
});

/** ln P(X > x), X χ² with the given degrees of freedom: gamma of half of both. */
const chiSquaredLogTail = (x: number, degrees: number): number => gammaLogTail(0.5 * x, 0.5 * degrees);

describe('tails, far into them', () => {
  it.each(tails.chiSquared as [number, number, number][])('P(χ² > %f), %f degrees', (x, k, known) => {
    near(chiSquaredLogTail(x, k), Math.log(known));
  });

  it.each(tails.normal as [number, number][])('P(Z > %f)', (z, known) => {
    near(Math.log(-normalLogTail(z)), Math.log(-known), 1e-9);
    if (known > -700) near(normalTail(z), Math.exp(known), 1e-9);
  });

  it('of no number are none', () => expect(normalTail(Number.NaN)).toBeNaN());

  it.each(tails.f as [number, number, number, number][])('P(F > %f), %f and %f degrees', (x, above, below, known) =>
    near(fLogTail(x, above, below), known),
  );

  it.each(tails.fScipy as [number, number, number, number][])('SciPy’s F tail at %f', (x, above, below, known) =>
    near(Math.exp(fLogTail(x, above, below)), known),
  );

  it('F with many degrees below is χ² over its degrees', () => {
    near(fLogTail(4, 6, 1e9), chiSquaredLogTail(24, 6), 1e-6);
    expect(fLogTail(0, 3, 4)).toBe(0);
    expect(fLogTail(-1, 3, 4)).toBe(0);
  });

  it('gamma of whole shape is a Poisson sum: P(X > x) = e⁻ˣ Σ xᵏ/k!', () => {
    for (const shape of [1, 2, 5, 9]) {
      for (const x of [0.2, 1, 6, 30]) {
        let term = Math.exp(-x);
        let sum = term;
        for (let k = 1; k < shape; k += 1) sum += term *= x / k;
        near(Math.exp(gammaLogTail(x, shape)), sum, 1e-12);
      }
    }
  });

  it('the normal density: −½ ln 2π at zero', () => {
    expect(normalLogDensity(0)).toBeCloseTo(-0.918938533204672742, 14);
    expect(normalLogDensity(3)).toBeCloseTo(-0.918938533204672742 - 4.5, 14);
  });
});

describe('quantiles', () => {
  it.each(tails.gammaQuantile as [number, number, number][])('gamma at %f, shape %f (SciPy)', (p, a, known) =>
    near(gammaTailQuantile(p, a), known),
  );
  it.each(tails.normalQuantile as [number, number][])('normal at %f (SciPy)', (p, known) => {
    if (known === 0) expect(normalTailQuantile(p)).toBe(0);
    else near(normalTailQuantile(p), known);
  });
  it.each(tails.fQuantile as [number, number, number, number][])('F at %f (SciPy)', (p, a, b, known) =>
    near(fTailQuantile(p, a, b), known),
  );

  it('undo the tails over the whole range', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -300, max: -1e-3, noNaN: true }),
        fc.double({ min: 0.2, max: 400, noNaN: true }),
        (log, shape) => {
          near(gammaLogTail(gammaTailQuantile(Math.exp(log), shape), shape), log, 1e-8);
        },
      ),
      { numRuns: 100, seed: 4 },
    );
  });

  it('χ²: 3.841459 leaves 5 % at one degree, and averaged powers pass 6.9078 and 1.9527 times their mean once in 1000', () => {
    expect(chiSquaredTailQuantile(0.05, 1)).toBeCloseTo(3.841458820694124, 10);
    // χ² with 2K degrees over 2K, K 1 and 16: −ln 10⁻³ and a tabled value.
    expect(chiSquaredTailQuantile(1e-3, 2) / 2).toBeCloseTo(-Math.log(1e-3), 10);
    expect(chiSquaredTailQuantile(1e-3, 32) / 32).toBeCloseTo(1.9527, 4);
  });

  it('the median of averaged powers over their mean: ln 2, 0.8391735, 0.918015, 0.958656, 0.989603', () => {
    [
      [1, Math.LN2],
      [2, 0.8391735],
      [4, 0.918015],
      [8, 0.958656],
      [32, 0.989603],
    ].forEach(([k, ratio]) => expect(medianOverMean(k!)).toBeCloseTo(ratio!, 6));
  });
});
