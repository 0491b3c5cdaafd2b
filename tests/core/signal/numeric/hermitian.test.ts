import { describe, expect, it } from 'vitest';
import {
  identity,
  inverse,
  loudestDirection,
  meanMatrix,
  offDiagonal,
  outer,
  packedLength,
  sandwich,
  times,
  trace,
  traceOfProduct,
  unitFactor,
} from '../../../../src/core/signal/numeric/hermitian.ts';
import { hermitian } from '../../../reference/signal.json' with { type: 'json' };
import { worstRelative } from '../made.ts';

const packed = (values: readonly number[]): Float64Array => Float64Array.from(values);

/** Random positive definite matrices worked through by numpy and scipy.linalg: tests/reference/make_signal.py. */
describe.each(hermitian.map((c) => [c.axes, c] as const))('Hermitian matrices of %i axes', (axes, c) => {
  const noise = packed(c.noise);
  const line = packed(c.line);

  it('traces, inverse and product with a vector', () => {
    expect(packedLength(axes)).toBe(noise.length);
    expect(trace(axes, line)).toBeCloseTo(c.trace, 10);
    expect(traceOfProduct(axes, noise, line) / c.traceOfProduct).toBeCloseTo(1, 12);
    expect(worstRelative(Array.from(inverse(axes, noise)), c.inverse)).toBeLessThan(1e-10);
    expect(traceOfProduct(axes, identity(axes), line)).toBeCloseTo(c.trace, 10);
    const { re, im } = times(axes, line, c.vector);
    expect(worstRelative([...re, ...im], [...c.times.re, ...c.times.im])).toBeLessThan(1e-11);
  });

  it('the direction in which one stands highest over the other: scipy.linalg.eigh’s last vector, v·vᴴ', () => {
    const own = loudestDirection(axes, inverse(axes, noise), line);
    const size = Math.max(...c.loudest.map(Math.abs));
    c.loudest.forEach((v, q) => expect(Math.abs(own[q]! - v) / size).toBeLessThan(1e-4));
    // Scaled to vᴴΣv = 1.
    expect(traceOfProduct(axes, own, noise)).toBeCloseTo(1, 4);
  });

  it('v·vᴴ against a matrix is vᴴAv', () => {
    const v = c.vector;
    const av = times(axes, line, v);
    const quadratic = v.re.reduce((sum, re, i) => sum + re * av.re[i]! + v.im[i]! * av.im[i]!, 0);
    expect(traceOfProduct(axes, outer(axes, v), line) / quadratic).toBeCloseTo(1, 12);
  });
});

describe('products and means', () => {
  it('A⁻¹·A·A⁻¹ is A⁻¹, and A·vvᴴ·A is (Av)(Av)ᴴ', () => {
    const c = hermitian.find(({ axes }) => axes === 3)!;
    const a = packed(c.noise);
    const inverted = inverse(3, a);
    expect(worstRelative(Array.from(sandwich(3, inverted, a)), Array.from(inverted))).toBeLessThan(1e-9);
    const expected = outer(3, times(3, a, c.vector));
    expect(worstRelative(Array.from(sandwich(3, a, outer(3, c.vector))), Array.from(expected))).toBeLessThan(1e-10);
  });

  it('the mean of two, entry by entry', () => {
    expect(Array.from(meanMatrix([packed([1, 2, 3, 4]), packed([3, 2, 1, 0])]))).toEqual([2, 2, 2, 2]);
  });
});

describe('the unit factor', () => {
  it('of a matrix of two by hand: the entry below the diagonal over the last one', () => {
    // [[2, 1 + 2j], [1 − 2j, 4]]: the last row over 4.
    expect(unitFactor(2, packed([2, 4, 1, 2]))).toEqual([[], [{ re: 0.25, im: -0.5 }]]);
    expect(unitFactor(1, packed([3]))).toEqual([[]]);
  });

  it('Mᴴ·D·M, D = diag of M⁻ᴴ·A·M⁻¹, is the matrix again', () => {
    const c = hermitian.find(({ axes }) => axes === 3)!;
    const a = packed(c.noise);
    const rows = unitFactor(3, a);
    // Each row of M as a vector, ones on the diagonal; A = Σ dᵢ·mᵢᴴ·mᵢ, and dᵢ stands in what is left of A at (i, i).
    let left = a;
    for (const axis of [2, 1, 0]) {
      const row = rows[axis]!;
      const padded = (of: (one: { re: number; im: number }) => number, own: number): number[] =>
        [0, 1, 2].map((j) => (j < axis ? of(row[j]!) : j === axis ? own : 0));
      const re = padded((one) => one.re, 1);
      const im = padded((one) => -one.im, 0);
      const d = left[axis]!;
      expect(d).toBeGreaterThan(0);
      const made = outer(3, { re, im });
      left = left.map((entry, q) => entry - d * made[q]!);
    }
    left.forEach((entry) => expect(Math.abs(entry)).toBeLessThan(1e-12 * trace(3, a)));
  });
});

describe('the packing', () => {
  it('puts the diagonal first, then re and im of (0,1), (0,2), (1,2); im as of v₀·conj v₁', () => {
    expect([offDiagonal(3, 0, 1), offDiagonal(3, 0, 2), offDiagonal(3, 1, 2), offDiagonal(2, 0, 1)]).toEqual([
      3, 5, 7, 2,
    ]);
    // v = (j, 1): v₀·conj v₁ = j.
    expect(Array.from(outer(2, { re: [0, 1], im: [1, 0] }))).toEqual([1, 1, 0, 1]);
  });
});
