/** What firing does to the crankshaft: the firing order (a multiple, not a sequence) and its half-order companions. */

/** One cycle of a four-stroke engine in degrees of crankshaft. */
const CYCLE_DEG = 720;

/**
 * Firing pulses per crankshaft turn of an evenly firing four-stroke engine: half the number of cylinders.
 * (Phasor sum of N pulses over 720°; standard text result.)
 *
 * @returns null where the number of cylinders is not known or not a whole number from 1 up.
 */
export const firingOrder = (cylinders: number | undefined): number | null =>
  cylinders !== undefined && Number.isInteger(cylinders) && cylinders >= 1 ? cylinders / 2 : null;

/** Crank angles at which an evenly firing engine fires, degrees. */
export const evenFiringAnglesDeg = (cylinders: number): number[] =>
  Array.from({ length: cylinders }, (_, index) => (index * CYCLE_DEG) / cylinders);

/**
 * How much of a cylinder's pulse is left at an order when all cylinders are added up:
 * K(o) = |Σ wᵢ·exp(−j·o·φᵢ)| / N.
 *
 * @param order ½, 1, 1½ … per crankshaft turn.
 * @param firingAnglesDeg Crank angle at which each cylinder fires, 0…720°.
 * @param strengths Strength of each cylinder, 1 = normal, 0 = dead; all 1 where absent.
 * @returns 0…1 for strengths up to 1. One dead cylinder of N leaves 1/N at every half order that is not a multiple
 *   of the firing order, which is why a misfire shows there.
 */
export const firingFactor = (
  order: number,
  firingAnglesDeg: readonly number[],
  strengths?: readonly number[],
): number => {
  let real = 0;
  let imaginary = 0;
  firingAnglesDeg.forEach((angleDeg, index) => {
    const strength = strengths?.[index] ?? 1;
    const phase = (-order * angleDeg * Math.PI) / 180;
    real += strength * Math.cos(phase);
    imaginary += strength * Math.sin(phase);
  });
  return firingAnglesDeg.length === 0 ? 0 : Math.hypot(real, imaginary) / firingAnglesDeg.length;
};
