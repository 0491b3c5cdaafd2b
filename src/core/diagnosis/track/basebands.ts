/** A narrow band of the recording moved down to 0 Hz, for asking how a tone in it moves. */
import {
  complexArray,
  complexSpectrum,
  inverseComplexSpectrum,
  powerOfTwoAtLeast,
  type ComplexArray,
} from '../../signal/spectra/fft.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';

/** Spectra of a stretch of all axes, from which bands are cut. */
export interface WholeSpectra {
  readonly samplingRateHz: number;
  readonly startS: number;
  /** Samples of the stretch, and of the transform (zeros follow). */
  readonly length: number;
  readonly size: number;
  readonly axes: readonly ComplexArray[];
}

export interface Baseband {
  readonly startS: number;
  readonly stepS: number;
  /** Complex envelope of each axis about the band's centre. */
  readonly axes: readonly ComplexArray[];
}

/** Longest stretch that is looked at in one, s. */
const LONGEST_S = 120;
/** Width of the bands, Hz: a line at 100 Hz sweeps this far in a pull-up. */
const BAND_HZ = 64;

/** The longest piece, cut to at most two minutes. */
export const wholeSpectra = (prepared: Prepared): WholeSpectra => {
  const rate = prepared.samplingRateHz;
  const piece = prepared.pieces.reduce((a, b) => ((b.axes[0]?.length ?? 0) > (a.axes[0]?.length ?? 0) ? b : a));
  const length = Math.min(piece.axes[0]?.length ?? 0, Math.floor(LONGEST_S * rate));
  const size = powerOfTwoAtLeast(length);
  const axes = piece.axes.map((samples) => {
    const input = complexArray(size);
    input.re.set(samples.subarray(0, length));
    return complexSpectrum(input);
  });
  return { samplingRateHz: rate, startS: piece.startS, length, size, axes };
};

export const basebandAt = (spectra: WholeSpectra, frequencyHz: number): Baseband => {
  const { samplingRateHz, size, length, startS } = spectra;
  const step = samplingRateHz / size;
  const bins = Math.min(size, powerOfTwoAtLeast(BAND_HZ / step));
  const centre = Math.round(frequencyHz / step);
  const stepS = size / (bins * samplingRateHz);
  const count = Math.min(bins, Math.floor(length / samplingRateHz / stepS));
  // What the nearest bin is off the frequency is turned out of the envelope.
  const offHz = centre * step - frequencyHz;
  const axes = spectra.axes.map(({ re, im }) => {
    const band = complexArray(bins);
    for (let k = -bins / 2; k < bins / 2; k++) {
      const from = (((centre + k) % size) + size) % size;
      const to = (k + bins) % bins;
      band.re[to] = re[from]!;
      band.im[to] = im[from]!;
    }
    const wide = inverseComplexSpectrum(band);
    const out = complexArray(count);
    for (let i = 0; i < count; i++) {
      const phase = 2 * Math.PI * offHz * i * stepS;
      const c = Math.cos(phase);
      const s = Math.sin(phase);
      out.re[i] = wide.re[i]! * c - wide.im[i]! * s;
      out.im[i] = wide.re[i]! * s + wide.im[i]! * c;
    }
    return out;
  });
  return { startS, stepS, axes };
};
