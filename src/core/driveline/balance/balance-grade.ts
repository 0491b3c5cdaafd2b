/** Balance quality grades of ISO 21940-11:2016 (successor of ISO 1940-1:2003), and the force of an unbalance. */
import { radPerSFromRpm, STANDARD_GRAVITY_MPS2 } from '../../units.ts';

/** Grades of the standard's table that matter to a vehicle's driveline, mm/s. */
export const BALANCE_GRADES = [
  { gradeMmps: 40, examples: 'cars: wheels, wheel rims, wheel sets, drive shafts' },
  { gradeMmps: 16, examples: 'drive shafts (cardan shafts, propeller shafts)' },
  { gradeMmps: 6.3, examples: 'fans, gears, pumps, electric machines up to 950 rev/min' },
  { gradeMmps: 2.5, examples: 'turbines, compressors, electric machines over 950 rev/min' },
] as const;

/**
 * Permissible residual unbalance of a rotor, g·mm: 1000·G·m/Ω, from the definition G = e·Ω.
 * @param rpm greatest service speed
 */
export const permissibleUnbalanceGmm = (gradeMmps: number, massKg: number, rpm: number): number =>
  (1000 * gradeMmps * massKg) / radPerSFromRpm(rpm);

/** Grade a rotor has with this residual unbalance, mm/s. */
export const gradeOfUnbalance = (unbalanceGmm: number, massKg: number, rpm: number): number =>
  (unbalanceGmm * radPerSFromRpm(rpm)) / (1000 * massKg);

/**
 * The allowance shared between two planes by their distances from the mass centre (standard clause on allocation,
 * from memory; derived): each plane gets the share of the other's distance.
 */
export const allowancePerPlane = (
  permissibleGmm: number,
  distanceOneMm: number,
  distanceTwoMm: number,
): readonly [number, number] => {
  const span = distanceOneMm + distanceTwoMm;
  return [(permissibleGmm * distanceTwoMm) / span, (permissibleGmm * distanceOneMm) / span];
};

/** Rotating force of an unbalance, N: U·Ω². */
export const forceOfUnbalanceN = (unbalanceGmm: number, rpm: number): number =>
  unbalanceGmm * 1e-6 * radPerSFromRpm(rpm) ** 2;

/** Trial weight for a first run, g·mm: its force is this share of the rotor's weight (common practice: a tenth). */
export const trialUnbalanceGmm = (massKg: number, rpm: number, shareOfWeight = 0.1): number =>
  (shareOfWeight * massKg * STANDARD_GRAVITY_MPS2) / (1e-6 * radPerSFromRpm(rpm) ** 2);
