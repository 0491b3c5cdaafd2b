/** How far the pistons of an engine layout balance each other, and at which orders what is left shakes. */

/** One cylinder: where its bank leans, where its crank pin stands, and how far along the crankshaft it lies. */
export interface CylinderPlace {
  /** Bank angle from vertical, degrees, in the sense of rotation. */
  readonly bankDeg: number;
  /** Crank pin angle from the crankshaft's zero, degrees, in the sense of rotation. */
  readonly pinDeg: number;
  /** Station along the crankshaft from its middle, in cylinder pitches. */
  readonly station: number;
}

/** A shaking vector split into the part that turns with the crankshaft and the part that turns against it. */
export interface Shake {
  readonly forward: number;
  readonly backward: number;
  /** Greatest length: both parts in line. */
  readonly peak: number;
}

/** What is left at one order: forces in m·r·ω² (times λ at 2×), couples in m·r·ω² × pitch (times λ at 2×). */
export interface OrderShake {
  readonly force: Shake;
  readonly couple: Shake;
}

export interface InertiaBalance {
  readonly once: OrderShake;
  readonly twice: OrderShake;
}

const rad = (deg: number): number => (deg * Math.PI) / 180;

const lengthOfSum = (angles: readonly number[], weights: readonly number[]): number => {
  const sum = (part: (angle: number) => number): number =>
    angles.reduce((total, angle, index) => total + (weights[index] ?? 0) * part(angle), 0);
  return Math.hypot(sum(Math.cos), sum(Math.sin));
};

/** Rounding noise of a sum that should vanish. */
const clean = (value: number): number => (value < 1e-9 ? 0 : value);

const shake = (forward: readonly number[], backward: readonly number[], weights: readonly number[]): Shake => {
  const with_ = clean(lengthOfSum(forward, weights) / 2);
  const against = clean(lengthOfSum(backward, weights) / 2);
  return { forward: with_, backward: against, peak: with_ + against };
};

/**
 * Inertia balance of an engine.
 *
 * A piston on a bank at β with its pin at φ pushes m·r·ω²·(cos(θ + φ − β) + λ·cos 2(θ + φ − β)) along its bank. As a
 * vector in the plane across the crankshaft each term is half a vector turning forward and half one turning backward:
 * at 1× with phases φ and 2β − φ, at 2× with phases 2φ − β and 3β − 2φ. Sums over the cylinders give the force, sums
 * weighted by the station the couple. Rod offset between the banks and counterweights are left out.
 * (Derived; check: the results for the usual layouts are the tabulated ones, as in S. S. Rao, Mechanical Vibrations.)
 */
export const inertiaBalance = (cylinders: readonly CylinderPlace[]): InertiaBalance => {
  const bank = cylinders.map((cylinder) => rad(cylinder.bankDeg));
  const pin = cylinders.map((cylinder) => rad(cylinder.pinDeg));
  const ones = cylinders.map(() => 1);
  const stations = cylinders.map((cylinder) => cylinder.station);
  const phases = (ofPin: number, ofBank: number): number[] =>
    pin.map((angle, index) => ofPin * angle + ofBank * (bank[index] ?? 0));
  const orderShake = (forward: readonly number[], backward: readonly number[]): OrderShake => ({
    force: shake(forward, backward, ones),
    couple: shake(forward, backward, stations),
  });
  return {
    once: orderShake(phases(1, 0), phases(-1, 2)),
    twice: orderShake(phases(2, -1), phases(-2, 3)),
  };
};

/**
 * Exact coefficient of the 2× term of a piston's acceleration, in r·ω²: λ + λ³/4 + 15λ⁵/128 (series in λ = crank
 * radius over rod length; from memory of machinery-dynamics texts). Commonly cut to λ.
 */
export const secondOrderCoefficient = (lambda: number): number => lambda + lambda ** 3 / 4 + (15 * lambda ** 5) / 128;
