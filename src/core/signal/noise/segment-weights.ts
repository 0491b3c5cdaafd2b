/**
 * What an average over segments is worth on a road whose loudness changes.
 *
 * From the loudness over time, v(t), and the window w(t) of each segment follow exactly, for noise of any colour:
 * - the weight that makes every segment bring the same noise: 1/Σw²v;
 * - the correlation of two segments that share samples: ρ = Σ w_k w_l v / √(Σ w_k² v · Σ w_l² v), hence the independent
 *   averages K_eff = K²/(K + 2Σρ²), (1/6)² for each pair in steady noise with a Hann window at half overlap;
 * - how many neighbouring bins of one spectrum are worth one: L·Σ(w²v)²/(Σw²v)², 35/18 = 1.944 in steady noise.
 * Loud stretches shorter than the segment make all three worse, and a detector that does not know it gives false alarms.
 */
import type { Blocks } from '../prepare/blocks.ts';
import type { Cut } from '../spectra/segments.ts';

/** Loudness is averaged over cells of this length, s: shorter than any segment, long against the noise itself. */
const CELL_S = 0.25;

export interface SegmentWorth {
  /** Mean 1. */
  readonly weights: Float64Array;
  /** Independent averages. */
  readonly averages: number;
  /** Natural bins (1/segment length) that are worth one independent power. */
  readonly binCorrelation: number;
}

export interface Loudness {
  readonly cell: number;
  /** Per block, per cell: squared difference of neighbouring samples in units of its mean, all axes added. */
  readonly blocks: readonly Float64Array[];
}

/** Differenced, so that slow sway does not decide alone. */
export const loudnessOf = (blocks: Blocks): Loudness => {
  const cell = Math.max(8, Math.round(CELL_S * blocks.samplingRateHz));
  const out = blocks.blocks.map(({ axes }) => new Float64Array(Math.floor(axes[0]!.length / cell) + 1));
  for (let a = 0; a < blocks.axisCount; a++) {
    let total = 0;
    let count = 0;
    const own = blocks.blocks.map(({ axes }) => {
      const x = axes[a]!;
      const sums = new Float64Array(Math.floor(x.length / cell) + 1);
      for (let i = 1; i < x.length; i++) sums[Math.floor(i / cell)]! += (x[i]! - x[i - 1]!) ** 2;
      count += x.length;
      for (const s of sums) total += s;
      return sums;
    });
    const scale = total > 0 ? count / total / cell : 0;
    own.forEach((sums, b) => sums.forEach((s, i) => (out[b]![i]! += s * scale)));
  }
  return { cell, blocks: out };
};

/** Σ over the cells of both windows' product times the loudness, and of its square. */
const overlapSums = (v: Float64Array, cell: number, length: number, a: number, b: number): [number, number] => {
  let sum = 0;
  let squares = 0;
  const from = Math.max(a, b);
  const to = Math.min(a, b) + length;
  const hann = (at: number, offset: number): number => Math.sin((Math.PI * (at - offset)) / length) ** 2;
  for (let c = Math.floor(from / cell); c * cell < to; c++) {
    const at = (c + 0.5) * cell;
    if (at <= from || at >= to) continue;
    const product = hann(at, a) * hann(at, b) * v[c]!;
    sum += product;
    squares += product * product;
  }
  return [sum, squares];
};

/** For Hann-windowed segments of the given length. */
export const segmentWorth = (loudness: Loudness, cuts: readonly Cut[], length: number): SegmentWorth => {
  const { cell } = loudness;
  let correlation = 0;
  const levels = cuts.map(({ piece, offset }) => {
    const [sum, squares] = overlapSums(loudness.blocks[piece]!, cell, length, offset, offset);
    correlation += sum > 0 ? ((length / cell) * squares) / (sum * sum) : 0;
    return Math.max(sum, Number.MIN_VALUE);
  });
  let pairs = 0;
  for (let k = 0; k < cuts.length; k++) {
    const a = cuts[k]!;
    for (let l = k + 1; l < cuts.length; l++) {
      const b = cuts[l]!;
      if (b.piece !== a.piece || b.offset >= a.offset + length) break;
      const [shared] = overlapSums(loudness.blocks[a.piece]!, cell, length, a.offset, b.offset);
      pairs += (shared * shared) / (levels[k]! * levels[l]!);
    }
  }
  const inverted = Float64Array.from(levels, (level) => 1 / level);
  const mean = inverted.reduce((sum, w) => sum + w, 0) / Math.max(1, inverted.length);
  return {
    weights: inverted.map((w) => w / mean),
    averages: cuts.length ** 2 / (cuts.length + 2 * pairs),
    binCorrelation: Math.max(1, correlation / Math.max(1, cuts.length)),
  };
};
