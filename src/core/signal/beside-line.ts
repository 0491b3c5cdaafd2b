/** The spectrum about one frequency, as fine as the recording is long, without making the whole of it. */
import { longestStretch, toBlocks } from './blocks.ts';
import type { Prepared } from './spectrum.ts';
import { FLAT_BAND, makeZoom, sliceBand } from './zoom.ts';

export interface BesideLine {
  /** Frequency of the middle bin, Hz. */
  readonly centreHz: number;
  /** One over the length of the block, Hz. */
  readonly binHz: number;
  /** 0-to-peak amplitude per bin, all axes together (root-sum-square), m/s²; an odd number, as many to each side. */
  readonly amplitudeMps2: Float64Array;
}

/**
 * Amplitudes under a Hann window over the longest steady stretch (at most 100 s), bin by bin about a frequency.
 * @param reachHz to each side, and so many bins more
 * @returns null where the recording holds no samples
 */
export const besideLine = (
  prepared: Prepared,
  frequencyHz: number,
  reachHz: number,
  moreBins: number,
): BesideLine | null => {
  const rate = prepared.samplingRateHz;
  // A little room above: what the filter of the slower rate lets through there is not flat.
  const blocks = toBlocks(longestStretch(prepared), Math.min(0.49 * rate, 1.1 * (frequencyHz + reachHz)));
  const [block] = blocks.blocks;
  if (!block || blocks.longest === 0) return null;
  const { startS } = block;
  const lengthS = blocks.longest / blocks.samplingRateHz;
  const binHz = 1 / lengthS;
  const reachBins = Math.floor(reachHz * lengthS) + moreBins;
  const zoom = makeZoom(blocks);
  const band = sliceBand(zoom.band(0, frequencyHz, ((reachBins + 2) * binHz) / FLAT_BAND), startS, startS + lengthS);
  const { centreHz, stepS, weight, norm, axes } = band;
  const amplitudeMps2 = Float64Array.from({ length: 2 * reachBins + 1 }, (_, k) => {
    const turn = -2 * Math.PI * (k - reachBins) * binHz * stepS;
    let power = 0;
    for (const { re, im } of axes) {
      let [sumRe, sumIm] = [0, 0];
      for (let i = 0; i < weight.length; i++) {
        const c = Math.cos(turn * i) * weight[i]!;
        const s = Math.sin(turn * i) * weight[i]!;
        sumRe += re[i]! * c - im[i]! * s;
        sumIm += re[i]! * s + im[i]! * c;
      }
      power += sumRe * sumRe + sumIm * sumIm;
    }
    return Math.sqrt(power) / norm;
  });
  return { centreHz, binHz, amplitudeMps2 };
};
