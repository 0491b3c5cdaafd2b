/** The change of one level between two runs, dB, with its 95 % interval. */
import { fTailQuantile } from '../../signal/distributions.ts';
import type { OrderLevel } from '../../signal/order-level.ts';

export interface Change {
  readonly db: number;
  readonly lowDb: number | null;
  readonly highDb: number | null;
  readonly real: boolean;
}

const DB_PER_NEPER_OF_POWER = 10 / Math.LN10;
/** One-sided 95 % of the normal distribution. */
const ONE_SIDED = 1.645;
/** A level counts as seen where its power is this many standard uncertainties above nothing. */
const SEEN_FROM = 3;
/** Where the diagnosis has no tone there, the level must also stand this far over both sides: a hump of the road's is not an order. */
const CLEAR_OF_A_HUMP = 4;

/** A level, and whether it is the order's own or only what could hide there. */
export interface SeenLevel {
  readonly level: OrderLevel;
  readonly seen: boolean;
}

/** @param ownTone true where the diagnosis found a tone that is this order's */
export const isSeen = (level: OrderLevel, ownTone: boolean): boolean =>
  level.power > SEEN_FROM * noiseSd(level) && (ownTone || level.power > CLEAR_OF_A_HUMP * level.noisePower);

/** Standard uncertainty of the power if there were no order at all: what 'seen' is held against. */
const noiseSd = ({ noisePower, blocks }: OrderLevel): number => noisePower * Math.sqrt(2 / Math.max(1, blocks));

/** The most that the power may be (95 %), (m/s²)². */
export const mostPower = (level: OrderLevel): number =>
  Math.max(0, level.power) + ONE_SIDED * Math.max(level.powerSd, noiseSd(level));

/**
 * @param correctionDb what the difference of speed alone would have changed; taken out
 * @param extraSdDb uncertainty added for the speed's correction and for unlike runs
 * @returns two-sided 95 % interval by Student's distribution where both are seen; one-sided where one is hidden;
 *   not real where both are hidden
 */
export function changeOf(one: SeenLevel, other: SeenLevel, correctionDb: number, extraSdDb: number): Change {
  const { level: before, seen: seenBefore } = one;
  const { level: after, seen: seenAfter } = other;
  const decibels = (to: number, from: number): number => DB_PER_NEPER_OF_POWER * Math.log(to / from) - correctionDb;
  if (seenBefore && seenAfter) {
    const sdBefore = (DB_PER_NEPER_OF_POWER * before.powerSd) / before.power;
    const sdAfter = (DB_PER_NEPER_OF_POWER * after.powerSd) / after.power;
    const sd = Math.hypot(sdBefore, sdAfter, extraSdDb);
    const half = studentQuantile(degrees(sdBefore, before, sdAfter, after, sd)) * sd;
    const db = decibels(after.power, before.power);
    return { db, lowDb: db - half, highDb: db + half, real: Math.abs(db) > half };
  }
  const margin = ONE_SIDED * extraSdDb;
  if (seenBefore) {
    const highDb =
      decibels(mostPower(after), Math.max(before.power - ONE_SIDED * before.powerSd, 0.1 * before.power)) + margin;
    return { db: decibels(mostPower(after), before.power), lowDb: null, highDb, real: highDb < 0 };
  }
  if (seenAfter) {
    const lowDb =
      decibels(Math.max(after.power - ONE_SIDED * after.powerSd, 0.1 * after.power), mostPower(before)) - margin;
    return { db: decibels(after.power, mostPower(before)), lowDb, highDb: null, real: lowDb > 0 };
  }
  return { db: 0, lowDb: null, highDb: null, real: false };
}

/** Degrees of freedom of the joint uncertainty (Welch 1947, Satterthwaite 1946); the extra part counts as well known. */
function degrees(sdBefore: number, before: OrderLevel, sdAfter: number, after: OrderLevel, sd: number): number {
  const share = sdBefore ** 4 / (before.effectiveBlocks - 1) + sdAfter ** 4 / (after.effectiveBlocks - 1);
  return share > 0 ? Math.min(200, Math.max(2, sd ** 4 / share)) : 200;
}

/** Two-sided 95 % of Student's distribution: t² has the F distribution with 1 and n degrees of freedom. */
const studentQuantile = (n: number): number => Math.sqrt(fTailQuantile(0.05, 1, n));
