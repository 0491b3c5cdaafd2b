/** Balance quality grades of ISO 21940-11:2016 (successor of ISO 1940-1:2003), and the force of an unbalance. */
import { radPerSFromRpm, STANDARD_GRAVITY_MPS2 } from '../../units.ts';

/**
 * Permissible residual unbalance of a rotor, g·mm: 1000·G·m/Ω, from the definition G = e·Ω.
 * @param rpm greatest service speed
 */
export const permissibleUnbalanceGmm = (gradeMmps: number, massKg: number, rpm: number): number =>
  (1000 * gradeMmps * massKg) / radPerSFromRpm(rpm);

/** Grade a rotor has with this residual unbalance, mm/s. */
export const gradeOfUnbalance = (unbalanceGmm: number, massKg: number, rpm: number): number =>
  (unbalanceGmm * radPerSFromRpm(rpm)) / (1000 * massKg);

/** Rotating force of an unbalance, N: U·Ω². */
export const forceOfUnbalanceN = (unbalanceGmm: number, rpm: number): number =>
  unbalanceGmm * 1e-6 * radPerSFromRpm(rpm) ** 2;

/** Trial weight for a first run, g·mm: its force is this share of the rotor's weight (common practice: a tenth). */
export const trialUnbalanceGmm = (massKg: number, rpm: number, shareOfWeight = 0.1): number =>
  (shareOfWeight * massKg * STANDARD_GRAVITY_MPS2) / (1e-6 * radPerSFromRpm(rpm) ** 2);
