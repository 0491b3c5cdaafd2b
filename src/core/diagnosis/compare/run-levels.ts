/** The level of every order of a run, measured over its whole length along its speed. */
import { levelOf } from '../../signal/speed/order-level.ts';
import { BLOCK_S, orderReadings } from '../../signal/speed/order-readings.ts';
import type { OrderReadings } from '../../signal/speed/order-readings.ts';
import { historyOf } from '../matching/group-history.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { Origin } from '../origins/origin.ts';
import { expectedPlace } from '../matching/place.ts';
import { OWN_FROM, ownerOf, ownToneOf } from '../matching/tone-of-order.ts';
import type { SeenLevel } from './change.ts';
import { isSeen } from './change.ts';

export interface ReadLevel extends SeenLevel {
  readonly readings: OrderReadings;
  /** The diagnosis found a tone that is this one's. */
  readonly own: boolean;
  readonly frequencyHz: number;
  readonly verticalShare: number | null;
}

/** Of an order. */
export interface RunLevel extends ReadLevel {
  readonly origin: Origin;
}

/** An order that is not found must be placed to half a block's bin, or its level would be read beside it. */
const PLACE_SD_BINS = 0.5;

/** Nearer to another's tone than this, bins of a block, its level is read. */
export const ANOTHERS_BINS = 2;

/** Length of the blocks in which a run's levels are read, s: three at the least, also of a part of a few seconds. */
export const blockOf = ({ run: { prepared } }: RunInference): number =>
  Math.min(
    BLOCK_S,
    Math.max(...prepared.pieces.map(({ axes }) => (axes[0]?.length ?? 0) / prepared.samplingRateHz)) / 2,
  );

/** What the run shows at an order; null where it cannot be read there. */
export const readingsAt = (inference: RunInference, origin: Origin, frequencyHz: number): OrderReadings | null =>
  orderReadings(inference.run.prepared, frequencyHz, historyOf(inference, origin.group), blockOf(inference), true);

/** By label; orders above half the rate, not placed well enough, or hidden by another's tone, are left out. */
export function runLevels(inference: RunInference): Map<string, RunLevel> {
  const levels = new Map<string, RunLevel>();
  const blockS = blockOf(inference);
  for (const origin of inference.origins) {
    const own = ownToneOf(inference, origin.line.label)?.tone.peak ?? null;
    const place = expectedPlace(inference, origin);
    if (!own && (place.sdHz * blockS > PLACE_SD_BINS || isTaken(inference, origin, place.hz))) continue;
    const frequencyHz = own?.frequencyHz ?? place.hz;
    const readings = readingsAt(inference, origin, frequencyHz);
    if (!readings) continue;
    const level = levelOf(readings);
    const seen = isSeen(level, own !== null);
    levels.set(origin.line.label, {
      origin,
      frequencyHz,
      verticalShare: own?.verticalShare ?? null,
      readings,
      level,
      seen,
      own: own !== null,
    });
  }
  return levels;
}

/** A tone of another order, an image or a tone that keeps to the clock stands where the order would: that is what is read. */
const isTaken = (inference: RunInference, { line }: Origin, placeHz: number): boolean =>
  inference.matches.some((match) => {
    const { tone, others } = match;
    const owner = ownerOf(match);
    const isAnothers =
      others.fixed >= OWN_FROM || (owner !== null && (owner.image || owner.origin.line.label !== line.label));
    return isAnothers && Math.abs(tone.peak.frequencyHz - placeHz) * blockOf(inference) < ANOTHERS_BINS;
  });

/** Widest search for an order that is not found, in steps of a block's bin: beyond, its place is not known at all. */
const MOST_STEPS = 40;

/**
 * What could hide of an order that is not found and whose place is not known to a block's bin: the most there is anywhere
 * in its place (95 %), another line's level included.
 * @returns null where the order is not expected, or could be almost anywhere
 */
export function hiddenLevel(inference: RunInference, label: string): RunLevel | null {
  const origin = inference.origins.find(({ line }) => line.label === label);
  if (!origin) return null;
  const place = expectedPlace(inference, origin);
  const blockS = blockOf(inference);
  const steps = Math.ceil(4 * place.sdHz * blockS);
  if (steps > MOST_STEPS) return null;
  const levels = Array.from({ length: steps + 1 }, (_, k) => {
    const frequencyHz = place.hz + (k - steps / 2) / blockS;
    const readings = readingsAt(inference, origin, frequencyHz);
    return readings ? [{ frequencyHz, readings, level: levelOf(readings) }] : [];
  }).flat();
  const most = levels.sort((a, b) => b.level.power - a.level.power)[0];
  return most ? { origin, ...most, verticalShare: null, seen: false, own: false } : null;
}
