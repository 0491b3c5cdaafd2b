/** Gas torque of a four-stroke engine as orders of crankshaft speed, and what an uneven cylinder makes of them. */
import type { Complex } from '../complex.ts';
import { add, complex, scale } from '../complex.ts';

/**
 * One cylinder's gas torque at ½, 1, 1½ … crankshaft orders, relative; part load. A smooth shape, from memory of
 * published harmonic tables: largest about order 1, a third of it at order 4.
 */
const CYLINDER_TORQUE = [0.95, 1.0, 0.95, 0.82, 0.67, 0.54, 0.42, 0.33, 0.26, 0.2, 0.155, 0.12];

export const HALF_ORDERS: readonly number[] = CYLINDER_TORQUE.map((_, i) => (i + 1) / 2);

/** Relative gas torque of one cylinder at an order (½, 1 … 6), 0 beyond. */
export const cylinderTorque = (order: number): number => CYLINDER_TORQUE[Math.round(order * 2) - 1] ?? 0;

/**
 * Phasor sum of even-firing cylinders: K(o) = Σ wᵢ·exp(−j·o·φᵢ)/N, φᵢ = i·4π/N crank radians.
 * @param strengths One number a cylinder in firing order; 1 is sound, 0 dead.
 */
export const firingPhasor = (strengths: readonly number[], order: number): Complex => {
  const n = strengths.length;
  let sum = complex(0);
  strengths.forEach((w, i) => {
    const angle = (-order * i * 4 * Math.PI) / n;
    sum = add(sum, complex(w * Math.cos(angle), w * Math.sin(angle)));
  });
  return scale(sum, 1 / n);
};
