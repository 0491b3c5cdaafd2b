/** The level of every order of a run, measured over its whole length along its speed. */
import { BLOCK_S, orderLevel } from '../../signal/order-level.ts';
import type { RunInference } from '../infer-run.ts';
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
