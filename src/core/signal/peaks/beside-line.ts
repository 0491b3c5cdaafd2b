/** The spectrum about one frequency, as fine as the recording is long, without making the whole of it. */
import { powersAt } from './band-power.ts';
import { longestStretch, toBlocks } from '../prepare/blocks.ts';
import { identity } from '../numeric/hermitian.ts';
import type { Prepared } from '../spectra/spectrum.ts';
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
  const { centreHz } = band;
  const powers = powersAt(band, identity(blocks.axisCount), centreHz - reachBins * binHz, binHz, 2 * reachBins + 1);
  return { centreHz, binHz, amplitudeMps2: powers.map(Math.sqrt) };
};
