/**
 * How often each order is present, and how strongly: in sound vehicles, and as a fault. Every figure is judgment
 * (no published survey is known): seat or floor acceleration at road speeds on smooth road. They weigh origins against
 * each other only where frequencies alone leave a choice, and are wide (a factor of two either way) on purpose.
 */
import type { Line } from '../../vehicle/line.ts';
import { logNormalDensity, logNormalExceedance } from './log-normal.ts';

/** A log-normal share of a level distribution. */
export interface LevelShare {
  /** Probability that the order is there at all in this way, 0..1. */
  readonly presence: number;
  /** Median 0-to-peak acceleration, all axes together, m/s². */
  readonly medianMps2: number;
  /** Standard deviation of the natural logarithm of the level. */
  readonly spread: number;
}

export interface LevelPrior {
  /** The order of a sound vehicle. */
  readonly normal: LevelShare;
  /** The same order as the source of a complaint. `presence` is the prior probability of that, per job. */
  readonly fault: LevelShare;
}

/** Standard deviations of ln(level): what all normal orders of a vehicle share, and what each has of its own. Judgment. */
export const NORMAL_SPREADS = { common: 0.7, own: 0.6 } as const;
const SPREAD_NORMAL = Math.hypot(NORMAL_SPREADS.common, NORMAL_SPREADS.own);
const SPREAD_FAULT = 0.9;

const prior = (presence: number, medianMps2: number, faulty: number, faultMps2: number): LevelPrior => ({
  normal: { presence, medianMps2, spread: SPREAD_NORMAL },
  fault: { presence: faulty, medianMps2: faultMps2, spread: SPREAD_FAULT },
});

/** Judgment. Columns: present when sound, its median; prior of being the fault, median as a fault. */
const TIRE = new Map<number, LevelPrior>([
  [1, prior(0.85, 0.008, 0.16, 0.1)],
  [2, prior(0.7, 0.006, 0.04, 0.08)],
  [3, prior(0.5, 0.005, 0.02, 0.08)],
  [4, prior(0.35, 0.004, 0.005, 0.06)],
]);
const DRIVESHAFT = new Map<number, LevelPrior>([
  [1, prior(0.8, 0.008, 0.13, 0.1)],
  [2, prior(0.65, 0.007, 0.13, 0.12)],
  [4, prior(0.3, 0.005, 0.015, 0.03)],
]);
const HALF_SHAFT = new Map<number, LevelPrior>([[3, prior(0.25, 0.006, 0.04, 0.08)]]);
const ENGINE = new Map<number, LevelPrior>([
  [0.5, prior(0.4, 0.006, 0.05, 0.08)],
  [1, prior(0.6, 0.007, 0.1, 0.1)],
  [1.5, prior(0.3, 0.005, 0.02, 0.06)],
  [2, prior(0.5, 0.007, 0.03, 0.09)],
]);
const FIRING = prior(0.95, 0.02, 0.08, 0.12);
/** Its multiples: pulses are round, mounts pass less of what is fast. */
const FIRING_MULTIPLE = prior(0.6, 0.006, 0.006, 0.06);
const ACCESSORY = prior(0.3, 0.006, 0.04, 0.08);
const MESH = prior(0.3, 0.006, 0.01, 0.06);
/** Multiples of a part's turning that a row of tones shows to be there. */
const KNOCK = prior(0.05, 0.006, 0.3, 0.06);
const OTHER = prior(0.2, 0.004, 0.004, 0.06);

/**
 * The level table's row for a line.
 * @param firingOrder the engine's firing order itself, of which there are multiples
 */
export const levelPriorOf = (line: Line, firingOrder: number): LevelPrior => {
  if (line.role === 'firing') return line.order > firingOrder ? FIRING_MULTIPLE : FIRING;
  if (line.role === 'mesh' || line.role === 'electric') return MESH;
  if (line.role === 'knock') return KNOCK;
  switch (line.part) {
    case 'tire':
      return TIRE.get(line.order) ?? OTHER;
    case 'driveshaft':
      return DRIVESHAFT.get(line.order) ?? OTHER;
    case 'half-shaft':
      return HALF_SHAFT.get(line.order) ?? OTHER;
    case 'engine':
      return ENGINE.get(line.order) ?? OTHER;
    case 'accessory':
      return ACCESSORY;
    case 'fixed':
    case 'unknown':
      return OTHER;
  }
};

/** Tones that no turning part of the vehicle explains: expected number per recording, and their levels. */
export const FIXED_TONE: LevelShare = { presence: 0.3, medianMps2: 0.05, spread: 1.3 };
/** What shakes enough to be complained of is in the list: a bearing's cage or a gear within the transmission is faint. */
export const UNLISTED_TONE: LevelShare = { presence: 0.1, medianMps2: 0.02, spread: 1 };
/** Resonances that the road shakes, standing out enough to be taken for a line. */
export const ROAD_RESONANCE: LevelShare = { presence: 0.7, medianMps2: 0.04, spread: 1.2 };

/** Density of presence per unit of ln(level) at a level measured with relative standard error `relativeSd`. */
export const shareDensity = (share: LevelShare, levelMps2: number, relativeSd = 0): number =>
  share.presence * logNormalDensity(levelMps2, share.medianMps2, Math.hypot(share.spread, relativeSd));

/** Probability of being there and above a level. */
export const shareAbove = (share: LevelShare, levelMps2: number): number =>
  share.presence * logNormalExceedance(levelMps2, share.medianMps2, share.spread);

/** Probability that a line's level, once seen, is that of a fault rather than of a sound vehicle. */
export const faultShare = (levels: LevelPrior, levelMps2: number): number => {
  const fault = shareDensity(levels.fault, levelMps2);
  const normal = shareDensity(levels.normal, levelMps2);
  return fault + normal > 0 ? fault / (fault + normal) : levelMps2 > levels.normal.medianMps2 ? 1 : 0;
};
