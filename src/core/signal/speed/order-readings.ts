/** What a recording shows at an order and beside it, block by block along the speed track. */
import { demodulate, interpolator } from './demodulate.ts';
import type { SpeedTrack } from './equal-angle.ts';
import { hannBins } from './hann-bins.ts';
import type { Hermitian } from '../numeric/hermitian.ts';
import { outer } from '../numeric/hermitian.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** At each bin (0, −5, −4, −3, 3, 4, 5 and, read closely, −2, −1, 1, 2) the 0-to-peak phasors of the axes, v·vᴴ, (m/s²)². */
export type BlockPowers = readonly Hermitian[];

export interface OrderReadings {
  /** How many axes were read. */
  readonly axes: number;
  /** How far apart the blocks begin, s; a block is two steps long. */
  readonly stepS: number;
  readonly blocks: readonly {
    /** On the recording's clock, s. */
    readonly startS: number;
    /** ln of the relative speed in the middle. */
    readonly logSpeed: number;
    readonly powers: BlockPowers;
  }[];
  /** The same in blocks LONGER times as long, whose bins lie that much nearer; none where no piece holds one, or read plainly. */
  readonly longBlocks: readonly BlockPowers[];
}

/** Block length, s: long enough to part lines half a hertz off, short enough that many blocks show the scatter. */
export const BLOCK_S = 4;
export const LONGER = 4;
const STEPS_IN_BLOCK = 2;
/** Bins of 1/BLOCK_S: the order's own and, clear of a Hann main lobe, three on either side for the noise. */
const PLAIN_BINS = [0, -5, -4, -3, 3, 4, 5] as const;
/** With the rest of that lobe. */
const ORDER_BINS = [...PLAIN_BINS, -2, -1, 1, 2] as const;
const FARTHEST_BIN = 5;

/**
 * @param frequencyHz of the order where relative speed is 1
 * @param speed track the order follows; a fixed tone has one point with relative 1
 * @param closely with what a comparison needs: the whole lobe, and the noise nearby; costs twice the time
 * @returns null where no piece holds two blocks or the frequency lies outside 1 Hz .. half the rate
 */
export function orderReadings(
  prepared: Prepared,
  frequencyHz: number,
  speed: SpeedTrack,
  blockS: number,
  closely: boolean,
): OrderReadings | null {
  const { samplingRateHz } = prepared;
  const stepLength = Math.round((blockS * samplingRateHz) / STEPS_IN_BLOCK);
  const highest = frequencyHz * maxOf(speed.relative) + (FARTHEST_BIN + 1) / blockS;
  if (!(frequencyHz > 1) || highest >= samplingRateHz / 2) return null;
  const blocks: { startS: number; logSpeed: number; powers: BlockPowers }[] = [];
  const longBlocks: BlockPowers[] = [];
  const longSteps = LONGER * STEPS_IN_BLOCK;
  const axes = prepared.pieces[0]?.axes.length ?? 0;
  const powersIn = (phasorsAt: ReturnType<typeof hannBins>, step: number): BlockPowers =>
    phasorsAt(step).map((phasors) => outer(axes, phasors));
  for (const piece of prepared.pieces) {
    const demodulated = demodulate(piece, samplingRateHz, frequencyHz, speed, stepLength);
    const phasorsAt = hannBins(demodulated, closely ? ORDER_BINS : PLAIN_BINS, STEPS_IN_BLOCK);
    const relativeAt = interpolator(speed);
    for (let step = 0; step + STEPS_IN_BLOCK <= demodulated.steps; step += 1) {
      const startS = piece.startS + (step * stepLength) / samplingRateHz;
      const logSpeed = Math.log(relativeAt(startS + blockS / 2));
      blocks.push({ startS, logSpeed, powers: powersIn(phasorsAt, step) });
    }
    if (!closely || demodulated.steps < longSteps) continue;
    const longPhasorsAt = hannBins(demodulated, PLAIN_BINS, longSteps);
    for (let step = 0; step + longSteps <= demodulated.steps; step += longSteps / 2)
      longBlocks.push(powersIn(longPhasorsAt, step));
  }
  return blocks.length < 2 ? null : { axes, stepS: stepLength / samplingRateHz, blocks, longBlocks };
}

const maxOf = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, value), -Infinity);
