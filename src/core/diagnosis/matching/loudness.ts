/**
 * How strongly a vehicle's small normal orders reach the sensor: mounts, floor and place act on all of them alike. Where
 * none of many is seen, each single one is likely to hide; where many stand out, one that is missing is missed.
 */
import { NORMAL_SPREADS, type LevelPrior } from '../origins/levels.ts';
import type { Origin } from '../origins/origin.ts';

/** A factor on all normal levels, with its probability. */
export interface Loudness {
  readonly factor: number;
  readonly prior: number;
}

/** Three points that have the mean and variance of a normal distribution of ln(factor) (Gauss–Hermite quadrature). */
const REACH = Math.exp(Math.sqrt(3) * NORMAL_SPREADS.common);
export const MIDDLE: Loudness = { factor: 1, prior: 2 / 3 };
export const OTHERS: readonly Loudness[] = [
  { factor: REACH, prior: 1 / 6 },
  { factor: 1 / REACH, prior: 1 / 6 },
];

const scaled = ({ normal, fault }: LevelPrior, factor: number): LevelPrior => ({
  normal: { ...normal, medianMps2: normal.medianMps2 * factor, spread: NORMAL_SPREADS.own },
  fault,
});

/** The origins in a vehicle of that loudness. */
export const atLoudness = (origins: readonly Origin[], { factor }: Loudness): readonly Origin[] =>
  origins.map((origin) => ({ ...origin, levels: scaled(origin.levels, factor) }));
