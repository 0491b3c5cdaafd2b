/** What detection works on: a rate no higher than the search needs, in blocks no longer than a steady drive. */
import { decimate, decimationFor } from './decimate.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** A steady line is added up coherently over at most this long; longer recordings are averaged. */
const LONGEST_BLOCK_S = 100;

/** An even stretch of all axes. */
export interface Block {
  readonly startS: number;
  readonly axes: readonly Float64Array[];
}

export interface Blocks {
  readonly samplingRateHz: number;
  readonly axisCount: number;
  readonly blocks: readonly Block[];
  /** Samples of the longest block. */
  readonly longest: number;
}

/** The same blocks at a rate that still shows `highestHz`. */
export const slowerBlocks = (blocks: Blocks, highestHz: number): Blocks => {
  const factor = decimationFor(blocks.samplingRateHz, highestHz);
  if (factor === 1) return blocks;
  const slower = blocks.blocks.map((block) => ({ ...block, axes: block.axes.map((axis) => decimate(axis, factor)) }));
  return {
    ...blocks,
    samplingRateHz: blocks.samplingRateHz / factor,
    blocks: slower,
    longest: Math.max(0, ...slower.map(lengthOf)),
  };
};

const lengthOf = ({ axes }: Block): number => axes[0]?.length ?? 0;

/** How many equal blocks of at most 100 s a piece is cut into. */
const blockCount = (piece: Block, samplingRateHz: number): number =>
  Math.max(1, Math.ceil(lengthOf(piece) / samplingRateHz / LONGEST_BLOCK_S));

/** The longest piece alone, and of a long one the first of its blocks: nothing else need be filtered. */
export const longestStretch = (prepared: Prepared): Prepared => {
  const [longest] = [...prepared.pieces].sort((a, b) => lengthOf(b) - lengthOf(a));
  if (!longest) return prepared;
  const length = Math.floor(lengthOf(longest) / blockCount(longest, prepared.samplingRateHz));
  return { ...prepared, pieces: [{ ...longest, axes: longest.axes.map((axis) => axis.subarray(0, length)) }] };
};

/** Pieces at a rate that still shows `highestHz`, cut into equal blocks of at most 100 s. */
export const toBlocks = (prepared: Prepared, highestHz: number): Blocks => {
  const factor = decimationFor(prepared.samplingRateHz, highestHz);
  const samplingRateHz = prepared.samplingRateHz / factor;
  const blocks: Block[] = [];
  for (const piece of prepared.pieces) {
    const axes = piece.axes.map((axis) => decimate(axis, factor));
    const n = axes[0]?.length ?? 0;
    const count = blockCount(piece, prepared.samplingRateHz);
    const length = Math.floor(n / count);
    for (let b = 0; b < count; b++) {
      const from = b * length;
      blocks.push({
        startS: piece.startS + from / samplingRateHz,
        axes: axes.map((axis) => axis.subarray(from, from + length)),
      });
    }
  }
  return {
    samplingRateHz,
    axisCount: prepared.pieces[0]?.axes.length ?? 0,
    blocks,
    longest: Math.max(0, ...blocks.map(lengthOf)),
  };
};
