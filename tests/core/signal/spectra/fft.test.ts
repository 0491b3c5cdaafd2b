import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  complexArray,
  complexSpectrum,
  inverseComplexSpectrum,
  isPowerOfTwo,
  powerOfTwoAtLeast,
  realSpectrum,
  realSpectrumPair,
  type ComplexArray,
} from '../../../../src/core/signal/spectra/fft.ts';
import { parkMiller } from '../made.ts';

/** The definition, X_k = Σ x[n]·e^(−j2πkn/N), summed as it stands. */
function plain(x: ComplexArray): ComplexArray {
  const n = x.re.length;
  const out = complexArray(n);
  for (let k = 0; k < n; k += 1) {
    for (let i = 0; i < n; i += 1) {
      const angle = (-2 * Math.PI * ((k * i) % n)) / n;
      out.re[k]! += x.re[i]! * Math.cos(angle) - x.im[i]! * Math.sin(angle);
      out.im[k]! += x.re[i]! * Math.sin(angle) + x.im[i]! * Math.cos(angle);
    }
  }
  return out;
}

function worst(a: ComplexArray, b: ComplexArray, bins = a.re.length): number {
  let most = 0;
  for (let k = 0; k < bins; k += 1) most = Math.max(most, Math.hypot(a.re[k]! - b.re[k]!, a.im[k]! - b.im[k]!));
  return most;
}

const random = (length: number, seed: number): ComplexArray => ({
  re: parkMiller(seed, length),
  im: parkMiller(seed + 1000, length),
});

describe('the Fourier transform against the plain sum', () => {
  it.each([1, 2, 3, 4, 5, 7, 8, 12, 15, 16, 31, 60, 64, 97, 100, 128, 250, 251, 256])('complex, length %i', (n) => {
    const x = random(n, n);
    expect(worst(complexSpectrum(x), plain(x))).toBeLessThan(1e-13 * n);
  });

  it.each([1, 2, 3, 4, 5, 9, 16, 25, 64, 101, 250, 256])('real, length %i: bins 0 … N/2 only', (n) => {
    const re = parkMiller(7 * n, n);
    const own = realSpectrum(re, n);
    expect(own.re.length).toBe(Math.floor(n / 2) + 1);
    expect(worst(own, plain({ re, im: new Float64Array(n) }), own.re.length)).toBeLessThan(1e-13 * n);
  });

  it('pads a short real input with zeros and cuts a long one, at a power of two and at any other size', () => {
    for (const size of [32, 33]) {
      const short = parkMiller(3, 20);
      const padded = complexArray(size);
      padded.re.set(short);
      expect(worst(realSpectrum(short, size), plain(padded), 16)).toBeLessThan(1e-12);
      const long = parkMiller(4, 50);
      const cut = { re: long.slice(0, size), im: new Float64Array(size) };
      expect(worst(realSpectrum(long, size), plain(cut), 16)).toBeLessThan(1e-12);
    }
  });

  it('leaves nothing of an earlier input behind in a plan that is used again', () => {
    realSpectrum(parkMiller(5, 64), 64);
    const first = complexArray(33);
    const second = complexArray(33);
    realSpectrumPair(parkMiller(6, 64), parkMiller(7, 64), 64, first, second);
    const short = parkMiller(8, 10);
    const padded = complexArray(64);
    padded.re.set(short);
    expect(worst(realSpectrum(short, 64), plain(padded), 33)).toBeLessThan(1e-12);
  });

  it.each([2, 8, 64])('two real inputs by one transform of %i are told apart', (n) => {
    const a = parkMiller(21, n);
    const b = parkMiller(22, n);
    const first = complexArray(n / 2 + 1);
    const second = complexArray(n / 2 + 1);
    realSpectrumPair(a, b, n, first, second);
    expect(worst(first, plain({ re: a, im: new Float64Array(n) }), n / 2 + 1)).toBeLessThan(1e-12);
    expect(worst(second, plain({ re: b, im: new Float64Array(n) }), n / 2 + 1)).toBeLessThan(1e-12);
  });

  it('is undone by its inverse, and keeps the energy (Parseval), at any length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 1e6 }), (n, seed) => {
        const x = random(n, seed);
        const spectrum = complexSpectrum(x);
        expect(worst(inverseComplexSpectrum(spectrum), x)).toBeLessThan(1e-12);
        const energy = (a: ComplexArray): number => a.re.reduce((sum, v, i) => sum + v * v + a.im[i]! ** 2, 0);
        expect(energy(spectrum) / n / energy(x)).toBeCloseTo(1, 11);
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  it('turns a delay by one sample into a phase of −2πk/N (shift theorem)', () => {
    const n = 45;
    const x = random(n, 9);
    const late = complexArray(n);
    for (let i = 0; i < n; i += 1) [late.re[(i + 1) % n], late.im[(i + 1) % n]] = [x.re[i]!, x.im[i]!];
    const a = complexSpectrum(x);
    const turned = complexArray(n);
    for (let k = 0; k < n; k += 1) {
      const [c, s] = [Math.cos((-2 * Math.PI * k) / n), Math.sin((-2 * Math.PI * k) / n)];
      turned.re[k] = a.re[k]! * c - a.im[k]! * s;
      turned.im[k] = a.re[k]! * s + a.im[k]! * c;
    }
    expect(worst(complexSpectrum(late), turned)).toBeLessThan(1e-12);
  });

  it('keeps its digits at a long prime length: a tone on a bin stands on that bin alone', () => {
    const n = 100_003;
    const x = Float64Array.from({ length: n }, (_, i) => Math.cos((2 * Math.PI * ((12_345 * i) % n)) / n));
    const { re, im } = realSpectrum(x, n);
    expect(re[12_345]! / (n / 2)).toBeCloseTo(1, 10);
    let elsewhere = 0;
    for (let k = 0; k < re.length; k += 1)
      if (k !== 12_345) elsewhere = Math.max(elsewhere, Math.hypot(re[k]!, im[k]!));
    expect(elsewhere / n).toBeLessThan(1e-11);
  });

  it('knows powers of two', () => {
    expect([1, 2, 1024].every(isPowerOfTwo)).toBe(true);
    expect([0, 3, 6, 1000].some(isPowerOfTwo)).toBe(false);
    expect([1, 2, 3, 1000, 1024, 1025].map(powerOfTwoAtLeast)).toEqual([1, 2, 4, 1024, 1024, 2048]);
  });
});
