/** A recording in which what moved by the same hertz with the speed stands still: an image of one line, say. */
import { complexArray, complexSpectrum, inverseComplexSpectrum, powerOfTwoAtLeast } from '../spectra/fft.ts';
import { timeAhead, type SpeedTrack } from './equal-angle.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** Real part of the analytic signal, turned back by `slopeHz` times the time ahead. */
const turnedBack = (samples: Float64Array, aheadS: Float64Array, slopeHz: number): Float64Array => {
  const size = powerOfTwoAtLeast(samples.length);
  const input = complexArray(size);
  input.re.set(samples);
  const spectrum = complexSpectrum(input);
  for (let k = 1; k < size / 2; k++) {
    spectrum.re[k]! *= 2;
    spectrum.im[k]! *= 2;
  }
  spectrum.re.fill(0, size / 2 + 1);
  spectrum.im.fill(0, size / 2 + 1);
  const { re, im } = inverseComplexSpectrum(spectrum);
  return samples.map((_, i) => {
    const angle = 2 * Math.PI * slopeHz * aheadS[i]!;
    return re[i]! * Math.cos(angle) + im[i]! * Math.sin(angle);
  });
};

/**
 * What moved by `slopeHz` for each unit of the track's relative speed is made steady, its amplitude kept; all else is
 * smeared. (An order seen directly moves by its own frequency and is better read on equal angle.)
 * @param slopeHz negative for what falls as the speed rises
 */
export const withoutMotion = (prepared: Prepared, track: SpeedTrack, slopeHz: number): Prepared => ({
  ...prepared,
  pieces: prepared.pieces.map(({ startS, axes }) => {
    const aheadS = timeAhead(track, startS, 1 / prepared.samplingRateHz, axes[0]?.length ?? 0);
    return { startS, axes: axes.map((axis) => turnedBack(axis, aheadS, slopeHz)) };
  }),
});
