/** Short frames of the recording, each bin's energy over all axes in units of the noise usual there. */
import type { Blocks } from '../prepare/blocks.ts';
import { gammaTailQuantile } from '../numeric/distributions.ts';
import { powerOfTwoAtLeast } from '../spectra/fft.ts';
import { packedLength } from '../numeric/hermitian.ts';
import { makeLevel } from './levels.ts';
import { loudnessOf } from './segment-weights.ts';
import { forEachSpectrum, type Cut } from '../spectra/segments.ts';
import { whiten } from './whiten.ts';
import { nthSmallest } from '../numeric/statistics.ts';
import { windowSamples } from '../spectra/windows.ts';

export interface FrameEnergies {
  readonly timeS: Float64Array;
  readonly hopS: number;
  readonly stepHz: number;
  readonly bins: number;
  /** Row-major by frame. In noise alone: gamma with the number of axes as shape. */
  readonly energy: Float64Array;
}

const middleOf = (values: Float64Array): number =>
  values.length > 0 ? nthSmallest(values.slice(), values.length >> 1) : 0;

/**
 * Frames of the given length, half overlapped. What stays at one frequency all the time (hums, resonances, the road's
 * humps) is taken as noise there: each bin is measured against its own median over time where that is above the floor.
 */
export const frameEnergies = (blocks: Blocks, lengthS: number, lowestHz: number, highestHz: number): FrameEnergies => {
  const rate = blocks.samplingRateHz;
  const axes = blocks.axisCount;
  const length = Math.max(16, Math.round(lengthS * rate));
  const size = 2 * powerOfTwoAtLeast(length);
  const stepHz = rate / size;
  const bins = Math.min(size / 2 + 1, Math.ceil(highestHz / stepHz) + 2);
  const from = Math.max(1, Math.floor(lowestHz / stepHz));
  const level = makeLevel(blocks, loudnessOf(blocks), length, highestHz + 4 / lengthS);
  const noise = whiten(axes, level, Math.max(1, Math.floor((0.7 * lowestHz) / level.stepHz)));
  const hop = Math.max(1, length >> 1);
  const cuts: Cut[] = [];
  blocks.blocks.forEach(({ axes: channels }, piece) => {
    for (let offset = 0; offset + length <= channels[0]!.length; offset += hop) cuts.push({ piece, offset });
  });
  // Whitening coefficients per bin, with the weights of a packed trace in them.
  const coefficients = Array.from({ length: packedLength(axes) }, () => new Float64Array(bins));
  for (let k = from; k < bins; k++) {
    const w = noise.whitenerAt(Math.min(level.bins - 1, (k * stepHz) / level.stepHz));
    for (let q = 0; q < w.length; q++) coefficients[q]![k] = ((q < axes ? 1 : 2) * w[q]!) / (0.375 * length);
  }
  const energy = new Float64Array(cuts.length * bins);
  const re = Array.from({ length: axes }, () => new Float64Array(bins));
  const im = Array.from({ length: axes }, () => new Float64Array(bins));
  forEachSpectrum(
    { pieces: blocks.blocks },
    cuts,
    windowSamples('hann', length),
    Array.from({ length: axes }, (_, a) => a),
    (spectrum, cut, axis) => {
      re[axis]!.set(spectrum.re.subarray(0, bins));
      im[axis]!.set(spectrum.im.subarray(0, bins));
      const row = energy.subarray(cut * bins, (cut + 1) * bins);
      const [xr, xi] = [re[axis]!, im[axis]!];
      const own = coefficients[axis]!;
      for (let k = from; k < bins; k++) row[k]! += own[k]! * (xr[k]! * xr[k]! + xi[k]! * xi[k]!);
      for (let other = 0; other < axis; other++) {
        const q = axes + 2 * (other * axes - (other * (other + 1)) / 2 + (axis - other - 1));
        const [yr, yi, cr, ci] = [re[other]!, im[other]!, coefficients[q]!, coefficients[q + 1]!];
        for (let k = from; k < bins; k++) {
          row[k]! += cr[k]! * (yr[k]! * xr[k]! + yi[k]! * xi[k]!) + ci[k]! * (yi[k]! * xr[k]! - yr[k]! * xi[k]!);
        }
      }
    },
    size,
  );
  const usual = gammaTailQuantile(0.5, axes);
  for (let f = 0; f < cuts.length; f++) {
    const row = energy.subarray(f * bins, (f + 1) * bins);
    const scale = usual / Math.max(middleOf(row.subarray(from)), 1e-12);
    for (let k = from; k < bins; k++) row[k]! *= scale;
  }
  const column = new Float64Array(cuts.length);
  for (let k = from; k < bins; k++) {
    for (let f = 0; f < cuts.length; f++) column[f] = energy[f * bins + k]!;
    const scale = usual / Math.max(usual, middleOf(column));
    for (let f = 0; f < cuts.length; f++) energy[f * bins + k]! *= scale;
  }
  const timeS = Float64Array.from(
    cuts,
    ({ piece, offset }) => blocks.blocks[piece]!.startS + (offset + length / 2) / rate,
  );
  return { timeS, hopS: hop / rate, stepHz, bins, energy };
};
