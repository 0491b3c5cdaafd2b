/** Tones that keep their frequency whatever the speed, compared where they stand: the complaint may be one. */
import { STEADY } from '../../signal/speed/equal-angle.ts';
import { levelOf } from '../../signal/speed/order-level.ts';
import { orderReadings } from '../../signal/speed/order-readings.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { Match } from '../matching/match.ts';
import { ownerOf } from '../matching/tone-of-order.ts';
import { changeOf, isSeen } from './change.ts';
import { isSameTone } from '../findings/same-tone.ts';
import type { OrderChange } from './comparison.ts';
import { orderChange, overNoise } from './order-change.ts';
import type { Pair } from './pair.ts';
import type { ReadLevel } from './run-levels.ts';
import { ANOTHERS_BINS, blockOf } from './run-levels.ts';

/**
 * The change of every fixed tone that one of the runs shows. Where the other run shows a turning part's tone at that place
 * it is that one's level which would be read: such a tone is left out.
 * @param speedDb how much faster the second run was, dB of speed
 * @param unknownHz tones that the findings do not call fixed
 */
export function fixedToneChanges(pair: Pair, speedDb: number, unknownHz: readonly number[]): OrderChange[] {
  const { before, after, unlikeSdDb } = pair;
  const shown = [...fixedHz(before), ...fixedHz(after)].filter((hz) => !unknownHz.some((one) => isSameTone(one, hz)));
  const places = shown.filter((hz, i) => !shown.slice(0, i).some((other) => isSameTone(other, hz)));
  return places.flatMap((hz) => {
    const [one, other] = [toneLevel(before, hz), toneLevel(after, hz)];
    if (!one || !other) return [];
    const levels = overNoise([one, other], pair);
    const named = { part: 'fixed', order: null, label: `fixed tone at ${hz.toFixed(1)} Hz` } as const;
    return [orderChange(named, levels, changeOf(...levels, { speedDb, unlikeSdDb }))];
  });
}

/** Likelier fixed than anything else: the diagnosis calls it so. */
const isFixed = ({ others: { fixed, ...rest }, lines }: Match): boolean =>
  [...Object.values(rest), ...lines.map(({ probability }) => probability)].every((other) => fixed > other);

const fixedHz = ({ matches }: RunInference): number[] =>
  matches.filter(isFixed).map(({ tone }) => tone.peak.frequencyHz);

/** @returns null where another's tone stands there, or nothing can be read so near the ends of the spectrum */
function toneLevel(inference: RunInference, hz: number): ReadLevel | null {
  const blockS = blockOf(inference);
  const [own] = inference.matches
    .filter((match) => isFixed(match) && isSameTone(match.tone.peak.frequencyHz, hz))
    .map(({ tone }) => tone.peak)
    .sort((a, b) => Math.abs(a.frequencyHz - hz) - Math.abs(b.frequencyHz - hz));
  const isAnothers = (match: Match): boolean =>
    ownerOf(match) !== null && Math.abs(match.tone.peak.frequencyHz - hz) * blockS < ANOTHERS_BINS;
  if (!own && inference.matches.some(isAnothers)) return null;
  const frequencyHz = own?.frequencyHz ?? hz;
  const readings = orderReadings(inference.run.prepared, frequencyHz, STEADY, blockS, true);
  if (!readings) return null;
  const level = levelOf(readings);
  const isOwn = own !== undefined;
  return {
    readings,
    level,
    seen: isSeen(level, isOwn),
    own: isOwn,
    frequencyHz,
    verticalShare: own?.verticalShare ?? null,
  };
}
