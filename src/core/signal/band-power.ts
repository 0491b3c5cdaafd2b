/** A line's complex amplitude and whitened power in a band, at one frequency or over all of the band's. */
import { complexArray, complexSpectrum, powerOfTwoAtLeast } from './fft.ts';
import { offDiagonal, type ComplexVector, type Hermitian } from './hermitian.ts';
import type { Band } from './zoom.ts';

/** Complex amplitude of a line at f, per axis, at the clock's zero: Σ z·w·e^{−j2πft} / Σ g·w, g the envelope. */
export const amplitudeAt = (band: Band, frequencyHz: number): ComplexVector => {
  const angle = -2 * Math.PI * (frequencyHz - band.centreHz);
  const { weight, axes } = band;
  const n = weight.length;
  const scale = band.norm > 0 ? 1 / band.norm : 0;
  // The turning weight is the same for all axes.
  const turnRe = new Float64Array(n);
  const turnIm = new Float64Array(n);
  const stepRe = Math.cos(angle * band.stepS);
  const stepIm = Math.sin(angle * band.stepS);
  let c = Math.cos(angle * band.startS) * scale;
  let s = Math.sin(angle * band.startS) * scale;
  for (let i = 0; i < n; i++) {
    const w = weight[i]!;
    turnRe[i] = w * c;
    turnIm[i] = w * s;
    const next = c * stepRe - s * stepIm;
    s = c * stepIm + s * stepRe;
    c = next;
  }
  const re: number[] = [];
  const im: number[] = [];
  for (const axis of axes) {
    const xr = axis.re;
    const xi = axis.im;
    let sumRe = 0;
    let sumIm = 0;
    for (let i = 0; i < n; i++) {
      sumRe += xr[i]! * turnRe[i]! - xi[i]! * turnIm[i]!;
      sumIm += xr[i]! * turnIm[i]! + xi[i]! * turnRe[i]!;
    }
    re.push(sumRe);
    im.push(sumIm);
  }
  return { re, im };
};

/** aᴴWa: the power of an amplitude in units of the noise whose inverse W is. */
export const whitenedPower = ({ re, im }: ComplexVector, w: Hermitian): number => {
  const axes = re.length;
  let sum = 0;
  for (let i = 0; i < axes; i++) {
    sum += w[i]! * (re[i]! * re[i]! + im[i]! * im[i]!);
    for (let j = i + 1; j < axes; j++) {
      const q = offDiagonal(axes, i, j);
      // a_i·conj(a_j) against the entry above the diagonal.
      sum += 2 * w[q]! * (re[i]! * re[j]! + im[i]! * im[j]!) + 2 * w[q + 1]! * (im[i]! * re[j]! - re[i]! * im[j]!);
    }
  }
  return sum;
};

/** The whitened power of a line at one frequency. */
export const powerAt = (band: Band, whitener: Hermitian, frequencyHz: number): number =>
  whitenedPower(amplitudeAt(band, frequencyHz), whitener);

/**
 * The whitened power (in units of the noise) of a line at `count` frequencies, `stepHz` apart from `firstHz` on. The same
 * as `powerAt` at each, but quicker: from one frequency to the next every sample is turned on by its own small angle.
 */
export const powersAt = (
  band: Band,
  whitener: Hermitian,
  firstHz: number,
  stepHz: number,
  count: number,
): Float64Array => {
  const { weight, axes, norm, centreHz, startS, stepS } = band;
  const n = weight.length;
  const axisCount = axes.length;
  const scale = norm > 0 ? 1 / norm : 0;
  const turned = axes.map(({ re, im }) => ({ re: re.slice(), im: im.slice() }));
  const onRe = new Float64Array(n);
  const onIm = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const angle = -2 * Math.PI * (startS + i * stepS);
    const c = Math.cos(angle * (firstHz - centreHz)) * weight[i]! * scale;
    const s = Math.sin(angle * (firstHz - centreHz)) * weight[i]! * scale;
    for (const { re, im } of turned) {
      const real = re[i]! * c - im[i]! * s;
      im[i] = re[i]! * s + im[i]! * c;
      re[i] = real;
    }
    onRe[i] = Math.cos(angle * stepHz);
    onIm[i] = Math.sin(angle * stepHz);
  }
  const sums = { re: axes.map(() => 0), im: axes.map(() => 0) };
  const powers = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    for (let axis = 0; axis < axisCount; axis++) {
      const { re, im } = turned[axis]!;
      let sumRe = 0;
      let sumIm = 0;
      for (let i = 0; i < n; i++) {
        const a = re[i]!;
        const b = im[i]!;
        sumRe += a;
        sumIm += b;
        re[i] = a * onRe[i]! - b * onIm[i]!;
        im[i] = a * onIm[i]! + b * onRe[i]!;
      }
      sums.re[axis] = sumRe;
      sums.im[axis] = sumIm;
    }
    powers[k] = whitenedPower(sums, whitener);
  }
  return powers;
};

/** Bins of the scan per sample of the band: four to eight to a natural bin, so that straight lines join them well. */
const PADDING = 4;

/**
 * The whitened power at all frequencies by one transform an axis, read off by straight lines between bins a quarter of
 * a natural bin apart or less: within 3 % at the top of a line. For looking a range through; the top itself is then
 * measured by `powerAt`.
 */
export const powerScan = (band: Band, whitener: Hermitian): ((frequencyHz: number) => number) => {
  const { weight, axes, stepS, centreHz } = band;
  const n = weight.length;
  const size = PADDING * powerOfTwoAtLeast(Math.max(2, n));
  const scale = band.norm > 0 ? 1 / band.norm : 0;
  const spectra = axes.map(({ re, im }) => {
    const input = complexArray(size);
    for (let i = 0; i < n; i++) {
      input.re[i] = re[i]! * weight[i]! * scale;
      input.im[i] = im[i]! * weight[i]! * scale;
    }
    return complexSpectrum(input);
  });
  const power = new Float64Array(size);
  for (let i = 0; i < axes.length; i++) {
    const a = spectra[i]!;
    const own = whitener[i]!;
    for (let k = 0; k < size; k++) power[k]! += own * (a.re[k]! * a.re[k]! + a.im[k]! * a.im[k]!);
    for (let j = i + 1; j < axes.length; j++) {
      const q = offDiagonal(axes.length, i, j);
      const b = spectra[j]!;
      const real = 2 * whitener[q]!;
      const imaginary = 2 * whitener[q + 1]!;
      for (let k = 0; k < size; k++) {
        power[k]! +=
          real * (a.re[k]! * b.re[k]! + a.im[k]! * b.im[k]!) + imaginary * (a.im[k]! * b.re[k]! - a.re[k]! * b.im[k]!);
      }
    }
  }
  const perHz = size * stepS;
  return (frequencyHz) => {
    const at = (frequencyHz - centreHz) * perHz;
    const low = Math.floor(at);
    const from = ((low % size) + size) % size;
    const share = at - low;
    return power[from]! + share * (power[from + 1 === size ? 0 : from + 1]! - power[from]!);
  };
};
