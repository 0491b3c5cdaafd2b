/** Random loggers, mountings, layouts and roads. */
import { CSV_LAYOUTS } from '../../src/core/simulate/csv-layouts.ts';
import type { RandomSource } from '../../src/core/simulate/random.ts';
import type { Sensor } from '../../src/core/simulate/scenario.ts';
import { rotationFromAngles } from '../../src/core/simulate/sensor.ts';
import { randomRotation } from '../support/random-rotation.ts';

const RATES_HZ = [100, 104, 119, 125, 200, 208, 250, 333, 400, 416, 500, 800, 1000];
/** Sensors slower than this come with and without a filter; faster ones have one. */
const PHONE_TO_HZ = 210;
/** Filter corner over rate, and the highest line that still comes through well. */
const CORNER = 0.4;
const HIGHEST = 0.36;

export interface SensorWish {
  /** A line at this frequency must be seen. */
  readonly seeHz?: number;
  /** A line at this frequency must be folded, its image at least this high. */
  readonly foldHz?: number;
}

const LEAST_IMAGE_HZ = 6;

export const imageHz = (hz: number, rateHz: number): number => Math.abs(hz - rateHz * Math.round(hz / rateHz));

/** The slowest rate at which a line is seen; infinite where none is fast enough. */
export const slowestSeeing = (hz: number): number => RATES_HZ.find((rate) => hz < HIGHEST * rate) ?? Infinity;

/** Null where no rate fits the wish. */
export const drawSensor = (random: RandomSource, wish: SensorWish = {}): Sensor | null => {
  const fold = wish.foldHz;
  const fits = RATES_HZ.filter((rate) =>
    fold === undefined
      ? (wish.seeHz ?? 0) < HIGHEST * rate
      : rate <= PHONE_TO_HZ && fold > 0.54 * rate && fold < 1.42 * rate && imageHz(fold, rate) > LEAST_IMAGE_HZ,
  );
  if (fits.length === 0) return null;
  const rateHz = random.pick(fits);
  const filtered = fold === undefined && (rateHz > PHONE_TO_HZ || random.chance(0.5));
  const level = random.chance(0.7);
  const jitter = random.chance(0.5) ? 0 : random.logBetween(0.003, 0.05);
  return {
    rateHz,
    mounting: level
      ? rotationFromAngles(random.between(-180, 180), random.between(-12, 12), random.between(-12, 12))
      : randomRotation(random),
    noiseDensity: random.logBetween(0.0008, 0.004),
    stepMps2: random.pick([0, 0.0006, 0.0012, 0.005]),
    jitterS: jitter / rateHz,
    clockError: random.chance(0.3) ? 2e-4 * random.normal() : 0,
    ...(filtered && { antiAliasHz: CORNER * rateHz }),
  };
};

export const drawLayout = (
  random: RandomSource,
  needs: { readonly speed?: boolean; readonly engine?: boolean } = {},
): string => {
  const fitting = CSV_LAYOUTS.filter(
    (layout) =>
      (!needs.speed || layout.columns.some((c) => c.kind === 'speed')) &&
      (!needs.engine || layout.columns.some((c) => c.kind === 'engine')),
  );
  return random.pick(fitting).name;
};

/** G(n0) of a good road: from the smoothest laid to half a class A, m³. */
export const drawGoodRoad = (random: RandomSource): number => random.logBetween(1e-6, 8e-6);
/** Class C, within its limits. */
export const drawRoughRoad = (random: RandomSource): number => random.logBetween(150e-6, 400e-6);
