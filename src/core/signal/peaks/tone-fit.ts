/**
 * The frequency, amplitude and direction of a steady line by maximum likelihood in a narrow band: the frequency at
 * which the whitened power of the whole stretch, all axes together, is greatest. In white noise this reaches the
 * Cramér–Rao bound, var f = 12·fs²/((2π)²·η·N(N² − 1)) for one real tone (S. M. Kay, Fundamentals of Statistical
 * Signal Processing: Estimation Theory, 1993, ex. 3.14; D. C. Rife & R. R. Boorstyn, IEEE Trans. IT-20, 1974).
 */
import { inverse, outer, packedLength, trace, type ComplexVector, type Hermitian } from '../numeric/hermitian.ts';
import { amplitudeAt, powerAt, whitenedPower } from './band-power.ts';
import type { Band } from './zoom.ts';

export interface ToneFit {
  readonly frequencyHz: number;
  /** Cramér–Rao standard uncertainty for the noise found beside the line, Hz. */
  readonly boundHz: number;
  /** Complex amplitude per axis at the band's time zero (0-to-peak, m/s²). */
  readonly amplitude: ComplexVector;
  /** Noise power density of each axis (of the analytic signal, packed Hermitian), (m/s²)²/Hz. */
  readonly noise: Hermitian;
  /** Whitened signal-to-noise energy, aᴴN⁻¹a·T. */
  readonly energy: number;
}

/** Natural bins beside the line from which its noise is read, each side. */
const NOISE_FROM = 1.5;
const NOISE_TO = 30;

/** Takes a fitted line out of a band, in place. */
export const subtractTone = (band: Band, fit: Pick<ToneFit, 'frequencyHz' | 'amplitude'>, sign = -1): void => {
  const angle = 2 * Math.PI * (fit.frequencyHz - band.centreHz);
  band.axes.forEach((axis, a) => {
    const ar = sign * fit.amplitude.re[a]!;
    const ai = sign * fit.amplitude.im[a]!;
    for (let i = 0; i < axis.re.length; i++) {
      const phase = angle * (band.startS + i * band.stepS);
      const c = Math.cos(phase) * band.envelope[i]!;
      const s = Math.sin(phase) * band.envelope[i]!;
      axis.re[i]! += ar * c - ai * s;
      axis.im[i]! += ar * s + ai * c;
    }
  });
};

/** Golden sections: from two scan steps down to 1e-5 of one, where rounding of a power's flat top begins to matter. */
const REFINEMENTS = 25;

/** Place of the greatest value of f near x, by a scan and golden-section refinement. */
export const greatest = (f: (x: number) => number, centre: number, reach: number, step: number): number => {
  let best = centre;
  let most = -Infinity;
  for (let x = centre - reach; x <= centre + reach; x += step) {
    const v = f(x);
    if (v > most) [best, most] = [x, v];
  }
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = best - step;
  let b = best + step;
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  let fc = f(c);
  let fd = f(d);
  for (let i = 0; i < REFINEMENTS; i++) {
    if (fc > fd) {
      [b, d, fd] = [d, c, fc];
      c = b - ratio * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + ratio * (b - a);
      fd = f(d);
    }
  }
  return 0.5 * (a + b);
};

/** Mean noise matrix beside a frequency, from a band the line has been taken out of. */
const noiseBeside = (band: Band, frequencyHz: number, others: readonly number[]): Hermitian => {
  const axes = band.axes.length;
  const sum = new Float64Array(packedLength(axes));
  const bin = 1 / band.lengthS;
  let count = 0;
  for (let d = NOISE_FROM; d <= NOISE_TO; d++) {
    for (const sign of [-1, 1]) {
      const f = frequencyHz + sign * d * bin;
      if (Math.abs(f - band.centreHz) > band.flatHz || f <= 0) continue;
      if (others.some((other) => Math.abs(other - f) < 1.5 * bin)) continue;
      const x = outer(axes, amplitudeAt(band, f));
      for (let q = 0; q < sum.length; q++) sum[q]! += x[q]! * band.lengthS;
      count++;
    }
  }
  const least = 1e-9 * trace(axes, sum) + Number.MIN_VALUE;
  for (let q = 0; q < sum.length; q++) sum[q] = (sum[q]! + (q < axes ? least : 0)) / Math.max(1, count);
  return sum;
};

/**
 * Fits the line nearest to `startHz`.
 * @param band other lines already taken out; left as it was
 * @param weights inverse noise matrix up to a factor, to begin with
 * @param others frequencies of other lines nearby, whose places do not count as noise
 * @param reachBins how far from `startHz` it may stand, natural bins
 */
export const fitTone = (
  band: Band,
  startHz: number,
  weights: Hermitian,
  others: readonly number[],
  reachBins: number,
): ToneFit => {
  const axes = band.axes.length;
  const bin = 1 / band.lengthS;
  let whitener = weights;
  let frequencyHz = startHz;
  let noise = new Float64Array(packedLength(axes));
  for (let pass = 0; pass < 2; pass++) {
    const power = (f: number): number => powerAt(band, whitener, f);
    frequencyHz = greatest(power, frequencyHz, (pass === 0 ? reachBins : 0.3) * bin, 0.1 * bin);
    const fit = { frequencyHz, amplitude: amplitudeAt(band, frequencyHz) };
    subtractTone(band, fit);
    noise = Float64Array.from(noiseBeside(band, frequencyHz, others));
    subtractTone(band, fit, 1);
    whitener = inverse(axes, noise);
  }
  const amplitude = amplitudeAt(band, frequencyHz);
  const energy = whitenedPower(amplitude, whitener) * band.lengthS;
  // The measured energy carries the noise's own share, one per axis.
  const net = Math.max(energy - axes, 1);
  const boundHz = (Math.sqrt(6 / net) * bin) / (2 * Math.PI);
  return { frequencyHz, boundHz, amplitude, noise, energy };
};
