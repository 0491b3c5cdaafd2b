/**
 * What bringing uneven samples to an even rate leaves of a tone's level: found by sending a tone of size 1, taken at the
 * same instants, the same way. An image loses what the unevenness scatters, less what the evening takes back of it.
 */
import { evenerOf } from '../prepare/resample.ts';
import type { Instants } from './instants.ts';

/** Samples are taken from the middle of the recording, no more than this: enough for a level to a percent. */
const MOST_SAMPLES = 6000;

/** 0-to-peak amplitude of even samples at a frequency, under a Hann window. */
const amplitudeAt = (even: Float64Array, cyclesPerSample: number): number => {
  let re = 0;
  let im = 0;
  for (let i = 0; i < even.length; i++) {
    const weight = 1 - Math.cos((2 * Math.PI * (i + 0.5)) / even.length);
    re += weight * even[i]! * Math.cos(2 * Math.PI * cyclesPerSample * i);
    im += weight * even[i]! * Math.sin(2 * Math.PI * cyclesPerSample * i);
  }
  return (2 * Math.hypot(re, im)) / even.length;
};

/**
 * @returns for a tone, given where it shows, Hz, and how many sampling rates away it truly stands: the share of its level
 *   that shows
 */
export const levelLeftBy = ({ samplingRateHz, pieces }: Instants): ((shownHz: number, fold: number) => number) => {
  const longest = pieces.reduce((a, b) => (b.timeS.length > a.timeS.length ? b : a));
  const from = Math.max(0, Math.floor((longest.timeS.length - MOST_SAMPLES) / 2));
  const timeS = longest.timeS.subarray(from, from + MOST_SAMPLES);
  const evened = evenerOf(timeS, samplingRateHz);
  return (shownHz, fold) => {
    const hz = shownHz + fold * samplingRateHz;
    const tone = timeS.map((t) => Math.cos(2 * Math.PI * hz * (t - timeS[0]!)));
    return amplitudeAt(evened(tone), shownHz / samplingRateHz);
  };
};
