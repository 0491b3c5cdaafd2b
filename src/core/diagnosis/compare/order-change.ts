/** What is said of one order (or fixed tone) in two runs, out of its levels. */
import { feltLevel } from '../../signal/felt.ts';
import { withNoiseUnder } from '../../signal/speed/noise-under-order.ts';
import { FELT_FROM } from '../findings/perceived.ts';
import type { Change } from './change.ts';
import { isSeen, mostPower } from './change.ts';
import type { ComparedLevel, OrderChange } from './comparison.ts';
import { levelsOfPair } from './levels-of-pair.ts';
import type { Pair } from './pair.ts';
import type { ReadLevel } from './run-levels.ts';
import { SPEED_LAWS } from './speed-law.ts';

/** Both read as surely as the pair allows, with what the road shakes at the same place taken out. */
export function overNoise<Level extends ReadLevel>(
  [one, other]: readonly [Level, Level],
  { mountedAlike }: Pair,
): readonly [Level, Level] {
  if (!one.seen || !other.seen) return [one, other];
  const levels = mountedAlike ? levelsOfPair(one.readings, other.readings) : [one.level, other.level];
  const [a, b] = levels.map((level) => withNoiseUnder(level, SPEED_LAWS));
  return [
    { ...one, level: a!, seen: isSeen(a!, one.own) },
    { ...other, level: b!, seen: isSeen(b!, other.own) },
  ];
}

export function orderChange(
  named: Pick<OrderChange, 'part' | 'name' | 'order' | 'label'>,
  [one, other]: readonly [ReadLevel, ReadLevel],
  change: Change,
): OrderChange {
  const before = comparedLevel(one);
  const after = comparedLevel({ ...other, verticalShare: other.verticalShare ?? one.verticalShare });
  return {
    ...named,
    before,
    after,
    changeDb: change.db,
    lowDb: change.lowDb,
    highDb: change.highDb,
    real: change.real,
    verdict: verdictOf(before, after, change.real, change.db),
  };
}

function comparedLevel({ level, seen, frequencyHz, verticalShare }: ReadLevel): ComparedLevel {
  const amplitudeMps2 = Math.sqrt(seen ? level.power : mostPower(level));
  return { frequencyHz, amplitudeMps2, feltLevel: feltLevel(frequencyHz, amplitudeMps2, verticalShare), seen };
}

/** What was hardly felt and fell by this much is gone: a third of it is what sound vehicles have. Judgment. */
const NEXT_TO_NOTHING_DB = 10;

function verdictOf(before: ComparedLevel, after: ComparedLevel, real: boolean, db: number): OrderChange['verdict'] {
  if (!before.seen && !after.seen) return 'not-seen';
  if (!real) return 'unchanged';
  if (db > 0)
    return before.seen && before.feltLevel >= FELT_FROM ? 'worse' : after.feltLevel >= FELT_FROM ? 'appeared' : 'worse';
  const wasFelt = before.feltLevel >= FELT_FROM;
  const isLeft = after.feltLevel >= FELT_FROM || (!wasFelt && db > -NEXT_TO_NOTHING_DB);
  return !after.seen || !isLeft ? 'gone' : 'better';
}
