/** How much speeds wander: a vehicle's held or swept, and that of a tone that has a rate of its own. */
import { logNormalDensity, logNormalExceedance } from './log-normal.ts';

/** Root mean square wander (ln) over a minute. Judgment. */
const HELD = { median: 0.004, spread: 0.8 };
const SWEPT = { median: 0.08, spread: 0.7 };
const OWN_TONE = { median: 2e-4, spread: 1.2 };
/** Runs in which something holds the speed: rollers, a governor, cruise control on a flat empty road. Judgment. */
const GOVERNED = { share: 0.015, median: 5e-4, spread: 1 };

const below = (limit: number, { median, spread }: { readonly median: number; readonly spread: number }): number =>
  1 - logNormalExceedance(limit, median, spread);

/** Density of a vehicle's wander per unit of its ln. */
export const vehicleDensity = (wander: number, sweepPrior: number): number =>
  (1 - sweepPrior) * logNormalDensity(wander, HELD.median, HELD.spread) +
  sweepPrior * logNormalDensity(wander, SWEPT.median, SWEPT.spread);

/** Density of the wander of a tone that has a rate of its own, per unit of its ln. */
export const ownDensity = (wander: number): number => logNormalDensity(wander, OWN_TONE.median, OWN_TONE.spread);

/** How often a vehicle's speed, meant to be held, wanders less than a limit. */
export const vehicleBelow = (limit: number): number =>
  GOVERNED.share * below(limit, GOVERNED) + (1 - GOVERNED.share) * below(limit, HELD);

/** Root mean square wander of the road's speed over that of an engine that slips against it, or the other way. Judgment. */
const BESIDE = { median: 1, spread: 0.5 };

/** How often one of two that are coupled with slip wanders less than a limit, where the other is known to wander. */
export const besideBelow = (limit: number, otherWander: number): number =>
  1 - logNormalExceedance(limit, BESIDE.median * otherWander, BESIDE.spread);

/** How often a tone with a rate of its own wanders less than a limit. */
export const ownBelow = (limit: number): number => below(limit, OWN_TONE);
