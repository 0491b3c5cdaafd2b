/** A recording of orders on one axis, at a speed that swings by half a percent, over white noise. */
import type { Recording } from '../../src/core/reading/recording.ts';
import { plainRecording } from '../accuracy/plain-recording.ts';
import { seededRandom } from './random.ts';

export interface Orders {
  readonly wheelHz: number;
  readonly rateHz: number;
  readonly seconds: number;
  /** Turns for one turn of a wheel, and 0-to-peak amplitude, m/s². */
  readonly orders: readonly (readonly [perTurn: number, mps2: number])[];
  readonly seed: number;
}

/** Relative speed at a time. */
export const drivenAt = (atS: number): number => 1 + SWING * Math.sin(SWING_RAD_PER_S * atS);

const SWING = 0.005;
const SWING_RAD_PER_S = 0.3;
/** Standard deviation of a sample, m/s². */
const NOISE_MPS2 = 0.05;

export const recordingOfOrders = ({ wheelHz, rateHz, seconds, orders, seed }: Orders): Recording => {
  const { normal } = seededRandom(seed);
  const axis = Float64Array.from({ length: seconds * rateHz }, (_, i) => {
    const t = i / rateHz;
    const turned = wheelHz * (t + (SWING / SWING_RAD_PER_S) * (1 - Math.cos(SWING_RAD_PER_S * t)));
    return orders.reduce(
      (sum, [perTurn, mps2]) => sum + mps2 * Math.cos(2 * Math.PI * perTurn * turned),
      NOISE_MPS2 * normal(),
    );
  });
  return plainRecording([axis], rateHz);
};
