/** A move off from standing, in closed form: speeds, turns and what a late logger writes of them. */
import type { Recording, Track } from '../../src/core/reading/recording.ts';
import { plainRecording } from '../accuracy/plain-recording.ts';
import { seededRandom } from './random.ts';

const RATE = 250;
const SECONDS = 14;
/** Stands until here, s, then gains speed evenly, m/s². */
const OFF_S = 2.3;
const GAIN = 1.6;

export const speedAt = (t: number): number => GAIN * Math.max(0, t - OFF_S);
/** Distance driven, m: ½·a·t². */
const drivenAt = (t: number): number => (GAIN * Math.max(0, t - OFF_S) ** 2) / 2;
/** First time at which a speed is reached, s. */
export const timeOf = (mps: number): number => OFF_S + mps / GAIN;

/** What a logger writes once a second, so late, in such steps. */
const logOf = (lagS: number, stepMps: number, valueAt = speedAt): Track => {
  const timeS = Float64Array.from({ length: SECONDS + 1 }, (_, i) => i);
  return {
    timeS,
    value: timeS.map((t) => stepMps * Math.round(valueAt(t - lagS) / stepMps)),
    columnName: 'speed',
    unit: 'm/s',
    unitBecause: '',
    step: stepMps,
    intervalS: 1,
  };
};

/** A shake at so many turns a metre, strong only between two speeds. */
export interface Shudder {
  readonly turnsPerM: number;
  readonly amplitude: number;
  readonly fromMps: number;
  readonly toMps: number;
}

export const launch = (shudder: Shudder | null, lagS = 0.5, stepMps = 1 / 3.6, seed = 3): Recording => {
  const { normal } = seededRandom(seed);
  const axes = [0.3, 0.6, 1].map((share) =>
    Float64Array.from({ length: SECONDS * RATE }, (_, i) => {
      const t = i / RATE;
      const v = speedAt(t);
      const shakes = shudder !== null && v >= shudder.fromMps && v <= shudder.toMps;
      const shake = shakes ? shudder.amplitude * Math.cos(2 * Math.PI * shudder.turnsPerM * drivenAt(t)) : 0;
      return share * shake + 0.04 * normal();
    }),
  );
  return plainRecording(axes, RATE, logOf(lagS, stepMps));
};
