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

describe('the packing', () => {
  it('puts the diagonal first, then re and im of (0,1), (0,2), (1,2); im as of v₀·conj v₁', () => {
    expect([offDiagonal(3, 0, 1), offDiagonal(3, 0, 2), offDiagonal(3, 1, 2), offDiagonal(2, 0, 1)]).toEqual([
      3, 5, 7, 2,
    ]);
    // v = (j, 1): v₀·conj v₁ = j.
    expect(Array.from(outer(2, { re: [0, 1], im: [1, 0] }))).toEqual([1, 1, 0, 1]);
  });
});
