/** Tones of no listed part, compared where they may stand: what they follow is not known, only how fast both runs were. */
import { STEADY } from '../../signal/speed/equal-angle.ts';
import { levelOf } from '../../signal/speed/order-level.ts';
import { orderReadings } from '../../signal/speed/order-readings.ts';
import { isSameTone } from '../findings/same-tone.ts';
import { historyOf } from '../matching/group-history.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { Match } from '../matching/match.ts';
import { OWN_FROM, ownerOf } from '../matching/tone-of-order.ts';
import { changeOf, isSeen } from './change.ts';
import type { OrderChange } from './comparison.ts';
import { orderChange, overNoise } from './order-change.ts';
import type { Pair } from './pair.ts';
import type { ReadLevel } from './run-levels.ts';
import { ANOTHERS_BINS, blockOf } from './run-levels.ts';

/** How far off a tone may stand where both speeds put it, relative: as far as a speed may be misread. Judgment. */
const OFF = 0.01;
/** Where it is looked for, steps of this many bins of a block; more of them than the most, and it could be anywhere. */
const STEP_BINS = 0.5;
const MOST_STEPS = 60;

/**
 * The change of every tone that the findings of one of the runs call unknown.
 * @param unknownHz where these stand
 * @param speedDb how much faster the second run was, dB of speed; null where that is not known
 */
export function unknownToneChanges(pair: Pair, unknownHz: readonly number[], speedDb: number | null): OrderChange[] {
  const { before, after, unlikeSdDb } = pair;
  const faster = speedDb === null ? null : 10 ** (speedDb / 20);
  const changed = (one: ReadLevel | null, other: ReadLevel | null): OrderChange[] => {
    if (!one || !other) return [];
    const hz = (one.own ? one : other).frequencyHz;
    const named = { part: 'unknown', order: null, label: `unknown tone at ${hz.toFixed(1)} Hz` } as const;
    const levels = overNoise([one, other], pair);
    return [orderChange(named, levels, changeOf(...levels, { speedDb: speedDb ?? 0, unlikeSdDb }))];
  };
  const shown = tonesIn(before, unknownHz).map((own) => ({ own, partner: levelThere(own, before, after, faster) }));
  const partners = shown.flatMap(({ partner }) => partner?.frequencyHz ?? []);
  const fresh = tonesIn(after, unknownHz).filter(
    ({ frequencyHz }) => !partners.some((hz) => isSameTone(hz, frequencyHz)),
  );
  return [
    ...shown.flatMap(({ own, partner }) => changed(own, partner)),
    ...fresh.flatMap((own) => changed(levelThere(own, after, before, faster && 1 / faster), own)),
  ];
}

/** Likelier no line of a part than any. */
const isOfNoPart = ({ others: { fixed, unlisted, resonance, noise }, lines }: Match): boolean =>
  [resonance, noise, ...lines.map(({ probability }) => probability)].every(
    (other) => Math.max(fixed, unlisted) > other,
  );

const tonesIn = (inference: RunInference, unknownHz: readonly number[]): ReadLevel[] =>
  inference.matches
    .filter((match) => isOfNoPart(match) && unknownHz.some((hz) => isSameTone(hz, match.tone.peak.frequencyHz)))
    .flatMap((match) => ownLevel(inference, match) ?? []);

/** The level of a tone that the run's diagnosis found. */
function ownLevel(inference: RunInference, { tone: { peak } }: Match): ReadLevel | null {
  const read = readAt(inference, peak.frequencyHz);
  return read && { ...read, verticalShare: peak.verticalShare, own: true, seen: isSeen(read.level, true) };
}

/** What could hide there, read along the history that gathers most: none, the road's or the engine's. */
function readAt(inference: RunInference, frequencyHz: number): ReadLevel | null {
  const histories = new Set([STEADY, historyOf(inference, 'road'), historyOf(inference, 'engine')]);
  const [most] = [...histories]
    .flatMap((history) => orderReadings(inference.run.prepared, frequencyHz, history, blockOf(inference), true) ?? [])
    .map((readings) => ({ readings, level: levelOf(readings) }))
    .sort((a, b) => b.level.power - a.level.power);
  return most ? { ...most, frequencyHz, verticalShare: null, own: false, seen: false } : null;
}

/**
 * The tone in the other run: that run's own tone of no order near where it would stand if it kept its frequency, if it
 * went with the speed, or anything between; else the most that could hide there.
 * @param faster speed of the other run over the one that shows it; null where not known
 * @returns null where it could be almost anywhere, or where something stands there that the first run does not show: it
 *   may be the tone, by another name
 */
function levelThere(
  { frequencyHz }: ReadLevel,
  shownIn: RunInference,
  other: RunInference,
  faster: number | null,
): ReadLevel | null {
  const [lowHz, highHz] = [Math.min(1, faster ?? 1) * (1 - OFF), Math.max(1, faster ?? 1) * (1 + OFF)].map(
    (factor) => factor * frequencyHz,
  ) as [number, number];
  const binHz = 1 / blockOf(other);
  const there = other.matches.filter(
    ({ tone: { peak } }) => peak.frequencyHz > lowHz - binHz && peak.frequencyHz < highHz + binHz,
  );
  const isOurs = (match: Match): boolean => isOfNoPart(match) && !isShownElsewhere(shownIn, match, frequencyHz);
  const [own] = there.filter(isOurs).sort((a, b) => b.tone.peak.amplitudeMps2 - a.tone.peak.amplitudeMps2);
  if (own) return ownLevel(other, own);
  const taken = there.filter((match) => nameOf(match) !== null);
  const steps = Math.ceil((highHz - lowHz) / (STEP_BINS * binHz));
  if (faster === null || steps > MOST_STEPS || taken.some((match) => !isShownElsewhere(shownIn, match, frequencyHz)))
    return null;
  const isTaken = (hz: number): boolean =>
    taken.some(({ tone: { peak } }) => Math.abs(peak.frequencyHz - hz) < ANOTHERS_BINS * binHz);
  return Array.from({ length: steps + 1 }, (_, k) => lowHz + ((highHz - lowHz) * k) / steps)
    .filter((hz) => !isTaken(hz))
    .flatMap((hz) => readAt(other, hz) ?? [])
    .reduce<ReadLevel | null>((most, one) => (most && most.level.power >= one.level.power ? most : one), null);
}

/** What the diagnosis holds a tone to be, by name; null where that is open. */
const nameOf = (match: Match): string | null =>
  match.others.fixed >= OWN_FROM ? 'fixed' : (ownerOf(match)?.origin.line.label ?? null);

/** True where the run shows the same order, or the same fixed tone, beside the tone looked for. */
const isShownElsewhere = ({ matches }: RunInference, match: Match, toneHz: number): boolean => {
  const owner = nameOf(match);
  return matches.some((one) =>
    owner === 'fixed'
      ? one.tone.peak.frequencyHz !== toneHz && isSameTone(one.tone.peak.frequencyHz, match.tone.peak.frequencyHz)
      : owner !== null && nameOf(one) === owner,
  );
};
