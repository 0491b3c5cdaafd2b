/**
 * The level of one order over a whole run, with an honest uncertainty: block by block along the speed track, noise
 * taken from both sides, the order's own wander seen in the scatter of the blocks.
 */
import type { SpeedTrack } from './equal-angle.ts';
import { BLOCK_S, LONGER, orderReadings } from './order-readings.ts';
import type { BlockPowers, OrderReadings } from './order-readings.ts';
import type { Hermitian } from '../numeric/hermitian.ts';
import { identity, meanMatrix, sandwich, trace, traceOfProduct } from '../numeric/hermitian.ts';
import type { Prepared } from '../spectra/spectrum.ts';
import { mean } from '../numeric/statistics.ts';

export interface OrderLevel {
  /** Root-mean-square over the blocks of the 0-to-peak amplitude (root-sum-square over axes), noise taken out, m/s². */
  readonly amplitudeMps2: number;
  /** Mean squared amplitude and its standard uncertainty, (m/s²)²; may be negative where noise hides the order. */
  readonly power: number;
  readonly powerSd: number;
  /** Squared amplitude that noise alone shows in a block, and its standard uncertainty, (m/s²)². */
  readonly noisePower: number;
  readonly noisePowerSd: number;
  /** The same read nearer to the order, in longer blocks; null where no piece holds two. What the order wanders is in it. */
  readonly nearNoisePower: number | null;
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
  /** How far the noise's motion lies along the order's, and how far it is one motion alone: 1 where both are one, ⅓ at the least of three axes. */
  readonly noiseAlong: number;
  readonly noiseAsOne: number;
}

/** Places in a block's powers of the bins below and above the order. */
const BELOW = [1, 2, 3] as const;
const ABOVE = [4, 5, 6] as const;
/** All bins of the lobe, whose powers add up to 1.5 times that of a line anywhere near its middle (Hann's sum of squares). */
const LOBE = [0, 7, 8, 9, 10] as const;
const LOBE_SUM = 1.5;
/** Noise that the lobe holds over that of its middle. */
const LOBE_NOISE = LOBE.length / LOBE_SUM;
/** How much more of the noise crosses with the order there: Σw⁴·(Σw)²/(Σw²)³ of the Hann window w. */
const LOBE_CROSSED = 35 / 27;
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
  const readings = orderReadings(prepared, frequencyHz, speed, blockS, false);
  return readings && levelOf(readings);
}

export interface Reading {
  /** W of the axes: of a motion z the power is zᴴ·W·z; all alike where not given. */
  readonly weights?: Hermitian;
  /**
   * The whole lobe, which loses nothing where the track is off by half a bin and holds three times the noise, in place of
   * its middle. The order must have been read closely.
   */
  readonly wholeLobe?: boolean;
}

/** The level out of what was read, in the units of the readings: m/s² and (m/s²)². */
export function levelOf(
  readings: OrderReadings,
  { weights = identity(readings.axes), wholeLobe = false }: Reading = {},
): OrderLevel {
  const { axes, stepS, blocks, longBlocks } = readings;
  const together = (powers: BlockPowers): number[] => powers.map((power) => traceOfProduct(axes, weights, power));
  const sums = blocks.map(({ powers }) => together(powers));
  const noiseFactor = wholeLobe ? LOBE_NOISE : 1;
  const signal = sums.map((powers) =>
    wholeLobe ? LOBE.reduce<number>((sum, k) => sum + powers[k]!, 0) / LOBE_SUM : powers[0]!,
  );
  const middleNoises = noisesOf(sums);
  const blockNoises = middleNoises.map((noise) => noiseFactor * noise);
  const noisePower = mean(blockNoises);
  const power = mean(signal) - noisePower;
  const { variance, effectiveBlocks } = varianceOfMean(signal);
  // Six side readings a block, neighbours correlated, so the noise itself is known to about 1/√(3·blocks).
  const noiseVariance = noisePower ** 2 / (3 * blocks.length);
  const motions = motionsOf(readings, weights, mean(middleNoises));
  const crossed = wholeLobe ? LOBE_CROSSED / LOBE_NOISE : 1;
  return {
    amplitudeMps2: Math.sqrt(Math.max(0, power)),
    power,
    powerSd: Math.sqrt(variance + noiseVariance),
    noisePower,
    noisePowerSd: Math.sqrt(noiseVariance),
    nearNoisePower: longBlocks.length < 2 ? null : noiseFactor * LONGER * mean(noisesOf(longBlocks.map(together))),
    blocks: blocks.length,
    effectiveBlocks,
    blockPowers: signal,
    stepS,
    blockStartsS: blocks.map(({ startS }) => startS),
    blockNoises,
    blockLogSpeeds: blocks.map(({ logSpeed }) => logSpeed),
    noiseAlong: crossed * motions.noiseAlong,
    noiseAsOne: crossed * motions.noiseAsOne,
  };
}

