/**
 * Resonances of the body and what hangs on it, as second-order filters: force in, acceleration out,
 * H(s) = s²/(s² + 2ζω·s + ω²), by the bilinear transform with the resonance frequency kept in place.
 */
import type { Complex } from '../complex.ts';
import { complex, divide } from '../complex.ts';

export interface Resonance {
  readonly frequencyHz: number;
  /** Share of critical damping. */
  readonly damping: number;
}

/** b0·x + b1·x₋₁ + b2·x₋₂ − a1·y₋₁ − a2·y₋₂ */
export interface SecondOrder {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/** Acceleration of a mass on its spring under a force: what passes above the resonance. */
export const accelerationFilter = (resonance: Resonance, rateHz: number): SecondOrder => {
  const { k, k2, d } = warped(resonance, rateHz);
  return { b0: 1 / d, b1: -2 / d, b2: 1 / d, a1: (2 * (k2 - 1)) / d, a2: (1 - 2 * resonance.damping * k + k2) / d };
};

/** Force a soft mount lets through: what passes below the resonance. */
export const mountFilter = (resonance: Resonance, rateHz: number): SecondOrder => {
  const { k, k2, d } = warped(resonance, rateHz);
  return {
    b0: k2 / d,
    b1: (2 * k2) / d,
    b2: k2 / d,
    a1: (2 * (k2 - 1)) / d,
    a2: (1 - 2 * resonance.damping * k + k2) / d,
  };
};

const warped = (resonance: Resonance, rateHz: number): { k: number; k2: number; d: number } => {
  const k = Math.tan((Math.PI * resonance.frequencyHz) / rateHz);
  return { k, k2: k * k, d: 1 + 2 * resonance.damping * k + k * k };
};

/** Complex gain of a filter at a frequency. */
export const filterResponse = (filter: SecondOrder, frequencyHz: number, rateHz: number): Complex => {
  const w = (2 * Math.PI * frequencyHz) / rateHz;
  const c1 = Math.cos(w);
  const s1 = -Math.sin(w);
  const c2 = Math.cos(2 * w);
  const s2 = -Math.sin(2 * w);
  return divide(
    complex(filter.b0 + filter.b1 * c1 + filter.b2 * c2, filter.b1 * s1 + filter.b2 * s2),
    complex(1 + filter.a1 * c1 + filter.a2 * c2, filter.a1 * s1 + filter.a2 * s2),
  );
};

/** A filter with its memory (transposed direct form II). */
export const runningFilter = (f: SecondOrder): ((x: number) => number) => {
  let m1 = 0;
  let m2 = 0;
  return (x) => {
    const y = f.b0 * x + m1;
    m1 = f.b1 * x - f.a1 * y + m2;
    m2 = f.b2 * x - f.a2 * y;
    return y;
  };
};
