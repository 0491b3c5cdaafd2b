/**
 * The level of one order over a whole run, with an honest uncertainty: block by block along the speed track, noise
 * taken from both sides, the order's own wander seen in the scatter of the blocks.
 */
import { demodulate, interpolator } from './demodulate.ts';
import type { SpeedTrack } from './equal-angle.ts';
import { hannBins } from './hann-bins.ts';
import type { Prepared } from '../spectra/spectrum.ts';

export interface OrderLevel {
  /** Root-mean-square over the blocks of the 0-to-peak amplitude (root-sum-square over axes), noise taken out, m/s². */
  readonly amplitudeMps2: number;
  /** Mean squared amplitude and its standard uncertainty, (m/s²)²; may be negative where noise hides the order. */
  readonly power: number;
  readonly powerSd: number;
  /** Squared amplitude that noise alone shows in a block, (m/s²)². */
  readonly noisePower: number;
  /** Blocks used, and how many independent ones their scatter is worth. */
  readonly blocks: number;
  readonly effectiveBlocks: number;
  /** Squared amplitude of each block, noise still in it, (m/s²)², and how far apart the blocks begin, s. */
  readonly blockPowers: readonly number[];
  readonly stepS: number;
  /** Where each block begins on the recording's clock, s. A block is two steps long. */
  readonly blockStartsS: readonly number[];
  /** Squared amplitude that the noise beside the order shows in each block, (m/s²)². */
  readonly blockNoises: readonly number[];
  /** ln of the relative speed in the middle of each block. */
  readonly blockLogSpeeds: readonly number[];
  /** Variance that noise alone gives to one of them, were the order perfectly steady, (m/s²)⁴. */
  readonly blockScatter: number;
}

/** Block length, s: long enough to part lines half a hertz off, short enough that many blocks show the scatter. */
export const BLOCK_S = 4;
/** Bins of 1/BLOCK_S read beside the order for the noise: clear of a Hann main lobe, on either side. */
const LEFT_BINS = [-5, -4, -3] as const;
const RIGHT_BINS = [3, 4, 5] as const;
const ALL_BINS = [0, ...LEFT_BINS, ...RIGHT_BINS] as const;
/** One side this much above the other has a line of its own: then the quieter side is the noise. */
const SIDES_DIFFER = 3;

/**
 * @param frequencyHz of the order where relative speed is 1
 * @param speed track the order follows; a fixed tone has one point with relative 1
 * @returns null where no piece holds two blocks or the frequency lies outside 1 Hz .. half the rate
 */
export function orderLevel(
  prepared: Prepared,
  frequencyHz: number,
  speed: SpeedTrack,
  blockS = BLOCK_S,
): OrderLevel | null {
  const { samplingRateHz } = prepared;
  const stepLength = Math.round((blockS * samplingRateHz) / 2);
  const highest = frequencyHz * maxOf(speed.relative) + (RIGHT_BINS[2] + 1) / blockS;
  if (!(frequencyHz > 1) || highest >= samplingRateHz / 2) return null;
  const blocks: number[][] = [];
  const byAxis: number[][] = [];
  const logSpeeds: number[] = [];
  const startsS: number[] = [];
  for (const piece of prepared.pieces) {
    const demodulated = demodulate(piece, samplingRateHz, frequencyHz, speed, stepLength);
    const powersAt = hannBins(demodulated, ALL_BINS);
    const relativeAt = interpolator(speed);
    for (let step = 0; step + 2 <= demodulated.steps; step += 1) {
      const startS = piece.startS + (step * stepLength) / samplingRateHz;
      startsS.push(startS);
      logSpeeds.push(Math.log(relativeAt(startS + blockS / 2)));
      const powers = powersAt(step);
      byAxis.push(powers.flatMap((axis) => [axis[0]!, mean(axis.slice(1))]));
      blocks.push(ALL_BINS.map((_, k) => powers.reduce((sum, axis) => sum + axis[k]!, 0)));
    }
  }
  if (blocks.length < 2) return null;
  const signal = blocks.map((powers) => powers[0]!);
  const blockNoises = noisesOf(blocks);
  const noisePower = mean(blockNoises);
  const power = mean(signal) - noisePower;
  const { variance, effectiveBlocks } = varianceOfMean(signal);
  // Six side readings a block, neighbours correlated, so the noise itself is known to about 1/√(3·blocks).
  const noiseVariance = noisePower ** 2 / (3 * blocks.length);
  return {
    amplitudeMps2: Math.sqrt(Math.max(0, power)),
    power,
    powerSd: Math.sqrt(variance + noiseVariance),
    noisePower,
    blocks: blocks.length,
    effectiveBlocks,
    blockPowers: signal,
    stepS: stepLength / samplingRateHz,
    blockStartsS: startsS,
    blockNoises,
    blockLogSpeeds: logSpeeds,
    blockScatter: scatterByNoise(byAxis, noisePower),
  };
}

/**
 * Noise crossed with the order, and with itself, axis by axis: the variance of |A + n|² is 2·A²·N + N².
 * @param byAxis block by block, power and mean of the sides of each axis in turn
 */
function scatterByNoise(byAxis: readonly (readonly number[])[], noisePower: number): number {
  const means = byAxis[0]!.map((_, k) => mean(byAxis.map((values) => values[k]!)));
  const sides = means.filter((_, k) => k % 2 === 1);
  const share = noisePower / sides.reduce((sum, side) => sum + side, 0);
  return sides.reduce((scatter, side, axis) => {
    const noise = share > 0 ? share * side : 0;
    const order = Math.max(0, means[2 * axis]! - noise);
    return scatter + 2 * order * noise + noise * noise;
  }, 0);
}

/** Noise under the order in each block: both sides' mean, or the side that is quieter in all where the other holds a line. */
function noisesOf(blocks: readonly (readonly number[])[]): number[] {
  const side = (first: number): number[] => blocks.map((powers) => mean(powers.slice(first, first + 3)));
  const [low, high] = [side(1), side(4)].sort((a, b) => mean(a) - mean(b)) as [number[], number[]];
  return mean(high) > SIDES_DIFFER * mean(low) ? low : low.map((power, i) => (power + high[i]!) / 2);
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const maxOf = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, value), -Infinity);

/** Variance of the mean of correlated values: scatter times 1 + 2Σρ, the correlations taken while they are positive. */
function varianceOfMean(values: readonly number[]): { variance: number; effectiveBlocks: number } {
  const n = values.length;
  const centre = mean(values);
  const deviations = values.map((value) => value - centre);
  const scatter = deviations.reduce((sum, d) => sum + d * d, 0) / (n - 1);
  let factor = 1;
  for (let lag = 1; lag <= Math.floor(n / 3); lag += 1) {
    let sum = 0;
    for (let i = lag; i < n; i += 1) sum += deviations[i]! * deviations[i - lag]!;
    const correlation = scatter > 0 ? sum / ((n - lag) * scatter) : 0;
    if (correlation <= 0) break;
    factor += 2 * correlation * (1 - lag / n);
  }
  const effectiveBlocks = Math.max(2, n / factor);
  return { variance: scatter / effectiveBlocks, effectiveBlocks };
}
