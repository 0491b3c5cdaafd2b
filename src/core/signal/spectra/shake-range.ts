/** How much the whole shake rises and falls over a recording: one drive on one road keeps it within a factor of two. */
import type { Prepared } from './spectrum.ts';
import { median, quantile } from '../numeric/statistics.ts';

/** Blocks in which the shake is read, s: long beside the slowest mode of a body, short beside a drive. */
const BLOCK_S = 2;
/** Samples of a block that its median is taken of, at the most. */
const MOST_SAMPLES = 400;
/** Steps of the golden ratio reach all of a block and fall in with no tone, as even ones would. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const LOW = 0.1;
const HIGH = 0.9;
/** Fewer blocks say nothing. */
const LEAST_BLOCKS = 8;

/** Median of the absolute values: short shocks do not move it. */
const shakeOf = (axis: Float64Array, from: number, length: number): number => {
  const count = Math.min(length, MOST_SAMPLES);
  const at = (i: number): number => (count === length ? i : Math.floor(((i * GOLDEN) % 1) * length));
  return median(Float64Array.from({ length: count }, (_, i) => Math.abs(axis[from + at(i)]!)));
};

/**
 * Ratio of the loud tenth to the quiet tenth of the blocks, all axes together (root-sum-square of median absolute
 * values).
 * @returns 1 where the recording is too short to tell
 */
export const shakeRange = ({ pieces, samplingRateHz }: Prepared): number => {
  const length = Math.round(BLOCK_S * samplingRateHz);
  const shakes = pieces.flatMap(({ axes }) =>
    Array.from({ length: Math.floor((axes[0]?.length ?? 0) / length) }, (_, b) =>
      Math.hypot(...axes.map((axis) => shakeOf(axis, b * length, length))),
    ),
  );
  if (shakes.length < LEAST_BLOCKS) return 1;
  return quantile(shakes, HIGH) / Math.max(quantile(shakes, LOW), 1e-12);
};
