/**
 * The Fourier transform. The only file that imports fft.js, whose kernel takes powers of two on plain arrays; here it
 * gets types, a cache of plans, two real inputs for one complex transform, and any other length by Bluestein's way.
 */
import FftKernel from 'fft.js';

/** Typed view of the kernel; its own declarations say `any`. Complex data are interleaved: re, im, re, im, … */
interface Kernel {
  createComplexArray(): number[];
  transform(out: number[], input: number[]): void;
  realTransform(out: number[], input: number[]): void;
}

interface Plan {
  readonly kernel: Kernel;
  readonly input: number[];
  readonly output: number[];
}

/** Plans cost ten transforms to make; a run needs a handful of sizes. The big ones are not kept for ever. */
const plans = new Map<number, Plan>();
const MOST_PLANS = 24;

const planFor = (size: number): Plan => {
  let plan = plans.get(size);
  if (!plan) {
    if (plans.size >= MOST_PLANS) plans.clear();
    const kernel = new FftKernel(size) as unknown as Kernel;
    plan = { kernel, input: kernel.createComplexArray(), output: kernel.createComplexArray() };
    plans.set(size, plan);
  }
  return plan;
};

/** Real and imaginary parts. Of a real input only bins 0 … N/2 are kept. */
export interface ComplexArray {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export const complexArray = (length: number): ComplexArray => ({
  re: new Float64Array(length),
  im: new Float64Array(length),
});

export const isPowerOfTwo = (n: number): boolean => n >= 1 && Number.isInteger(Math.log2(n));

/** Smallest power of two that is not less than n (n ≥ 1). */
export const powerOfTwoAtLeast = (n: number): number => 2 ** Math.ceil(Math.log2(Math.max(1, n)));

/**
 * Spectrum of a real input: X_k = Σ x[n]·e^(−j2πkn/size), k = 0 … ⌊size/2⌋, not scaled.
 * @param input samples; shorter than size means zeros follow (ask for it knowingly, it adds no resolution)
 * @param size transform length, any whole number ≥ 1
 */
export const realSpectrum = (input: Float64Array, size: number, out?: ComplexArray): ComplexArray => {
  const bins = Math.floor(size / 2) + 1;
  const result = out ?? complexArray(bins);
  if (size < 2 || !isPowerOfTwo(size)) {
    const whole = complexArray(size);
    whole.re.set(input.length > size ? input.subarray(0, size) : input);
    const full = complexSpectrum(whole);
    result.re.set(full.re.subarray(0, bins));
    result.im.set(full.im.subarray(0, bins));
    return result;
  }
  const { kernel, input: data, output } = planFor(size);
  const n = Math.min(size, input.length);
  for (let i = 0; i < n; i++) data[i] = input[i]!;
  for (let i = n; i < size; i++) data[i] = 0;
  kernel.realTransform(output, data);
  for (let k = 0; k < bins; k++) {
    result.re[k] = output[2 * k]!;
    result.im[k] = output[2 * k + 1]!;
  }
  return result;
};

/**
 * Spectra of two real inputs by one complex transform (x + jy; the halves are told apart by their symmetry).
 * Size must be a power of two. Same scaling as `realSpectrum`.
 */
export const realSpectrumPair = (
  first: Float64Array,
  second: Float64Array,
  size: number,
  outFirst: ComplexArray,
  outSecond: ComplexArray,
): void => {
  const { kernel, input, output } = planFor(size);
  const n = Math.min(size, first.length);
  for (let i = 0; i < n; i++) {
    input[2 * i] = first[i]!;
    input[2 * i + 1] = second[i]!;
  }
  for (let i = 2 * n; i < 2 * size; i++) input[i] = 0;
  kernel.transform(output, input);
  const half = size >>> 1;
  for (let k = 0; k <= half; k++) {
    const mirror = k === 0 ? 0 : size - k;
    const ar = output[2 * k]!;
    const ai = output[2 * k + 1]!;
    const br = output[2 * mirror]!;
    const bi = output[2 * mirror + 1]!;
    outFirst.re[k] = 0.5 * (ar + br);
    outFirst.im[k] = 0.5 * (ai - bi);
    outSecond.re[k] = 0.5 * (ai + bi);
    outSecond.im[k] = 0.5 * (br - ar);
  }
};

/** Complex transform of any length, forward, not scaled. */
export const complexSpectrum = (input: ComplexArray): ComplexArray => {
  const size = input.re.length;
  if (size === 1) return { re: input.re.slice(), im: input.im.slice() };
  if (!isPowerOfTwo(size)) return bluestein(input);
  const { kernel, input: data, output } = planFor(size);
  for (let i = 0; i < size; i++) {
    data[2 * i] = input.re[i]!;
    data[2 * i + 1] = input.im[i]!;
  }
  kernel.transform(output, data);
  const result = complexArray(size);
  for (let k = 0; k < size; k++) {
    result.re[k] = output[2 * k]!;
    result.im[k] = output[2 * k + 1]!;
  }
  return result;
};

/** Inverse of `complexSpectrum`, scaled by 1/N so that one undoes the other. */
export const inverseComplexSpectrum = (input: ComplexArray): ComplexArray => {
  // Swapping re and im before and after turns a forward transform into a backward one.
  const { re, im } = complexSpectrum({ re: input.im, im: input.re });
  const scale = 1 / re.length;
  return { re: im.map((v) => v * scale), im: re.map((v) => v * scale) };
};

/**
 * Any length as a convolution with a chirp (L. I. Bluestein, IEEE Trans. AU-18(4), 1970, 451–455): nk = (n² + k² −
 * (k − n)²)/2. The chirp's angle is reduced by whole turns in integers, which keeps full accuracy at large n.
 */
const bluestein = (input: ComplexArray): ComplexArray => {
  const n = input.re.length;
  const m = powerOfTwoAtLeast(2 * n - 1);
  const cos = new Float64Array(n);
  const sin = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const angle = (Math.PI * ((i * i) % (2 * n))) / n;
    cos[i] = Math.cos(angle);
    sin[i] = Math.sin(angle);
  }
  const a = complexArray(m);
  const b = complexArray(m);
  for (let i = 0; i < n; i++) {
    a.re[i] = input.re[i]! * cos[i]! + input.im[i]! * sin[i]!;
    a.im[i] = input.im[i]! * cos[i]! - input.re[i]! * sin[i]!;
    b.re[i] = cos[i]!;
    b.im[i] = sin[i]!;
    if (i > 0) {
      b.re[m - i] = cos[i]!;
      b.im[m - i] = sin[i]!;
    }
  }
  const fa = complexSpectrum(a);
  const fb = complexSpectrum(b);
  for (let i = 0; i < m; i++) {
    const re = fa.re[i]! * fb.re[i]! - fa.im[i]! * fb.im[i]!;
    fa.im[i] = fa.re[i]! * fb.im[i]! + fa.im[i]! * fb.re[i]!;
    fa.re[i] = re;
  }
  const c = inverseComplexSpectrum(fa);
  const out = complexArray(n);
  for (let k = 0; k < n; k++) {
    out.re[k] = c.re[k]! * cos[k]! + c.im[k]! * sin[k]!;
    out.im[k] = c.im[k]! * cos[k]! - c.re[k]! * sin[k]!;
  }
  return out;
};
