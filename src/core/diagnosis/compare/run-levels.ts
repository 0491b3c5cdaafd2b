/** The level of every order of a run, measured over its whole length along its speed. */
import { BLOCK_S, orderLevel } from '../../signal/order-level.ts';
import type { RunInference } from '../infer-run.ts';
import type { SpeedSource } from '../../vehicle/vehicle.ts';
import type { Origin } from '../origin.ts';
import { expectedPlace } from '../place.ts';
import type { SeenLevel } from './change.ts';
import { isSeen } from './change.ts';

export interface RunLevel extends SeenLevel {
  /** The diagnosis found a tone that is this order's. */
  readonly own: boolean;
  readonly origin: Origin;
  readonly frequencyHz: number;
  readonly verticalShare: number | null;
}

/** A tone is taken as the order's own from this probability on. */
const OWN_FROM = 0.5;
/** An order that is not found must be placed to half a block's bin, or its level would be read beside it. */
const PLACE_SD_HZ = 0.5 / BLOCK_S;

/** By label; orders above half the rate, or not placed well enough, are left out. */
export function runLevels(inference: RunInference): Map<string, RunLevel> {
  const levels = new Map<string, RunLevel>();
  const { prepared, speedTrack } = inference.run;
  for (const origin of inference.origins) {
    const own = ownTone(inference, origin);
    const place = expectedPlace(inference, origin);
    if (!own && place.sdHz > PLACE_SD_HZ) continue;
    const frequencyHz = own?.frequencyHz ?? place.hz;
    const level = orderLevel(prepared, frequencyHz, speedTrack);
    if (!level) continue;
    const seen = isSeen(level, own !== null);
    levels.set(origin.line.label, {
      origin,
      frequencyHz,
      verticalShare: own?.verticalShare ?? null,
      level,
      seen,
      own: own !== null,
    });
  }
  return levels;
}

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
  const { prepared, speedTrack } = inference.run;
  const place = expectedPlace(inference, origin);
  const steps = Math.ceil(4 * place.sdHz * BLOCK_S);
  if (steps > MOST_STEPS) return null;
  const levels = Array.from({ length: steps + 1 }, (_, k) => {
    const frequencyHz = place.hz + (k - steps / 2) / BLOCK_S;
    const level = orderLevel(prepared, frequencyHz, speedTrack);
    return level ? [{ frequencyHz, level }] : [];
  }).flat();
  const most = levels.sort((a, b) => b.level.power - a.level.power)[0];
  return most ? { origin, ...most, verticalShare: null, seen: false, own: false } : null;
}

/** How far an order may stand off where the other run puts it, as a share: by speeds read well, and by others. */
const OFF_PARTNER = 0.01;
const OFF_PARTNER_ROUGHLY = 0.03;
const READ_WELL: readonly (SpeedSource | undefined)[] = ['gps', 'obd', 'logged'];
/** Two tones at one place, Hz. */
const SAME_PLACE_HZ = 0.1;

/**
 * An order that one run shows surely and the other's diagnosis left open: the strongest clear tone where the one run
 * and the two speeds put it. The vehicle is the same, so that neither the tire's true size nor which order it is at
 * fault is in doubt any more. Another line's tone, and one that stands where the first run has another tone (it did not
 * move with the speed), are left alone.
 * @param shown the order in the run that shows it
 * @param faster speed of the other run over the first one's
 * @returns null where no such tone stands there
 */
export function partnerLevel(
  { inference: first, level: shown }: { readonly inference: RunInference; readonly level: RunLevel },
  other: RunInference,
  faster: number,
): RunLevel | null {
  const { label } = shown.origin.line;
  const origin = other.origins.find(({ line }) => line.label === label);
  if (!origin) return null;
  const isWell =
    origin.group === 'road' && [first, other].every((one) => READ_WELL.includes(one.run.condition.speedSource));
  const expectedHz = shown.frequencyHz * faster;
  const reachHz = expectedHz * (isWell ? OFF_PARTNER : OFF_PARTNER_ROUGHLY);
  const firstHz = first.matches
    .map(({ tone }) => tone.peak.frequencyHz)
    .filter((hz) => Math.abs(hz - shown.frequencyHz) > SAME_PLACE_HZ);
  const tones = other.matches
    .filter(({ tone, lines }) => {
      const { frequencyHz } = tone.peak;
      return (
        Math.abs(frequencyHz - expectedHz) < reachHz &&
        !firstHz.some((hz) => Math.abs(hz - frequencyHz) < SAME_PLACE_HZ) &&
        !lines.some((line) => line.origin.line.label !== label && line.probability >= OWN_FROM)
      );
    })
    .map(({ tone }) => tone.peak)
    .sort((a, b) => b.amplitudeMps2 - a.amplitudeMps2);
  for (const { frequencyHz, verticalShare } of tones) {
    const level = orderLevel(other.run.prepared, frequencyHz, other.run.speedTrack);
    if (level && isSeen(level, false)) return { origin, frequencyHz, verticalShare, level, seen: true, own: true };
  }
  return null;
}

function ownTone(
  inference: RunInference,
  origin: Origin,
): { frequencyHz: number; verticalShare: number | null } | null {
  const own = inference.matches.filter((match) =>
    match.lines.some(
      (share) => !share.image && share.origin.line.label === origin.line.label && share.probability >= OWN_FROM,
    ),
  );
  const strongest = own.sort((a, b) => b.tone.peak.amplitudeMps2 - a.tone.peak.amplitudeMps2)[0];
  return strongest ? strongest.tone.peak : null;
}
