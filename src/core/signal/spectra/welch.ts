/** Averaged spectra of overlapped windowed segments (P. D. Welch, IEEE Trans. AU-15, 1967, 70–73). */
import { cutSegments, forEachSpectrum } from './segments.ts';
import type { AmplitudeSpectrum, PowerDensity, Prepared } from './spectrum.ts';
import { powerOfTwoAtLeast } from './fft.ts';
import { effectiveAverages, windowSamples, type WindowName } from './windows.ts';

export interface WelchOptions {
  /** Default 'hann'. */
  readonly window?: WindowName;
  /** Samples in a segment, any whole number; default the power of two nearest above 4 s. Never longer than the longest piece. */
  readonly segmentLength?: number;
  /** Share of a segment that the next one repeats, 0 ≤ overlap < 1; default 0.5. */
  readonly overlap?: number;
  /** One channel, or all together by root-sum-square (default). */
  readonly axis?: number | 'all';
}

const DEFAULT_SEGMENT_S = 4;

const longestPiece = (prepared: Prepared): number =>
  prepared.pieces.reduce((most, piece) => Math.max(most, piece.axes[0]?.length ?? 0), 0);

interface Averaged {
  readonly base: Omit<AmplitudeSpectrum, 'kind' | 'amplitudeMps2'>;
  /** Mean over segments of |X|² (summed over the axes asked for), unscaled. */
  readonly power: Float64Array;
  readonly windowSum: number;
  readonly windowSquares: number;
}

const average = (prepared: Prepared, options: WelchOptions): Averaged => {
  const window = options.window ?? 'hann';
  const overlap = Math.min(0.99, Math.max(0, options.overlap ?? 0.5));
  const rate = prepared.samplingRateHz;
  const longest = longestPiece(prepared);
  const wanted = options.segmentLength ?? powerOfTwoAtLeast(DEFAULT_SEGMENT_S * rate);
  let length = Math.max(2, Math.floor(wanted));
  // A short piece gets the longest power of two it holds, so that nothing is padded unasked.
  if (length > longest) length = Math.max(2, 2 ** Math.floor(Math.log2(Math.max(2, longest))));
  const w = windowSamples(window, length);
  const hop = Math.max(1, Math.round(length * (1 - overlap)));
  const cuts = cutSegments(prepared, length, hop);
  const power = new Float64Array(Math.floor(length / 2) + 1);
  const count = prepared.pieces[0]?.axes.length ?? 0;
  const axis = options.axis ?? 'all';
  const axes = axis === 'all' ? Array.from({ length: count }, (_, i) => i) : [axis];
  forEachSpectrum(prepared, cuts, w, axes, ({ re, im }) => {
    for (let k = 0; k < power.length; k++) power[k]! += re[k]! * re[k]! + im[k]! * im[k]!;
  });
  for (let k = 0; k < power.length; k++) power[k]! /= Math.max(1, cuts.length);
  let windowSum = 0;
  let windowSquares = 0;
  for (let i = 0; i < length; i++) {
    windowSum += w[i]!;
    windowSquares += w[i]! * w[i]!;
  }
  return {
    base: {
      stepHz: rate / length,
      window,
      segmentLength: length,
      averages: cuts.length,
      effectiveAverages: effectiveAverages(window, overlap, Math.max(1, cuts.length)),
      enbwHz: (rate * windowSquares) / (windowSum * windowSum),
    },
    power,
    windowSum,
    windowSquares,
  };
};

/** 1 at 0 Hz and, for even lengths, at half the rate; 2 elsewhere: the mirrored half counts too. */
const sides = (k: number, segmentLength: number): number => (k === 0 || 2 * k === segmentLength ? 1 : 2);

const amplitudeOf = ({ base, power, windowSum }: Averaged): AmplitudeSpectrum => {
  const amplitudeMps2 = power.map((p, k) => (sides(k, base.segmentLength) * Math.sqrt(p)) / windowSum);
  return { kind: 'amplitude', ...base, amplitudeMps2 };
};

/**
 * One-sided power density, (m/s²)²/Hz: PSD_k = 2|X_k|²/(fs·Σw²). Its sum times the step is the mean square.
 * Equals scipy.signal.welch(scaling='density', detrend=False) on the same segments.
 */
const densityOf = ({ base, power, windowSquares }: Averaged, samplingRateHz: number): PowerDensity => {
  const scale = 1 / (samplingRateHz * windowSquares);
  const density = power.map((p, k) => sides(k, base.segmentLength) * p * scale);
  return { kind: 'power-density', ...base, density };
};

/**
 * Amplitude spectrum: a steady sine on a bin reads its 0-to-peak amplitude, A_k = 2|X_k|/Σw (root of the mean square
 * over segments). Read tones here. Neighbouring bins of a noise depend on the segment length: read noise in a density.
 */
export const welchAmplitude = (prepared: Prepared, options: WelchOptions = {}): AmplitudeSpectrum =>
  amplitudeOf(average(prepared, options));

/** Amplitude spectrum and one-sided power density of the same segments, transformed once. Read noise in the density. */
export const welchBoth = (
  prepared: Prepared,
  options: WelchOptions = {},
): { readonly amplitude: AmplitudeSpectrum; readonly density: PowerDensity } => {
  const averaged = average(prepared, options);
  return { amplitude: amplitudeOf(averaged), density: densityOf(averaged, prepared.samplingRateHz) };
};
