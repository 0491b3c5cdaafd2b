/** What an accelerometer makes of the motion: its own axes, its own clock, noise, steps and end stops. */
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import { mountFilter, runningFilter } from './modes.ts';
import type { RandomSource } from './random.ts';
import type { Rotation, Sensor } from './scenario.ts';

export interface Sampled {
  /** When each sample was really taken, s. */
  readonly timeS: Float64Array;
  /** What the stamps say, s. */
  readonly stampS: Float64Array;
  /** x, y, z of the sensor, m/s², gravity included (an accelerometer at rest reads +g upward). */
  readonly accelerationMps2: readonly [Float64Array, Float64Array, Float64Array];
}

/** Rotation from three angles in degrees: about z (yaw), then y (pitch), then x (roll). */
export const rotationFromAngles = (yawDeg: number, pitchDeg: number, rollDeg: number): Rotation => {
  const [cy, sy] = cosSin(yawDeg);
  const [cp, sp] = cosSin(pitchDeg);
  const [cr, sr] = cosSin(rollDeg);
  // Rows are the sensor's axes in body axes.
  return [
    cy * cp,
    sy * cp,
    -sp,
    cy * sp * sr - sy * cr,
    sy * sp * sr + cy * cr,
    cp * sr,
    cy * sp * cr + sy * sr,
    sy * sp * cr - cy * sr,
    cp * cr,
  ];
};

const cosSin = (deg: number): [number, number] => [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];

/** Four-pole Butterworth low-pass as two second-order stages (damping 0.9239 and 0.3827). */
const antiAliased = (signal: Float64Array, cornerHz: number, rateHz: number): Float64Array => {
  const first = runningFilter(mountFilter({ frequencyHz: cornerHz, damping: 0.92388 }, rateHz));
  const second = runningFilter(mountFilter({ frequencyHz: cornerHz, damping: 0.38268 }, rateHz));
  return signal.map((value) => second(first(value)));
};

/** Value between the inner steps by the cubic through four of them. */
const between = (signal: Float64Array, at: number): number => {
  const i = Math.min(Math.max(Math.floor(at), 1), signal.length - 3);
  const u = at - i;
  const a = signal[i - 1]!;
  const b = signal[i]!;
  const c = signal[i + 1]!;
  const d = signal[i + 2]!;
  const c1 = c - a / 3 - b / 2 - d / 6;
  const c2 = (a + c) / 2 - b;
  const c3 = (d - a) / 6 + (b - c) / 2;
  return b + u * (c1 + u * (c2 + u * c3));
};

/**
 * @param body Acceleration at the sensor at the inner rate, body axes, without gravity, m/s².
 * @param startS Inner time of the first sample.
 */
export const sampleWith = (
  sensor: Sensor,
  body: readonly [Float64Array, Float64Array, Float64Array],
  innerHz: number,
  startS: number,
  durationS: number,
  withNoise: boolean,
  random: RandomSource,
): Sampled => {
  const filtered =
    sensor.antiAliasHz === undefined ? body : body.map((signal) => antiAliased(signal, sensor.antiAliasHz!, innerHz));
  const rate = sensor.rateHz * (1 + (sensor.clockError ?? 0));
  const count = Math.floor(durationS * rate);
  const timeS = new Float64Array(count);
  const stampS = new Float64Array(count);
  const out: [Float64Array, Float64Array, Float64Array] = [
    new Float64Array(count),
    new Float64Array(count),
    new Float64Array(count),
  ];
  const r = sensor.mounting;
  const noiseSd = withNoise ? sensor.noiseDensity * Math.sqrt(rate / 2) : 0;
  const most = 0.45 / rate;
  for (let i = 0; i < count; i++) {
    const off = Math.max(-most, Math.min(most, sensor.jitterS * random.normal()));
    const late = i === 0 ? 0 : off;
    const time = i / rate + late;
    timeS[i] = time;
    stampS[i] = (sensor.stamps ?? 'true') === 'true' ? time : i / sensor.rateHz;
    const at = (startS + time) * innerHz;
    const x = between(filtered[0]!, at);
    const y = between(filtered[1]!, at);
    const z = between(filtered[2]!, at) + STANDARD_GRAVITY_MPS2;
    for (let axis = 0; axis < 3; axis++) {
      let value = r[axis * 3]! * x + r[axis * 3 + 1]! * y + r[axis * 3 + 2]! * z + noiseSd * random.normal();
      if (sensor.rangeMps2 !== undefined) value = Math.max(-sensor.rangeMps2, Math.min(sensor.rangeMps2, value));
      if (sensor.stepMps2 > 0) value = Math.round(value / sensor.stepMps2) * sensor.stepMps2;
      out[axis]![i] = value;
    }
  }
  return { timeS, stampS, accelerationMps2: out };
};
