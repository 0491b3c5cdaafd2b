/**
 * Averaged cross-spectra of all axes at several segment lengths: the whole block (best for a steady line), a half, a
 * quarter … (for lines that wander with the speed).
 */
import type { Blocks } from './blocks.ts';
import { powerOfTwoAtLeast } from './fft.ts';
import { offDiagonal, packedLength } from './hermitian.ts';
import { forEachSpectrum, type Cut } from './segments.ts';
import { effectiveAverages, windowSamples } from './windows.ts';

export interface Level {
  /** Window length in samples, and s. Natural resolution is 1/lengthS. */
  readonly length: number;
  readonly lengthS: number;
  /** Bins per natural bin (zero padding to a power of two), 1 … 2. */
  readonly pad: number;
  readonly stepHz: number;
  readonly bins: number;
  readonly segments: number;
  /** Independent averages: overlap correlation and unequal levels of the segments taken off. */
  readonly averages: number;
  /** Packed Hermitian cross-spectra averaged over the segments, |X|² of a Hann window with Σw² = 1. */
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

/** How much fewer the averages are worth when segments differ in level: 1 + the squared coefficient of variation. */
const unevenness = (energies: Float64Array): number => {
  let sum = 0;
  let squares = 0;
  for (const e of energies) {
    sum += e;
    squares += e * e;
  }
  return sum > 0 ? (energies.length * squares) / (sum * sum) : 1;
};

/** Cross-spectra at one segment length, up to `highestHz`. */
export const makeLevel = (blocks: Blocks, length: number, highestHz: number): Level => {
  const rate = blocks.samplingRateHz;
  const axes = blocks.axisCount;
  const size = powerOfTwoAtLeast(length);
  const stepHz = rate / size;
  const bins = Math.min(size / 2 + 1, Math.ceil(highestHz / stepHz) + 4);
  const cuts = cutsOf(blocks, length);
  const matrix = Array.from({ length: packedLength(axes) }, () => new Float64Array(bins));
  const energies = new Float64Array(cuts.length);
  const re = Array.from({ length: axes }, () => new Float64Array(bins));
  const im = Array.from({ length: axes }, () => new Float64Array(bins));
  const scale = 1 / (cuts.length * 0.375 * length);
  forEachSpectrum(
    { pieces: blocks.blocks },
    cuts,
    windowSamples('hann', length),
    Array.from({ length: axes }, (_, i) => i),
    (spectrum, cut, axis) => {
      re[axis]!.set(spectrum.re.subarray(0, bins));
      im[axis]!.set(spectrum.im.subarray(0, bins));
      const own = matrix[axis]!;
      const ar = re[axis]!;
      const ai = im[axis]!;
      let energy = 0;
      for (let k = 0; k < bins; k++) {
        const p = (ar[k]! * ar[k]! + ai[k]! * ai[k]!) * scale;
        own[k]! += p;
        // Differenced in frequency order: weighting by f² keeps the road's low-frequency sway from deciding alone.
        energy += p * k * k;
      }
      energies[cut]! += energy;
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
    pad: size / length,
    stepHz,
    bins,
    segments: cuts.length,
    averages: Math.max(1, effectiveAverages('hann', 0.5, cuts.length) / unevenness(energies)),
    matrix,
  };
};
