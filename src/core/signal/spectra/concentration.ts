/** How far the strongest line of a recording stands out of what is about it: greatest where its motion is taken out. */
import { powerOfTwoAtLeast } from './fft.ts';
import type { Prepared } from './spectrum.ts';
import { welchAmplitude } from './welch.ts';

/** A line that sweeps through resonances holds its phase about so long, s. */
const SEGMENT_S = 4;
/** Slower shakes are the body's own. */
const LOWEST_HZ = 4;
/** What is about a line: this share of its frequency to each side, less its own lobe (Hann: two bins). */
const AROUND = 0.35;
const LOBE_BINS = 2;

/**
 * Greatest ln of a bin's power over the mean ln power about it, in averaged spectra.
 * @param highestHz bins above are not looked at
 * @param worthAt what is added (ln) to the height of a bin at a frequency, Hz; default nothing anywhere
 */
export const concentration = (
  prepared: Prepared,
  highestHz: number,
  worthAt: (frequencyHz: number) => number = () => 0,
): number => {
  const rate = prepared.samplingRateHz;
  const longest = prepared.pieces.reduce((most, { axes }) => Math.max(most, axes[0]?.length ?? 0), 0);
  const segmentLength = powerOfTwoAtLeast(Math.min(longest, SEGMENT_S * rate) / Math.SQRT2);
  const { amplitudeMps2, stepHz } = welchAmplitude(prepared, { segmentLength });
  const logs = Float64Array.from(amplitudeMps2, (amplitude) => 2 * Math.log(amplitude + 1e-12));
  const sums = new Float64Array(logs.length + 1);
  logs.forEach((log, k) => (sums[k + 1] = sums[k]! + log));
  const last = Math.min(logs.length - 1, Math.floor(highestHz / stepHz));
  let best = 0;
  for (let k = Math.ceil(LOWEST_HZ / stepHz); k <= last; k++) {
    const reach = Math.round(AROUND * k);
    if (reach <= LOBE_BINS) continue;
    const [from, to] = [k - reach, Math.min(last, k + reach)];
    const lobeTo = Math.min(to, k + LOBE_BINS);
    const around = sums[to + 1]! - sums[from]! - (sums[lobeTo + 1]! - sums[k - LOBE_BINS]!);
    const count = to - from + 1 - (lobeTo - (k - LOBE_BINS) + 1);
    if (count > 0) best = Math.max(best, logs[k]! - around / count + worthAt(k * stepHz));
  }
  return best;
};
