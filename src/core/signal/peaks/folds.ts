/**
 * Which frequency a tone truly has, by uneven samples: at even instants a tone and those that differ from it by the
 * sampling rate give the same samples, at uneven ones they do not. The true one adds up best when turned back at the
 * instants themselves.
 */
import type { Instants } from './instants.ts';

/** A tone seen as one that stands `fold` sampling rates from where it shows: 0 itself, −1 the rate less its true frequency. */
export interface Fold {
  readonly fold: number;
  /** ln of the likelihood, 0 of the likeliest. */
  readonly logLikelihood: number;
}

/** Blocks are short against the wander of a tone, and half overlapped. */
const BLOCK_S = 2;
/** Independent blocks to each of those half overlapped, under a Hann window (P. D. Welch 1967). */
const INDEPENDENT = 0.53;
/** Bins of 1/BLOCK_S beside the tone at which the noise is read: clear of the main lobe. */
const BESIDE_BINS = [-5, -4, -3, 3, 4, 5] as const;

interface Block {
  readonly piece: Instants['pieces'][number];
  readonly from: number;
  readonly to: number;
  readonly middleS: number;
  /** Hann weights, adding up to 2: a sine of amplitude A gives a sum of size A. */
  readonly weights: Float64Array;
}

const blocksOf = ({ pieces }: Instants): readonly Block[] =>
  pieces.flatMap((piece) => {
    const { timeS } = piece;
    const blocks: Block[] = [];
    const lastS = timeS[timeS.length - 1]!;
    let from = 0;
    for (let startS = timeS[0]!; startS + BLOCK_S <= lastS; startS += BLOCK_S / 2) {
      while (timeS[from]! < startS) from++;
      let to = from;
      while (timeS[to]! < startS + BLOCK_S) to++;
      const weights = timeS.slice(from, to).map((t) => 1 - Math.cos((2 * Math.PI * (t - startS)) / BLOCK_S));
      const sum = weights.reduce((all, w) => all + w, 0);
      if (sum > 0)
        blocks.push({ piece, from, to, middleS: startS + BLOCK_S / 2, weights: weights.map((w) => (2 * w) / sum) });
    }
    return blocks;
  });

/** Squared 0-to-peak amplitude of each axis at a frequency, (m/s²)². */
const powersAt = (
  { piece, from, to, middleS, weights }: Block,
  axes: readonly Float64Array[],
  hz: number,
): number[] => {
  const re = axes.map(() => 0);
  const im = axes.map(() => 0);
  for (let i = from; i < to; i++) {
    const angle = 2 * Math.PI * hz * (piece.timeS[i]! - middleS);
    const c = weights[i - from]! * Math.cos(angle);
    const s = weights[i - from]! * Math.sin(angle);
    for (let axis = 0; axis < axes.length; axis++) {
      const value = axes[axis]![i - from]!;
      re[axis]! += value * c;
      im[axis]! += value * s;
    }
  }
  return re.map((part, axis) => part * part + im[axis]! * im[axis]!);
};

/** A mean would, under uneven instants, leak into all frequencies. */
const withoutMean = (axis: Float64Array, { from, to, weights }: Block): Float64Array => {
  const mean = weights.reduce((sum, w, i) => sum + (w / 2) * axis[from + i]!, 0);
  return axis.slice(from, to).map((v) => v - mean);
};

/**
 * How likely folds are for tones of a recording with uneven instants.
 * @returns for a tone, given where it shows at each time, Hz, and the folds asked about, 0 among them: each of these; none
 *   where the recording is too short
 */
export const foldsBy = (
  instants: Instants,
): ((shownHzAt: (atS: number) => number, folds: readonly number[]) => readonly Fold[]) => {
  const rate = instants.samplingRateHz;
  const blocks = blocksOf(instants);
  const axes = blocks.map((block) => block.piece.axes.map((axis) => withoutMean(axis, block)));
  if (blocks.length === 0) return () => [];
  return (shownHzAt, folds) => {
    /** Sum over the blocks, by axis. */
    const sumsAt = (offHz: number): readonly number[] => {
      const powers = blocks.map((block, b) => powersAt(block, axes[b]!, shownHzAt(block.middleS) + offHz));
      return powers[0]!.map((_, axis) => powers.reduce((sum, block) => sum + block[axis]!, 0));
    };
    const beside = BESIDE_BINS.map((bin) => sumsAt(bin / BLOCK_S));
    const noise = beside[0]!.map(
      (_, axis) => beside.reduce((sum, powers) => sum + powers[axis]!, 0) / (beside.length * blocks.length),
    );
    const logs = folds.map((fold) =>
      sumsAt(fold * rate).reduce((sum, power, axis) => sum + (noise[axis]! > 0 ? power / noise[axis]! : 0), 0),
    );
    const most = Math.max(...logs);
    return folds.map((fold, k) => ({ fold, logLikelihood: INDEPENDENT * (logs[k]! - most) }));
  };
};
