/**
 * Averaged cross-spectra of all axes at several segment lengths: the whole block (best for a steady line), a half, a
 * quarter … (for lines that wander with the speed).
 */
import type { Blocks } from '../prepare/blocks.ts';
import { powerOfTwoAtLeast } from '../spectra/fft.ts';
import { offDiagonal, packedLength } from '../numeric/hermitian.ts';
import { forEachSpectrum, type Cut } from '../spectra/segments.ts';
import { segmentWorth, type Loudness } from './segment-weights.ts';
import { windowSamples } from '../spectra/windows.ts';

export interface Level {
  /** Window length in samples, and s. Natural resolution is 1/lengthS. */
  readonly length: number;
  readonly lengthS: number;
  /** Rate of the samples it is made from, Hz. */
  readonly samplingRateHz: number;
  /** Bins per natural bin (zero padding to a power of two), 1 … 2. */
  readonly pad: number;
  readonly stepHz: number;
  readonly bins: number;
  readonly segments: number;
  /** Independent averages: the overlap's correlation taken off. */
  readonly averages: number;
  /** Bins (of the padded spectrum) that are worth one independent power. */
  readonly binCorrelation: number;
  /** Packed Hermitian cross-spectra averaged over the segments, |X|² of a Hann window with Σw² = 1. Quiet segments weigh
   * more, see segmentWeights. */
  readonly matrix: readonly Float64Array[];
}

/** Shortest segments, s: lines of wheels are 2 … 20 Hz, and less than 3 s cannot tell them apart. */
const SHORTEST_S = 3.5;

/** Even 50 % overlap over a block, its ends included. */
const cutsOf = (blocks: Blocks, length: number): Cut[] => {
  const cuts: Cut[] = [];
  blocks.blocks.forEach(({ axes }, piece) => {
    const n = axes[0]!.length;
    if (n < length) return;
    const count = Math.max(1, Math.round((n - length) / (length / 2)) + 1);
    for (let k = 0; k < count; k++) {
      cuts.push({ piece, offset: count === 1 ? 0 : Math.round((k * (n - length)) / (count - 1)) });
    }
  });
  return cuts;
};

/** Segment lengths in samples, longest first. */
export const levelLengths = (blocks: Blocks): readonly number[] => {
  const lengths: number[] = [];
  const least = SHORTEST_S * blocks.samplingRateHz;
  for (let n = blocks.longest; n >= least || lengths.length === 0; n = Math.floor(n / 2)) {
    if (n < 16) break;
    lengths.push(n);
  }
  return lengths;
};

/** Cross-spectra at one segment length, up to `highestHz`. */
export const makeLevel = (blocks: Blocks, loudness: Loudness, length: number, highestHz: number): Level => {
  const rate = blocks.samplingRateHz;
  const axes = blocks.axisCount;
  const size = powerOfTwoAtLeast(length);
  const stepHz = rate / size;
  const bins = Math.min(size / 2 + 1, Math.ceil(highestHz / stepHz) + 4);
  const cuts = cutsOf(blocks, length);
  const matrix = Array.from({ length: packedLength(axes) }, () => new Float64Array(bins));
  const window = windowSamples('hann', length);
  const { weights, averages, binCorrelation } = segmentWorth(loudness, cuts, length);
  const re = Array.from({ length: axes }, () => new Float64Array(bins));
  const im = Array.from({ length: axes }, () => new Float64Array(bins));
  // Σw² of a Hann window is 3/8 of its length.
  const perSegment = 1 / (cuts.length * 0.375 * length);
  forEachSpectrum(
    { pieces: blocks.blocks },
    cuts,
    window,
    Array.from({ length: axes }, (_, i) => i),
    (spectrum, cut, axis) => {
      re[axis]!.set(spectrum.re.subarray(0, bins));
      im[axis]!.set(spectrum.im.subarray(0, bins));
      const own = matrix[axis]!;
      const ar = re[axis]!;
      const ai = im[axis]!;
      const scale = perSegment * weights[cut]!;
      for (let k = 0; k < bins; k++) {
        own[k]! += (ar[k]! * ar[k]! + ai[k]! * ai[k]!) * scale;
      }
      for (let other = 0; other < axis; other++) {
        const q = offDiagonal(axes, other, axis);
        const crossRe = matrix[q]!;
        const crossIm = matrix[q + 1]!;
        const br = re[other]!;
        const bi = im[other]!;
        for (let k = 0; k < bins; k++) {
          crossRe[k]! += (br[k]! * ar[k]! + bi[k]! * ai[k]!) * scale;
          crossIm[k]! += (bi[k]! * ar[k]! - br[k]! * ai[k]!) * scale;
        }
      }
    },
    size,
  );
  return {
    length,
    lengthS: length / rate,
    samplingRateHz: rate,
    pad: size / length,
    stepHz,
    bins,
    segments: cuts.length,
    averages,
    binCorrelation: (binCorrelation * size) / length,
    matrix,
  };
};
