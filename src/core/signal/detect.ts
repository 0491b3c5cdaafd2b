/** Peaks of a recording's spectrum, over all axes together, by their false-alarm probability. */
import { fLogTail } from './distributions.ts';
import { powerOfTwoAtLeast } from './fft.ts';
import { noiseFloor } from './floor.ts';
import type { Peak } from './peak.ts';
import { interpolateHann } from './peak-interpolation.ts';
import { cutSegments, forEachSpectrum } from './segments.ts';
import type { Prepared } from './spectrum.ts';
import { effectiveAverages, windowSamples } from './windows.ts';

export interface DetectOptions {
  /** Lowest and highest frequency searched, Hz; default 2 Hz and half the rate. */
  readonly lowestHz?: number;
  readonly highestHz?: number;
  /** Most false-alarm probability over the whole spectrum; default 0.01. */
  readonly falseAlarm?: number;
}

const SEGMENT_S = 8;

/** Peaks in order of frequency. */
export const findPeaks = (prepared: Prepared, options: DetectOptions = {}): Peak[] => {
  const rate = prepared.samplingRateHz;
  const { lowestHz = 2, highestHz = rate / 2, falseAlarm = 0.01 } = options;
  const longest = Math.max(0, ...prepared.pieces.map((piece) => piece.axes[0]?.length ?? 0));
  let length = powerOfTwoAtLeast(SEGMENT_S * rate);
  while (length > longest && length > 2) length /= 2;
  if (length < 32) return [];
  const cuts = cutSegments(prepared, length, length / 2);
  const axisCount = prepared.pieces[0]!.axes.length;
  const bins = length / 2 + 1;
  const powers = Array.from({ length: axisCount }, () => new Float64Array(bins));
  const window = windowSamples('hann', length);
  forEachSpectrum(prepared, cuts, window, [...powers.keys()], ({ re, im }, _cut, axis) => {
    const power = powers[axis]!;
    for (let k = 0; k < bins; k++) power[k]! += (re[k]! * re[k]! + im[k]! * im[k]!) / cuts.length;
  });
  const averages = effectiveAverages('hann', 0.5, cuts.length);
  const step = rate / length;
  const halfBins = Math.max(20, Math.round(3 / step));
  const floors = powers.map((power) => noiseFloor(power, averages, halfBins));
  const excess = new Float64Array(bins);
  const amplitude = new Float64Array(bins);
  for (let k = 0; k < bins; k++) {
    let sum = 0;
    for (let a = 0; a < axisCount; a++) {
      excess[k]! += powers[a]![k]! / floors[a]![k]! / axisCount;
      sum += powers[a]![k]!;
    }
    amplitude[k] = (4 / length) * Math.sqrt(sum);
  }
  const from = Math.max(2, Math.ceil(lowestHz / step));
  const to = Math.min(bins - 3, Math.floor(highestHz / step));
  const peaks: Peak[] = [];
  for (let k = from; k <= to; k++) {
    if (!(excess[k]! > excess[k - 1]! && excess[k]! >= excess[k + 1]!)) continue;
    const logTail = fLogTail(excess[k]!, 2 * averages * axisCount, 2 * averages * axisCount * halfBins);
    const alarm = Math.min(1, Math.exp(logTail) * (to - from + 1));
    if (alarm > falseAlarm) continue;
    const { bin, gain } = interpolateHann(amplitude, k);
    const total = amplitude[k]! * gain;
    const axisAmplitudeMps2 = powers.map((power) => (4 / length) * Math.sqrt(power[k]!) * gain);
    const vertical = prepared.up
      ? axisAmplitudeMps2.reduce((sum, a, i) => sum + a * (prepared.up![i] ?? 0), 0) ** 2 / (total * total)
      : null;
    const limitWidthHz = 1.4406 * step;
    let low = k;
    let high = k;
    while (low > 0 && amplitude[low]! > amplitude[k]! * Math.SQRT1_2) low--;
    while (high < bins - 1 && amplitude[high]! > amplitude[k]! * Math.SQRT1_2) high++;
    const widthHz = Math.max(limitWidthHz, (high - low - 1) * step);
    const snr = Math.max(1, excess[k]!);
    peaks.push({
      frequencyHz: bin * step,
      frequencySdHz: (0.5 * step) / Math.sqrt(snr * averages),
      amplitudeMps2: total,
      amplitudeSdMps2: total / Math.sqrt(2 * snr * averages),
      axisAmplitudeMps2,
      verticalShare: vertical === null ? null : Math.min(1, vertical),
      widthHz,
      limitWidthHz,
      overFloorDb: 10 * Math.log10(excess[k]!),
      falseAlarmProbability: alarm,
      lineProbability: 1 / (1 + (widthHz / (2 * limitWidthHz)) ** 8),
    });
  }
  return peaks;
};
