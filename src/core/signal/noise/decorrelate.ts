/**
 * The axes made so that the noise on them is independent: each is freed of what the noise on those before it lets expect.
 *
 * What the road shakes one way shakes every axis of a sensor that is not mounted straight, and covers on each a line that
 * stands clear in a quiet direction. With C⁻¹ = Mᴴ·D·M, C the noise matrix and M triangular with ones on its diagonal,
 * the noise on the axes of y = M·x is independent, and their powers, each over its own noise, add up to xᴴ·C⁻¹·x, however
 * the sensor is turned (the modified Cholesky factor as linear prediction; e.g. G. H. Golub & C. F. Van Loan, Matrix
 * Computations, 4th ed. 2013, 4.1).
 */
import { toBlocks } from '../prepare/blocks.ts';
import { complexArray, inverseComplexSpectrum, powerOfTwoAtLeast, realSpectrum } from '../spectra/fft.ts';
import type { ComplexArray } from '../spectra/fft.ts';
import { unitFactor } from '../numeric/hermitian.ts';
import type { Prepared } from '../spectra/spectrum.ts';
import { makeLevel } from './levels.ts';
import { loudnessOf } from './segment-weights.ts';
import { whiten } from './whiten.ts';

/** Segments in which the noise is read, s: its bands are some 32 of their bins wide, 1.6 Hz. */
const SEGMENT_S = 20;
const LEAST_SAMPLES = 64;
const LOWEST_HZ = 1.5;
/** From place to place of the filters, Hz. */
const STEP_HZ = 0.25;
/** Filters that change no faster than from band to band have rung out after this, s. */
const GUARD_S = 4;

/** M at even steps of frequency: `rows[axis][other]` is what is added of another axis. */
interface Factors {
  readonly places: number;
  readonly rows: readonly (readonly ComplexArray[])[];
}

const factorsOf = (prepared: Prepared, axes: number, highestHz: number): Factors | null => {
  const blocks = toBlocks(prepared, highestHz);
  const length = Math.min(blocks.longest, Math.round(SEGMENT_S * blocks.samplingRateHz));
  if (length < LEAST_SAMPLES) return null;
  const level = makeLevel(blocks, loudnessOf(blocks), length, highestHz);
  const lowest = Math.max(1, Math.floor(LOWEST_HZ / level.stepHz));
  const { whitenerAt } = whiten(axes, level, lowest);
  const places = Math.ceil(highestHz / STEP_HZ) + 1;
  const rows = Array.from({ length: axes }, (_, axis) => Array.from({ length: axis }, () => complexArray(places)));
  for (let place = 0; place < places; place++) {
    const bin = Math.min(level.bins - 1, Math.max(lowest, (place * STEP_HZ) / level.stepHz));
    unitFactor(axes, whitenerAt(bin)).forEach((row, axis) =>
      row.forEach(({ re, im }, other) => {
        rows[axis]![other]!.re[place] = re;
        rows[axis]![other]!.im[place] = im;
      }),
    );
  }
  return { places, rows };
};

/** Adds what an axis gets of another one, from spectrum to spectrum. */
const addFiltered = (
  to: ComplexArray,
  from: ComplexArray,
  filter: ComplexArray,
  places: number,
  binHz: number,
): void => {
  for (let k = 1; k < from.re.length - 1; k++) {
    const at = Math.min(places - 1, (k * binHz) / STEP_HZ);
    const i = Math.min(places - 2, Math.floor(at));
    const share = at - i;
    const re = filter.re[i]! + share * (filter.re[i + 1]! - filter.re[i]!);
    const im = filter.im[i]! + share * (filter.im[i + 1]! - filter.im[i]!);
    to.re[k]! += re * from.re[k]! - im * from.im[k]!;
    to.im[k]! += re * from.im[k]! + im * from.re[k]!;
  }
};

/** The real signal of a spectrum that goes to half the rate. */
const realSignal = (half: ComplexArray, size: number, length: number): Float64Array => {
  const whole = complexArray(size);
  whole.re.set(half.re);
  whole.im.set(half.im);
  for (let k = 1; k < size / 2; k++) {
    whole.re[size - k] = half.re[k]!;
    whole.im[size - k] = -half.im[k]!;
  }
  return inverseComplexSpectrum(whole).re.slice(0, length);
};

type Piece = Prepared['pieces'][number];

const freed = (piece: Piece, { places, rows }: Factors, samplingRateHz: number): Piece => {
  const length = piece.axes[0]!.length;
  const size = powerOfTwoAtLeast(length + Math.round(GUARD_S * samplingRateHz));
  const spectra = piece.axes.map((axis) => realSpectrum(axis, size));
  const axes = piece.axes.map((samples, axis) => {
    if (axis === 0) return samples;
    const own = { re: spectra[axis]!.re.slice(), im: spectra[axis]!.im.slice() };
    rows[axis]!.forEach((filter, other) => addFiltered(own, spectra[other]!, filter, places, samplingRateHz / size));
    return realSignal(own, size, length);
  });
  return { ...piece, axes };
};

/**
 * The same recording with independent noise on its axes, m/s²; one axis alone, or a very short one, as it is. Lines of
 * turning parts stay, on what axes they may; strong ones that sweep far count as noise, and are held down with it.
 * @param highestHz up to which it is wanted
 */
export const decorrelated = (prepared: Prepared, highestHz: number): Prepared => {
  const axes = prepared.pieces[0]?.axes.length ?? 0;
  const factors = axes < 2 ? null : factorsOf(prepared, axes, highestHz);
  if (!factors) return prepared;
  return { ...prepared, pieces: prepared.pieces.map((piece) => freed(piece, factors, prepared.samplingRateHz)) };
};
