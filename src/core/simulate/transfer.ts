/** From a force at a port to acceleration at the sensor, as a complex gain per body axis. */
import type { Body, Port } from './body.ts';
import type { Complex } from '../complex.ts';
import { add, complex, multiply, scale } from '../complex.ts';
import { accelerationFilter, filterResponse, mountFilter } from './modes.ts';
import { cornerResponse } from './quarter-car.ts';

/** A corner's wheel (0..3 in the order of WHEELS), or a port of the body. */
export type Entry = number | Port;

export type Gain3 = readonly [Complex, Complex, Complex];

/** Lateral and lengthwise shares a corner's rise has at the sensor, by roll and pitch about the body's middle. */
export const ROLL_ARM = 0.3;
export const PITCH_ARM = 0.15;
export const sideOf = (corner: number): number => (corner % 2 === 0 ? 1 : -1);
export const endOf = (corner: number): number => (corner < 2 ? 1 : -1);

const isEnginePort = (port: Port): boolean => port === 'engine-roll' || port === 'engine-up';

/** @param rateHz Inner time steps a second (the filters are those of the time domain). */
export const transferAt = (body: Body, entry: Entry, frequencyHz: number, rateHz: number): Gain3 => {
  if (typeof entry === 'number') {
    const corner = cornerResponse(body.corner, frequencyHz);
    const viaBody = portGain(body, 'suspension', frequencyHz, rateHz);
    const rise = scale(corner.accelerationPerN, body.cornerWeight[entry]!);
    return [
      add(multiply(corner.forcePerN, viaBody[0]), scale(rise, PITCH_ARM * endOf(entry))),
      add(multiply(corner.forcePerN, viaBody[1]), scale(rise, ROLL_ARM * sideOf(entry))),
      add(multiply(corner.forcePerN, viaBody[2]), rise),
    ];
  }
  const gain = portGain(body, entry, frequencyHz, rateHz);
  if (!isEnginePort(entry)) return gain;
  const mount = filterResponse(mountFilter(body.mount, rateHz), frequencyHz, rateHz);
  return [multiply(mount, gain[0]), multiply(mount, gain[1]), multiply(mount, gain[2])];
};

const portGain = (body: Body, port: Port, frequencyHz: number, rateHz: number): Gain3 => {
  const out: [Complex, Complex, Complex] = [
    complex(body.rigid[port][0]),
    complex(body.rigid[port][1]),
    complex(body.rigid[port][2]),
  ];
  for (const mode of body.modes) {
    const h = scale(filterResponse(accelerationFilter(mode, rateHz), frequencyHz, rateHz), mode.share[port]);
    for (let axis = 0; axis < 3; axis++) out[axis] = add(out[axis]!, scale(h, mode.direction[axis]!));
  }
  return out;
};
