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

/**
 * Root mean square wander of one of two that slip against each other, over that of the other: the vehicle's mass holds the
 * road's speed, and the slip adds to the engine's. Judgment.
 */
const BESIDE = {
  road: { median: 0.5, spread: 0.8 },
  engine: { median: 1.5, spread: 0.6 },
} as const;
/** Each of these stands for all about it, up to the middle (of ln) between it and the next. */
const BESIDE_STEPS = [1, 0.4, 0.16, 0.06] as const;

/** What the wander of a group may be, and how likely, where only that of the other group is known. */
export const besideCases = (
  unknown: 'road' | 'engine',
  otherWander: number,
): readonly { readonly wander: number; readonly prior: number }[] => {
  const { median, spread } = BESIDE[unknown];
  const edges = BESIDE_STEPS.slice(1).map((step, k) => Math.sqrt(step * BESIDE_STEPS[k]!));
  const above = edges.map((edge) => logNormalExceedance(edge, median, spread));
  return BESIDE_STEPS.map((step, k) => ({
    wander: step * otherWander,
    prior: (above[k] ?? 1) - (k === 0 ? 0 : above[k - 1]!),
  }));
};

/** How often a tone with a rate of its own wanders less than a limit. */
export const ownBelow = (limit: number): number => below(limit, OWN_TONE);
