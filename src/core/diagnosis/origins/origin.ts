/** Origins: what a tone may come from. Each expected line is one, seen directly or as its alias image. */
import type { ExpectedLines, Line, SpeedGroup } from '../../vehicle/line.ts';
import { levelPriorOf, type LevelPrior } from './levels.ts';

/** One way in which a line may stand off the place that the shared scale gives it, as shares of its frequency. */
export interface PlaceShare {
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

export interface Origin {
  readonly line: Line;
  readonly group: SpeedGroup;
  /** Frequency at the nominal speed, Hz, whether or not the recording can show it. */
  readonly trueHz: number;
  readonly levels: LevelPrior;
  readonly place: readonly PlaceShare[];
}

/** A line locked to its group by gears: only the speed's own wander within the recording is left. */
const LOCKED_PLACE: readonly PlaceShare[] = [{ weight: 1, mean: 0, sd: 4e-4 }];

/**
 * The same on a sweep whose history was found in the recording itself. A line is heard where it is loud; where the
 * history is off there, its mean is off by as much. Judgment from trials.
 */
const SWEPT_PLACE: readonly PlaceShare[] = [
  { weight: 0.8, mean: 0, sd: 8e-4 },
  { weight: 0.2, mean: 0, sd: 3e-3 },
];

/**
 * Four wheels, one scale: the scale is that of the driven axle, from whose mean each of its wheels stands off by its
 * own wear and pressure; the wheels that are not driven turn slower by the slip as well. Judgment.
 */
const WHEEL_PLACE: readonly PlaceShare[] = [
  { weight: 0.5, mean: 0, sd: 0.002 },
  { weight: 0.5, mean: -0.0035, sd: 0.004 },
];

/** Each half-shaft turns with its own wheel. Judgment, as of the driven wheels. */
const HALF_SHAFT_PLACE: readonly PlaceShare[] = [{ weight: 1, mean: 0, sd: 0.002 }];

/** Locked to the rear one by the transfer case; through a center differential it turns with the front wheels. Judgment. */
const FRONT_SHAFT_PLACE: readonly PlaceShare[] = [
  { weight: 0.5, mean: 0, sd: 4e-4 },
  { weight: 0.5, mean: 0, sd: 0.003 },
];

/** Belts slip and pulley ratios are read roughly. Judgment. */
const BELT_PLACE: readonly PlaceShare[] = [{ weight: 1, mean: -0.002, sd: 0.004 }];

const placeOf = (line: Line, blindSweep: boolean): readonly PlaceShare[] => {
  if (line.part === 'tire') return WHEEL_PLACE;
  if (line.part === 'accessory') return BELT_PLACE;
  if (line.part === 'half-shaft' && line.role !== 'mesh') return HALF_SHAFT_PLACE;
  if (line.part === 'driveshaft' && line.name !== undefined) return FRONT_SHAFT_PLACE;
  return blindSweep ? SWEPT_PLACE : LOCKED_PLACE;
};

/**
 * All origins of a run's expected lines.
 * @param blindSweep true where the speed was swept and no log tells how
 */
export const originsOf = ({ lines }: ExpectedLines, blindSweep: boolean): readonly Origin[] => {
  const firingOrder = Math.min(...lines.filter(({ role }) => role === 'firing').map(({ order }) => order));
  return lines.map((line) => ({
    line,
    group: line.group,
    trueHz: line.frequencyHz,
    levels: levelPriorOf(line, firingOrder),
    place: placeOf(line, blindSweep),
  }));
};

/** A true frequency that would show at an observed one, and how it would then move with the speed. */
export interface Target {
  readonly trueHz: number;
  /** +1: moves as an order does; −1: the other way. */
  readonly direction: 1 | -1;
  readonly image: boolean;
  /** Sampling rates from where it shows to where it is: 0 itself, negative where it moves the other way. */
  readonly fold: number;
}

/** Images are looked for up to this multiple of the sampling rate; higher orders are too weak to matter. */
const MOST_FOLDS = 3;

/**
 * The true frequencies that a sampled recording shows at `observedHz`: itself, and k·fs ± itself.
 * Source: sampling theorem; f_a = |f − fs·round(f/fs)|.
 */
export const targetsOf = (observedHz: number, samplingRateHz: number): readonly Target[] => {
  const targets: Target[] = [{ trueHz: observedHz, direction: 1, image: false, fold: 0 }];
  for (let fold = 1; fold <= MOST_FOLDS; fold++) {
    targets.push({ trueHz: fold * samplingRateHz - observedHz, direction: -1, image: true, fold: -fold });
    targets.push({ trueHz: fold * samplingRateHz + observedHz, direction: 1, image: true, fold });
  }
  return targets;
};
