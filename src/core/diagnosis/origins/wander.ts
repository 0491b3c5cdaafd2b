/** How much speeds wander: a vehicle's held or swept, and that of a tone that has a rate of its own. */
import { logNormalDensity, logNormalExceedance } from './log-normal.ts';

/** Root mean square wander (ln) over a minute. Judgment. */
const HELD = { median: 0.004, spread: 0.8 };
const SWEPT = { median: 0.08, spread: 0.7 };
const OWN_TONE = { median: 2e-4, spread: 1.2 };
/** Runs in which something holds the speed: rollers, a governor, cruise control on a flat empty road. Judgment. */
const GOVERNED = { share: 0.01, median: 1e-3, spread: 0.8 };

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
  road: { median: 0.5, spread: 0.6 },
  engine: { median: 1.5, spread: 0.6 },
} as const;

/** Two found histories of one vehicle may be so unlike by a rough track of one of them. Judgment. */
const ROUGH_TRACK = 0.01;
/** Speeds that wander by more than this were changed on purpose, and engine and road may go ways of their own. Judgment. */
const ON_PURPOSE = 0.03;

/**
 * Likelihood (1 at most) of how far the engine wanders beside the road, where the history of both was found.
 * @param road root mean square of ln relative speed; @param engine the same
 */
export const wanderBesideWeight = (road: number, engine: number): number => {
  if (Math.max(road, engine) > ON_PURPOSE) return 1;
  const off = Math.log(engine / road / BESIDE.engine.median) / BESIDE.engine.spread;
  return ROUGH_TRACK + (1 - ROUGH_TRACK) * Math.exp(-0.5 * off * off);
};

/** A root mean square wander (ln) that may be, with its probability. */
export interface WanderCase {
  readonly wander: number;
  readonly prior: number;
}

/** Each of these, of twice the median, stands for all about it, up to the middle (of ln) between it and the next. */
const STEPS = [1, 0.4, 0.16, 0.06] as const;

const casesOf = ({ median, spread }: { readonly median: number; readonly spread: number }): readonly WanderCase[] => {
  const wanders = STEPS.map((step) => 2 * median * step);
  const above = wanders.slice(1).map((next, k) => logNormalExceedance(Math.sqrt(next * wanders[k]!), median, spread));
  return wanders.map((wander, k) => ({ wander, prior: (above[k] ?? 1) - (k === 0 ? 0 : above[k - 1]!) }));
};

/** What the wander of a group may be where only that of the other group is known. */
export const besideCases = (unknown: 'road' | 'engine', otherWander: number): readonly WanderCase[] =>
  casesOf({ ...BESIDE[unknown], median: BESIDE[unknown].median * otherWander });

/** What the wander of a speed that was meant to be held may be where no history of it is known. */
export const heldWanderCases = (): readonly WanderCase[] => casesOf(HELD);

/** How often a tone with a rate of its own wanders less than a limit. */
export const ownBelow = (limit: number): number => below(limit, OWN_TONE);
