/** Short-time amplitude spectra over the recording, kept to a size a screen can show. */
import { forEachSpectrum, type Cut } from './segments.ts';
import type { Prepared, TimeFrequency } from './spectrum.ts';
import { powerOfTwoAtLeast } from './fft.ts';
import { windowSamples } from './windows.ts';

export interface TimeFrequencyOptions {
  /** Frequency step aimed at, Hz; default 0.5. The true one is the next finer that a power of two gives. */
  readonly stepHz?: number;
  /** Columns at most; default 600. */
  readonly mostColumns?: number;
  /** Frequency bins at most, from 0 Hz up; default 1024. */
  readonly mostBins?: number;
}

/**
 * Time-frequency map of all axes together (root-sum-square of 0-to-peak amplitudes), Hann window, a quarter of a
 * window or more from column to column. Gaps of the recording have no columns.
 */
export const timeFrequency = (prepared: Prepared, options: TimeFrequencyOptions = {}): TimeFrequency => {
  const { stepHz = 0.5, mostColumns = 600, mostBins = 1024 } = options;
  const rate = prepared.samplingRateHz;
  const lengths = prepared.pieces.map((piece) => piece.axes[0]?.length ?? 0);
  const longest = Math.max(0, ...lengths);
  let length = powerOfTwoAtLeast(rate / stepHz);
  while (length > longest && length > 2) length /= 2;
  const places = lengths.reduce((sum, n) => sum + Math.max(0, n - length + 1), 0);
  const hop = Math.max(1, length / 4, Math.ceil(places / mostColumns));
  const cuts: Cut[] = [];
  lengths.forEach((n, piece) => {
    for (let offset = 0; offset + length <= n; offset += hop) cuts.push({ piece, offset: Math.floor(offset) });
  });
  cuts.length = Math.min(cuts.length, mostColumns);
  const window = windowSamples('hann', length);
  const bins = Math.min(mostBins, length / 2 + 1);
  const power = new Float32Array(cuts.length * bins);
  const axes = (prepared.pieces[0]?.axes ?? []).map((_, i) => i);
  forEachSpectrum(prepared, cuts, window, axes, ({ re, im }, cut) => {
    const row = cut * bins;
    for (let k = 0; k < bins; k++) power[row + k]! += re[k]! * re[k]! + im[k]! * im[k]!;
  });
  // Σw of a Hann window is half its length; the mirrored half of the spectrum doubles the amplitude.
  const scale = 4 / length;
  for (let i = 0; i < power.length; i++) power[i] = Math.sqrt(power[i]!) * scale;
  const timeS = Float64Array.from(
    cuts,
    ({ piece, offset }) => prepared.pieces[piece]!.startS + (offset + length / 2) / rate,
  );
  return { kind: 'time-frequency', timeS, stepHz: rate / length, bins, amplitudeMps2: power };
};
