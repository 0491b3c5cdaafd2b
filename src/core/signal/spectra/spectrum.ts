/** Spectra carry their scaling in their type: a tone is read in an amplitude spectrum, noise in a power density. */
import type { WindowName } from './windows.ts';

interface SpectrumBase {
  /** Frequency step between bins, Hz; bin k is at k·stepHz, from 0 to half the sampling rate. */
  readonly stepHz: number;
  readonly window: WindowName;
  readonly segmentLength: number;
  /** Segments averaged. */
  readonly averages: number;
  /** Averages corrected for overlapped segments' correlation (P. D. Welch 1967; K/(1 + 2ρ²(K − 1)/K) at half overlap). */
  readonly effectiveAverages: number;
  /** Equivalent noise bandwidth, Hz. */
  readonly enbwHz: number;
}

/** 0-to-peak amplitude of a sine at each bin, m/s². */
export interface AmplitudeSpectrum extends SpectrumBase {
  readonly kind: 'amplitude';
  readonly amplitudeMps2: Float64Array;
}

/** One-sided power density, (m/s²)²/Hz. */
export interface PowerDensity extends SpectrumBase {
  readonly kind: 'power-density';
  readonly density: Float64Array;
}

/** Short-time amplitude spectra, all axes together. Row-major: `amplitudeMps2[timeIndex * bins + frequencyIndex]`. */
export interface TimeFrequency {
  readonly kind: 'time-frequency';
  /** Centre of each column on the recording's clock, s. */
  readonly timeS: Float64Array;
  readonly stepHz: number;
  readonly bins: number;
  readonly amplitudeMps2: Float32Array;
}

/** What a recording becomes before any spectrum: even samples, gravity taken out, its direction kept. */
export interface Prepared {
  readonly samplingRateHz: number;
  readonly durationS: number;
  /** Even pieces; each holds x, y, z (as many as there are channels), m/s², mean and slow drift removed. */
  readonly pieces: readonly { readonly startS: number; readonly axes: readonly Float64Array[] }[];
  /** Unit vector of 'up' in channel order, or null where gravity is not in the recording. */
  readonly up: readonly number[] | null;
}
