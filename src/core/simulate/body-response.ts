/** Forces and road heights in, acceleration at the sensor out, body axes, step by step. */
import type { Body } from './body.ts';
import { PORTS } from './body.ts';
import { accelerationFilter, mountFilter, runningFilter } from './modes.ts';
import { cornerAtRest, stepCorner } from './quarter-car.ts';
import { PITCH_ARM, ROLL_ARM, endOf, sideOf } from './transfer.ts';

const SUSPENSION = 4 + PORTS.indexOf('suspension');
const ENGINE_ROLL = 4 + PORTS.indexOf('engine-roll');
const ENGINE_UP = 4 + PORTS.indexOf('engine-up');

export interface BodyResponse {
  /**
   * @param forces One number an entry (corners first, then ports), N. Overwritten.
   * @param road Road height under each corner, m.
   * @param out Receives x, y, z, m/s².
   */
  readonly step: (forces: Float64Array, road: Float64Array, out: Float64Array) => void;
}

export const bodyResponse = (body: Body, rateHz: number): BodyResponse => {
  const stepS = 1 / rateHz;
  // Held here since the loop below runs some hundred thousand times.
  const advance = stepCorner;
  const car = body.corner;
  const rise = Float64Array.from(body.cornerWeight);
  const pitch = rise.map((w, c) => PITCH_ARM * endOf(c) * w);
  const roll = rise.map((w, c) => ROLL_ARM * sideOf(c) * w);
  const corners = [cornerAtRest(), cornerAtRest(), cornerAtRest(), cornerAtRest()];
  const mountRoll = runningFilter(mountFilter(body.mount, rateHz));
  const mountUp = runningFilter(mountFilter(body.mount, rateHz));
  const entries = 4 + PORTS.length;
  const n = body.modes.length;
  // All modes in flat arrays: coefficients, memories, shares per entry, directions.
  const filters = body.modes.map((m) => accelerationFilter(m, rateHz));
  const b0 = Float64Array.from(filters, (f) => f.b0);
  const b1 = Float64Array.from(filters, (f) => f.b1);
  const b2 = Float64Array.from(filters, (f) => f.b2);
  const a1 = Float64Array.from(filters, (f) => f.a1);
  const a2 = Float64Array.from(filters, (f) => f.a2);
  const m1 = new Float64Array(n);
  const m2 = new Float64Array(n);
  const share = new Float64Array(n * entries);
  const dir = new Float64Array(n * 3);
  body.modes.forEach((mode, k) => {
    PORTS.forEach((port, j) => (share[k * entries + 4 + j] = mode.share[port]));
    for (let axis = 0; axis < 3; axis++) dir[k * 3 + axis] = mode.direction[axis]!;
  });
  const rigid = new Float64Array(entries * 3);
  PORTS.forEach((port, j) => {
    for (let axis = 0; axis < 3; axis++) rigid[(4 + j) * 3 + axis] = body.rigid[port][axis]!;
  });

  const step = (forces: Float64Array, road: Float64Array, out: Float64Array): void => {
    let x = 0;
    let y = 0;
    let z = 0;
    for (let c = 0; c < 4; c++) {
      const corner = corners[c]!;
      advance(corner, car, road[c]!, forces[c]!, stepS);
      forces[SUSPENSION] = forces[SUSPENSION]! + corner.forceN;
      x += pitch[c]! * corner.sprungMps2;
      y += roll[c]! * corner.sprungMps2;
      z += rise[c]! * corner.sprungMps2;
    }
    forces[ENGINE_ROLL] = mountRoll(forces[ENGINE_ROLL]!);
    forces[ENGINE_UP] = mountUp(forces[ENGINE_UP]!);
    for (let e = 4; e < entries; e++) {
      const f = forces[e]!;
      x += rigid[e * 3]! * f;
      y += rigid[e * 3 + 1]! * f;
      z += rigid[e * 3 + 2]! * f;
    }
    for (let k = 0; k < n; k++) {
      let input = 0;
      for (let e = 4; e < entries; e++) input += share[k * entries + e]! * forces[e]!;
      const a = b0[k]! * input + m1[k]!;
      m1[k] = b1[k]! * input - a1[k]! * a + m2[k]!;
      m2[k] = b2[k]! * input - a2[k]! * a;
      x += dir[k * 3]! * a;
      y += dir[k * 3 + 1]! * a;
      z += dir[k * 3 + 2]! * a;
    }
    out[0] = x;
    out[1] = y;
    out[2] = z;
  };
  return { step };
};
