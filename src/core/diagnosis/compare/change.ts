/** The change of one level between two runs, dB, with its 95 % interval. */
import { levelCases } from '../../signal/speed/level-wander.ts';
import { mixtureQuantile } from '../../signal/numeric/normal-mixture.ts';
import type { OrderLevel } from '../../signal/speed/order-level.ts';
import { EXPONENT_SD, MEAN_EXPONENT, SPEED_LAWS } from './speed-law.ts';

export interface Change {
  readonly db: number;
  readonly lowDb: number | null;
  readonly highDb: number | null;
  readonly real: boolean;
}

const DB_PER_NEPER_OF_POWER = 10 / Math.LN10;
/** One-sided 95 % of the normal distribution. */
const ONE_SIDED = 1.645;
/**
 * What one run's level differs from the next one's though nothing was done: tire temperature, load, how the sensor
 * sits; standard deviation for the pair, dB. Judgment: no survey of repeated runs is known here.
 */
export const RUN_TO_RUN_SD_DB = 0.3;
/** A level counts as seen where its power is this many standard uncertainties above nothing. */
const SEEN_SDS = 3;
/** Where the diagnosis has no tone there, the level must also stand this far over both sides: a hump of the road's is not an order. */
const CLEAR_OF_A_HUMP = 4;

/** A weighted mean that falls below this share of the plain one tells nothing more. */
const LEAST_SHARE = 0.1;

/** A level, and whether it is the order's own or only what could hide there. */
export interface SeenLevel {
  readonly level: OrderLevel;
  readonly seen: boolean;
}

/** @param ownTone true where the diagnosis found a tone that is this order's */
export const isSeen = (level: OrderLevel, ownTone: boolean): boolean =>
  level.power > SEEN_SDS * noiseSd(level) && (ownTone || level.power > CLEAR_OF_A_HUMP * level.noisePower);

/** Standard uncertainty of the power if there were no order at all: what 'seen' is held against. */
const noiseSd = ({ noisePower, blocks }: OrderLevel): number => noisePower * Math.sqrt(2 / Math.max(1, blocks));

/** The most that the power may be (95 %), (m/s²)². */
export const mostPower = (level: OrderLevel): number =>
  Math.max(0, level.power) + ONE_SIDED * Math.max(level.powerSd, noiseSd(level));

/** In what the two runs differ beside the repair. */
export interface Conditions {
  /** How much faster the second was, dB of speed. */
  readonly speedDb: number;
  /** Standard uncertainty for unlike loggers, mountings, loads, dB. */
  readonly unlikeSdDb: number;
}

/**
 * The change with the difference of speed taken out.
 * @returns two-sided 95 % interval where both are seen, over all wanders of the level that the two runs allow and all
 *   laws of speed; one-sided where one is hidden; not real where both are hidden
 */
export function changeOf(one: SeenLevel, other: SeenLevel, { speedDb, unlikeSdDb }: Conditions): Change {
  const { level: before, seen: seenBefore } = one;
  const { level: after, seen: seenAfter } = other;
  const runsSdDb = Math.hypot(unlikeSdDb, RUN_TO_RUN_SD_DB);
  const decibels = (to: number, from: number): number => DB_PER_NEPER_OF_POWER * Math.log(to / from);
  if (seenBefore && seenAfter) {
    const plainDb = decibels(after.power, before.power);
    const parts = levelCases([before, after], SPEED_LAWS).map(({ weight, relative, exponent, covariance }) => {
      const [from, to] = relative.map((value) => Math.max(value, LEAST_SHARE));
      const gradient = [-DB_PER_NEPER_OF_POWER / from!, DB_PER_NEPER_OF_POWER / to!, -speedDb];
      const variance = gradient.reduce(
        (sum, a, i) => sum + gradient.reduce((part, b, k) => part + a * b * covariance[i]![k]!, 0),
        runsSdDb ** 2,
      );
      return { weight, mean: plainDb + decibels(to!, from!) - exponent * speedDb, sd: Math.sqrt(variance) };
    });
    const lowDb = mixtureQuantile(parts, 0.025);
    const highDb = mixtureQuantile(parts, 0.975);
    const db = parts.reduce((sum, { weight, mean }) => sum + weight * mean, 0);
    return { db, lowDb, highDb, real: lowDb > 0 || highDb < 0 };
  }
  const correctionDb = MEAN_EXPONENT * speedDb;
  const margin = ONE_SIDED * Math.hypot(EXPONENT_SD * speedDb, runsSdDb);
  if (seenBefore) {
    const highDb =
      decibels(mostPower(after), Math.max(before.power - ONE_SIDED * before.powerSd, 0.1 * before.power)) -
      correctionDb +
      margin;
    return { db: decibels(mostPower(after), before.power) - correctionDb, lowDb: null, highDb, real: highDb < 0 };
  }
  if (seenAfter) {
    const lowDb =
      decibels(Math.max(after.power - ONE_SIDED * after.powerSd, 0.1 * after.power), mostPower(before)) -
      correctionDb -
      margin;
    return { db: decibels(after.power, mostPower(before)) - correctionDb, lowDb, highDb: null, real: lowDb > 0 };
  }
  return { db: 0, lowDb: null, highDb: null, real: false };
}
