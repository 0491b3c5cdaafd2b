/**
 * Spectral windows as cosine sums, w[n] = Σ (−1)^k a_k cos(2πkn/N), in periodic form, and their figures.
 *
 * Definitions of the figures: F. J. Harris, Proc. IEEE 66(1), 1978, 51–83; G. Heinzel, A. Rüdiger, R. Schilling,
 * Spectrum and spectral density estimation by the DFT, Max Planck Institute for Gravitational Physics, 2002.
 */
export type WindowName = 'hann' | 'hamming' | 'blackman-harris' | 'flat-top' | 'rectangular';

/** a0, a1, … of each window. */
const COSINE_TERMS: Readonly<Record<WindowName, readonly number[]>> = {
  rectangular: [1],
  hann: [0.5, 0.5],
  hamming: [0.54, 0.46],
  // Four-term, −92 dB (Harris 1978, Table I; coefficients from memory, checked by its side-lobe level).
  'blackman-harris': [0.35875, 0.48829, 0.14128, 0.01168],
  // ISO 18431-2 flat-top (coefficients from memory, checked by its bandwidth and flatness).
  'flat-top': [1, 1.933, 1.286, 0.388, 0.0322],
};

export const WINDOW_NAMES = Object.keys(COSINE_TERMS) as readonly WindowName[];

/** Samples of a window of the given length, periodic form (the sample that would close the period is left out). */
export const windowSamples = (name: WindowName, length: number): Float64Array => {
  const key = `${name} ${length}`;
  const known = cache.get(key);
  if (known) return known;
  const terms = COSINE_TERMS[name];
  const w = new Float64Array(length);
  for (let n = 0; n < length; n++) {
    let sum = 0;
    for (let k = 0; k < terms.length; k++) {
      sum += (k % 2 === 0 ? 1 : -1) * terms[k]! * Math.cos((2 * Math.PI * k * n) / length);
    }
    w[n] = sum;
  }
  if (cache.size > 24) cache.clear();
  cache.set(key, w);
  return w;
};
const cache = new Map<string, Float64Array>();

/** Equivalent noise bandwidth in bins, N·Σw²/(Σw)² = 1 + Σ a_k²/(2a_0²); exact for more than 2·terms samples. */
export const noiseBandwidthBins = (name: WindowName): number => {
  const [first, ...rest] = COSINE_TERMS[name];
  return 1 + rest.reduce((sum, a) => sum + a * a, 0) / (2 * first! * first!);
};

/** |W(δ)|/W(0): how a tone δ bins away from a bin's centre is shown by that bin, for long windows. */
export const mainLobe = (name: WindowName, offsetBins: number): number => {
  const terms = COSINE_TERMS[name];
  const d = offsetBins;
  const nearest = Math.round(d);
  if (Math.abs(d - nearest) < 1e-9) {
    const k = Math.abs(nearest);
    return k >= terms.length ? 0 : k === 0 ? 1 : terms[k]! / (2 * terms[0]!);
  }
  // Transform of the cosine sum: sin(πδ)/π · Σ ± a_k/2 (1/(δ−k) + 1/(δ+k)), with the sign of the alternating terms.
  let sum = terms[0]! / d;
  for (let k = 1; k < terms.length; k++) {
    sum += (k % 2 === 0 ? 0.5 : -0.5) * terms[k]! * (1 / (d - k) + 1 / (d + k));
  }
  return Math.abs((Math.sin(Math.PI * d) / (Math.PI * terms[0]!)) * sum);
};

/** Full width of the main lobe in bins where it has fallen by the given decibels (3.0103 is half power). */
export const lobeWidthBins = (name: WindowName, fallDb = 10 * Math.log10(2)): number => {
  const level = 10 ** (-fallDb / 20);
  let low = 0;
  let high = COSINE_TERMS[name].length;
  for (let i = 0; i < 60; i++) {
    const mid = 0.5 * (low + high);
    if (mainLobe(name, mid) > level) low = mid;
    else high = mid;
  }
  return low + high;
};

/**
 * Correlation of the spectra of white noise in two segments that overlap by the given share: Σ w[n]w[n+hop]/Σw²
 * (Harris 1978, eq. 17). 0 without overlap.
 */
export const overlapCorrelation = (name: WindowName, overlap: number): number => {
  if (overlap <= 0) return 0;
  const n = 4096;
  const w = windowSamples(name, n);
  const hop = Math.round((1 - Math.min(overlap, 1)) * n);
  let shifted = 0;
  let own = 0;
  for (let i = 0; i < n; i++) {
    own += w[i]! * w[i]!;
    if (i + hop < n) shifted += w[i]! * w[i + hop]!;
  }
  return shifted / own;
};

/**
 * Averages corrected for overlap: K / (1 + 2 Σ_j ρ_j² (K − j)/K), ρ_j the correlation at j hops (P. D. Welch, IEEE
 * Trans. AU-15, 1967). At 50 % overlap only j = 1 counts: K/(1 + 2ρ²(K−1)/K).
 */
export const effectiveAverages = (name: WindowName, overlap: number, averages: number): number => {
  let sum = 1;
  for (let j = 1; j < averages; j++) {
    const share = 1 - j * (1 - overlap);
    if (share <= 0) break;
    sum += 2 * overlapCorrelation(name, share) ** 2 * (1 - j / averages);
  }
  return averages / sum;
};
