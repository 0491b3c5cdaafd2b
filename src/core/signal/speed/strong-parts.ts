/** The parts of a recording in which an order is strong while it is weak in the rest: bursts, and what fades. */
import type { Span } from '../../reading/cut-recording.ts';
import type { OrderLevel } from './order-level.ts';
import { mean } from '../numeric/statistics.ts';

export interface StrongParts {
  /** In order of time. */
  readonly spans: readonly Span[];
  /** Mean squared amplitude in them, noise taken out, and its least value that noise leaves open, (m/s²)². */
  readonly power: number;
  readonly leastPower: number;
  /** Mean of ln of the relative speed in them. */
  readonly logSpeed: number;
}

/** A block belongs to a part from this share of the strongest power on: half the amplitude. */
const STRONG_SHARE = 1 / 4;
/** In the rest the mean power is less than this share of theirs: a third of the amplitude. Judgment. */
const REST_SHARE = 1 / 10;
/** Parts that take up more of the recording than this are the recording. Judgment. */
const MOST_SHARE = 0.6;
/** Fewer blocks have no rest. */
const LEAST_BLOCKS = 5;
/** Parts go on through so many weak blocks between strong ones. */
const BRIDGED = 1;
/** A steady order that stands less over the noise of a block comes and goes by that noise. Judgment. */
const OVER_NOISE = 8;
/** Standard deviations of noise: three and the strongest of a thousand pairs of blocks of mere noise stays below. */
const SURELY = 3;

/** Strong blocks next to each other, none across a gap. */
const runsOf = (strong: readonly number[], { blockStartsS, stepS }: OrderLevel): readonly (readonly number[])[] => {
  const runs: number[][] = [];
  const tooFarS = (BRIDGED + 1.5) * stepS;
  for (const block of strong) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run && before !== undefined && blockStartsS[block]! - blockStartsS[before]! < tooFarS) run.push(block);
    else runs.push([block]);
  }
  return runs;
};

/** All blocks from the first to the last strong one of a run, weak ones between them too. */
const throughout = (run: readonly number[]): readonly number[] =>
  Array.from({ length: run.at(-1)! - run[0]! + 1 }, (_, k) => run[0]! + k);

/**
 * Noise that makes the strong parts as rough as they are: an order swells and fades smoothly from block to half-overlapped
 * block, while on a resonance that the road shakes there is more noise than beside the order, and its power comes and goes.
 * Of a power m with the variance v that noise N gives it, v = 2(m − N)·N + N².
 */
const roughNoise = ({ blockPowers, blockStartsS, stepS }: OrderLevel, runs: readonly (readonly number[])[]): number => {
  // Before the first and after the last block there is none.
  const isNext = (i: number): boolean => (blockStartsS[i + 1] ?? NaN) - (blockStartsS[i] ?? NaN) < 1.5 * stepS;
  const inner = runs.flatMap(throughout).filter((i) => isNext(i - 1) && isNext(i));
  if (inner.length === 0) return 0;
  const off = inner.map((i) => blockPowers[i]! - (blockPowers[i - 1]! + blockPowers[i + 1]!) / 2);
  // Of three independent values: one and two quarters of their variance.
  const variance = mean(off.map((d) => d * d)) / 1.5;
  const power = mean(inner.map((i) => blockPowers[i]!));
  return power - Math.sqrt(Math.max(0, power ** 2 - variance));
};

/** @returns null where the order is much the same throughout, or where noise may have made the difference */
export const strongParts = (level: OrderLevel): StrongParts | null => {
  const { blockPowers, blockNoises, blockStartsS, blockLogSpeeds, stepS } = level;
  const over = blockPowers.map((power, i) => power - blockNoises[i]!);
  if (over.length < LEAST_BLOCKS) return null;
  // Blocks overlap by half: two neighbours are some 5 s of 4 s blocks.
  const pairs = over.slice(1).map((power, i) => (power + over[i]!) / 2);
  const most = Math.max(...pairs);
  const strong = [...over.keys()].filter((i) => over[i]! >= STRONG_SHARE * most);
  if (most <= 0 || strong.length > MOST_SHARE * over.length) return null;
  const power = mean(strong.map((i) => over[i]!));
  const rest = mean(over.filter((one) => one < STRONG_SHARE * most));
  const runs = runsOf(strong, level);
  const noise = Math.max(mean(strong.map((i) => blockNoises[i]!)), roughNoise(level, runs));
  // Half-overlapped Hann blocks are all but independent; an order crossed with noise, and noise with itself.
  const leastPower = power - SURELY * Math.sqrt((2 * Math.max(0, power) * noise + noise ** 2) / strong.length);
  if (power < OVER_NOISE * noise || leastPower <= 0 || rest > REST_SHARE * power) return null;
  // A Hann window hears little at its ends.
  const spans = runs.map((run) => ({
    fromS: blockStartsS[run[0]!]! + stepS / 2,
    toS: blockStartsS[run.at(-1)!]! + (3 * stepS) / 2,
  }));
  return { spans, power, leastPower, logSpeed: mean(strong.map((i) => blockLogSpeeds[i]!)) };
};
