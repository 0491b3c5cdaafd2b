/**
 * One corner of the vehicle: sprung mass on spring and damper, wheel on the tire's spring. Equations of motion of the
 * two-mass model, as in any vehicle dynamics text (Gillespie, Fundamentals of Vehicle Dynamics, ride chapter).
 */
import { add, complex, divide, multiply, scale, subtract } from '../complex.ts';
import type { Complex } from '../complex.ts';

export interface QuarterCar {
  readonly sprungKg: number;
  readonly unsprungKg: number;
  readonly springNpm: number;
  readonly tireNpm: number;
  readonly damperNspm: number;
}

/** Usual values of a passenger car's corner: body bounce 1.12 Hz, wheel hop 11.86 Hz undamped. */
export const USUAL_CORNER: QuarterCar = {
  sprungKg: 400,
  unsprungKg: 40,
  springNpm: 22_000,
  tireNpm: 200_000,
  damperNspm: 1400,
};

/** State of one corner; heights about rest, m, and their rates. */
export interface CornerState {
  sprungM: number;
  unsprungM: number;
  sprungMps: number;
  unsprungMps: number;
  /** What the body feels now: suspension force, N, and sprung acceleration, m/s². */
  forceN: number;
  sprungMps2: number;
}

export const cornerAtRest = (): CornerState => ({
  sprungM: 0,
  unsprungM: 0,
  sprungMps: 0,
  unsprungMps: 0,
  forceN: 0,
  sprungMps2: 0,
});

/**
 * One time step, semi-implicit (rates first, then places): stable and true to (ω·dt)²/24 in frequency.
 * @param roadM Road height under the tire, m. @param wheelForceN Upward force of the tire's own unevenness, N.
 */
export const stepCorner = (
  state: CornerState,
  car: QuarterCar,
  roadM: number,
  wheelForceN: number,
  stepS: number,
): void => {
  const force =
    car.springNpm * (state.unsprungM - state.sprungM) + car.damperNspm * (state.unsprungMps - state.sprungMps);
  const sprung = force / car.sprungKg;
  const unsprung = (car.tireNpm * (roadM - state.unsprungM) + wheelForceN - force) / car.unsprungKg;
  state.sprungMps += sprung * stepS;
  state.unsprungMps += unsprung * stepS;
  state.sprungM += state.sprungMps * stepS;
  state.unsprungM += state.unsprungMps * stepS;
  state.forceN = force;
  state.sprungMps2 = sprung;
};

/**
 * Response to a unit sine force on the wheel.
 * @returns Suspension force per N and sprung acceleration per N, complex.
 */
export const cornerResponse = (
  car: QuarterCar,
  frequencyHz: number,
): { readonly forcePerN: Complex; readonly accelerationPerN: Complex } => {
  const w = 2 * Math.PI * frequencyHz;
  const link = complex(car.springNpm, w * car.damperNspm);
  const sprungShare = divide(link, subtract(link, complex(car.sprungKg * w * w)));
  const stiffness = subtract(add(complex(car.tireNpm - car.unsprungKg * w * w), link), multiply(link, sprungShare));
  const unsprung = divide(complex(1), stiffness);
  const sprung = multiply(unsprung, sprungShare);
  return {
    forcePerN: multiply(link, subtract(unsprung, sprung)),
    accelerationPerN: scale(sprung, -w * w),
  };
};