/** Motion of a block at the place of the order, noise in it, and of the noise alone, as it is beside it; not weighed. */
export function matricesOf({ axes, blocks, longBlocks }: OrderReadings): {
  readonly at: Hermitian;
  readonly noise: Hermitian;
} {
  const isNear = longBlocks.length >= 2;
  const beside = isNear ? longBlocks : blocks.map(({ powers }) => powers);
  const bins = noiseBins(beside.map((powers) => powers.map((power) => trace(axes, power))));
  return {
    at: meanMatrix(blocks.map(({ powers }) => powers[0]!)),
    noise: meanMatrix(beside.flatMap((powers) => bins.map((k) => powers[k]!))).map(
      (entry) => (isNear ? LONGER : 1) * entry,
    ),
  };
}

function motionsOf(
  readings: OrderReadings,
  weights: Hermitian,
  noisePower: number,
): Pick<OrderLevel, 'noiseAlong' | 'noiseAsOne'> {
  const { axes } = readings;
  const { at, noise } = matricesOf(readings);
  const weighedNoise = sandwich(axes, weights, noise);
  const noiseTrace = traceOfProduct(axes, weights, noise);
  const order = at.map((entry, q) => entry - (noisePower / noiseTrace) * noise[q]!);
  const orderTrace = traceOfProduct(axes, weights, order);
  const along = traceOfProduct(axes, weighedNoise, order) / (noiseTrace * orderTrace);
  return {
    noiseAlong: orderTrace > 0 ? Math.min(1, Math.max(0, along)) : 1 / axes,
    noiseAsOne: noiseTrace > 0 ? traceOfProduct(axes, weighedNoise, noise) / noiseTrace ** 2 : 1,
  };
}

/**
 * Variance that noise alone gives to the power of one block, were the order perfectly steady, (m/s²)⁴. Of |A + n|² it is
 * 2·Aᴴ·S·A + tr S², S the covariance of the noise.
 */
export const blockScatter = ({ power, noisePower, noiseAlong, noiseAsOne }: OrderLevel): number =>
  2 * Math.max(0, power) * noisePower * noiseAlong + noisePower ** 2 * noiseAsOne;

/** Bins that show the noise: both sides, or the one that is quieter in all where the other holds a line. */
function noiseBins(blocks: readonly (readonly number[])[]): readonly number[] {
  const powerIn = (bins: readonly number[]): number => mean(blocks.flatMap((powers) => bins.map((k) => powers[k]!)));
  const [low, high] = [powerIn(BELOW), powerIn(ABOVE)];
  if (low > SIDES_DIFFER * high) return ABOVE;
  return high > SIDES_DIFFER * low ? BELOW : [...BELOW, ...ABOVE];
}

/** Noise under the order in each block. */
function noisesOf(blocks: readonly (readonly number[])[]): number[] {
  const bins = noiseBins(blocks);
  return blocks.map((powers) => mean(bins.map((k) => powers[k]!)));
}

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
