/** Unbalance that runout implies: mass that runs off the axis. Derived for a uniform piece. */
import type { Complex } from '../../complex.ts';
import { add, scale, subtract } from '../../complex.ts';

/** Half-sine bow of a uniform piece, read at mid length: (2/π)·M·TIR/2, g·mm. */
export const bowUnbalanceGmm = (tirMm: number, massKg: number): number => (2 / Math.PI) * massKg * 1000 * (tirMm / 2);

/** Piece carried off centre at one end by this indicator reading: M·e/2 in all, g·mm. */
export const endUnbalanceGmm = (tirMm: number, massKg: number): number => (massKg * 1000 * (tirMm / 2)) / 2;

export interface TubeUnbalance {
  /** Bow at mid length beyond the straight line between the ends, mm, as a vector. */
  readonly bowMm: Complex;
  /** Unbalance in the planes of the front and the rear end, g·mm, as vectors. */
  readonly frontGmm: Complex;
  readonly rearGmm: Complex;
}

/**
 * Three stations along a tube, front, middle, rear, as eccentricity vectors in the same angles: the line between the
 * ends is how the piece is held (its share falls on the planes as two thirds and one third), the rest at mid length
 * is bow, taken as a half sine, which falls on both planes alike.
 */
export const tubeUnbalance = (frontMm: Complex, middleMm: Complex, rearMm: Complex, massKg: number): TubeUnbalance => {
  const massG = massKg * 1000;
  const bowMm = subtract(middleMm, scale(add(frontMm, rearMm), 0.5));
  const bowShare = scale(bowMm, massG / Math.PI);
  const held = (near: Complex, far: Complex): Complex => add(scale(near, massG / 3), scale(far, massG / 6));
  return {
    bowMm,
    frontGmm: add(held(frontMm, rearMm), bowShare),
    rearGmm: add(held(rearMm, frontMm), bowShare),
  };
};

/**
 * Once-a-turn radial force of a tire that is out of round, N: eccentricity times radial stiffness. Grows little with
 * speed, unlike unbalance.
 * @param stiffnessNPerMm radial stiffness; 200 N/mm is usual for a car tire (common practice, no source)
 */
export const radialForceN = (tirMm: number, stiffnessNPerMm = 200): number => (tirMm / 2) * stiffnessNPerMm;
