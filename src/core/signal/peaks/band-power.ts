/** A line's complex amplitude and whitened power in a band, at one frequency or over all of the band's. */
import { complexArray, complexSpectrum, powerOfTwoAtLeast } from '../spectra/fft.ts';
import { offDiagonal, type ComplexVector, type Hermitian } from '../numeric/hermitian.ts';
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
 * Cosine and sine of 2π·f·t at each sample of a band, one turned on from the other. Exact to some hundred roundings:
 * bands have a few thousand samples at the most.
 */
const turning = (
  frequencyHz: number,
  { weight, startS, stepS }: Band,
  use: (i: number, cos: number, sin: number) => void,
): void => {
  const step = 2 * Math.PI * frequencyHz * stepS;
  const stepCos = Math.cos(step);
  const stepSin = Math.sin(step);
  let c = Math.cos(2 * Math.PI * frequencyHz * startS);
  let s = Math.sin(2 * Math.PI * frequencyHz * startS);
  for (let i = 0; i < weight.length; i++) {
    use(i, c, s);
    const next = c * stepCos - s * stepSin;
    s = c * stepSin + s * stepCos;
    c = next;
  }
};

/**
 * The whitened power (in units of the noise) of a line at `count` frequencies, `stepHz` apart from `firstHz` on. The same
 * as `powerAt` at each, but quicker: frequencies as far above as below the middle one share their cosines and sines.
 */
export const powersAt = (
  band: Band,
  whitener: Hermitian,
  firstHz: number,
  stepHz: number,
  count: number,
): Float64Array => {
  const { weight, norm, centreHz } = band;
  const n = weight.length;
  const scale = norm > 0 ? 1 / norm : 0;
  const middleHz = firstHz + (stepHz * (count - 1)) / 2;
  // An even count has no frequency in the middle: its first pair stands half a step to each side.
  const firstOff = count % 2 === 1 ? 0 : 0.5;
  const axes = band.axes.map(() => complexArray(n));
  const cos = new Float64Array(n);
  const sin = new Float64Array(n);
  const stepCos = new Float64Array(n);
  const stepSin = new Float64Array(n);
  turning(-(middleHz - centreHz), band, (i, c, s) => {
    const w = weight[i]! * scale;
    for (let axis = 0; axis < axes.length; axis++) {
      const { re, im } = band.axes[axis]!;
      axes[axis]!.re[i] = (re[i]! * c - im[i]! * s) * w;
      axes[axis]!.im[i] = (re[i]! * s + im[i]! * c) * w;
    }
  });
  turning(firstOff * stepHz, band, (i, c, s) => {
    cos[i] = c;
    sin[i] = s;
  });
  turning(stepHz, band, (i, c, s) => {
    stepCos[i] = c;
    stepSin[i] = s;
  });
  const above = { re: axes.map(() => 0), im: axes.map(() => 0) };
  const below = { re: axes.map(() => 0), im: axes.map(() => 0) };
  const powers = new Float64Array(count);
  for (let k = count >> 1; k < count; k++) {
    for (let axis = 0; axis < axes.length; axis++) {
      const { re, im } = axes[axis]!;
      let reCos = 0;
      let reSin = 0;
      let imCos = 0;
      let imSin = 0;
      for (let i = 0; i < n; i++) {
        reCos += re[i]! * cos[i]!;
        reSin += re[i]! * sin[i]!;
        imCos += im[i]! * cos[i]!;
        imSin += im[i]! * sin[i]!;
      }
      above.re[axis] = reCos + imSin;
      above.im[axis] = imCos - reSin;
      below.re[axis] = reCos - imSin;
      below.im[axis] = imCos + reSin;
    }
    powers[k] = whitenedPower(above, whitener);
    powers[count - 1 - k] = whitenedPower(below, whitener);
    for (let i = 0; i < n; i++) {
      const c = cos[i]!;
      cos[i] = c * stepCos[i]! - sin[i]! * stepSin[i]!;
      sin[i] = sin[i]! * stepCos[i]! + c * stepSin[i]!;
    }
  }
  return powers;
};

/** Bins of the scan per sample of the band: four to eight to a natural bin, so that straight lines join them well. */
const PADDING = 4;

/**
 * The whitened power at all frequencies from `fromHz` to `toHz` by one transform an axis, read off by straight lines
 * between bins a quarter of a natural bin apart or less: within 3 % at the top of a line. For looking a range through;
 * the top itself is then measured by `powerAt`.
 */
export const powerScan = (
  band: Band,
  whitener: Hermitian,
  fromHz: number,
  toHz: number,
): ((frequencyHz: number) => number) => {
  const { weight, axes, stepS, centreHz } = band;
  const n = weight.length;
  const size = PADDING * powerOfTwoAtLeast(Math.max(2, n));
  const scale = band.norm > 0 ? 1 / band.norm : 0;
  const input = complexArray(size);
  const spectra = axes.map(({ re, im }) => {
    for (let i = 0; i < n; i++) {
      input.re[i] = re[i]! * weight[i]! * scale;
      input.im[i] = im[i]! * weight[i]! * scale;
    }
    return complexSpectrum(input);
  });
  const perHz = size * stepS;
  // A bin to spare on each side, so that rounding leads nowhere.
  const first = Math.floor((fromHz - centreHz) * perHz) - 1;
  const count = Math.floor((toHz - centreHz) * perHz) - first + 3;
  const bins = Int32Array.from({ length: count }, (_, k) => (((first + k) % size) + size) % size);
  const power = new Float64Array(count);
  for (let i = 0; i < axes.length; i++) {
    const a = spectra[i]!;
    const own = whitener[i]!;
    for (let k = 0; k < count; k++) power[k]! += own * (a.re[bins[k]!]! ** 2 + a.im[bins[k]!]! ** 2);
    for (let j = i + 1; j < axes.length; j++) {
      const q = offDiagonal(axes.length, i, j);
      const b = spectra[j]!;
      const real = 2 * whitener[q]!;
      const imaginary = 2 * whitener[q + 1]!;
      for (let k = 0; k < count; k++) {
        const bin = bins[k]!;
        power[k]! +=
          real * (a.re[bin]! * b.re[bin]! + a.im[bin]! * b.im[bin]!) +
          imaginary * (a.im[bin]! * b.re[bin]! - a.re[bin]! * b.im[bin]!);
      }
    }
  }
  return (frequencyHz) => {
    const at = (frequencyHz - centreHz) * perHz - first;
    const low = Math.floor(at);
    return power[low]! + (at - low) * (power[low + 1]! - power[low]!);
  };
};
