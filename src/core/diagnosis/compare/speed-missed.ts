/** Whether the second run's speed, and not the repair, leaves open what changed: then how to drive it again. */
import { kmhFromMps, mphFromMps } from '../../units.ts';
import type { Change, Conditions, SeenLevel } from './change.ts';
import { changeOf } from './change.ts';
import type { ComparedPair } from './comparison.ts';

/** Speeds this near are the same to a driver with a cruise control, dB of speed (half a percent). */
const MET_DB = 20 * Math.log10(1.005);
/** At the same speed the interval would be narrower than this share of what it is, or speed does not matter much. */
const WORTH_DRIVING = 0.75;

const halfWidth = ({ lowDb, highDb }: Change): number | null =>
  lowDb === null || highDb === null ? null : (highDb - lowDb) / 2;

/**
 * @param levels before and after
 * @param change between them under these conditions
 * @returns a sentence, or null where a change is shown, the speed was met, or meeting it would not narrow the interval
 */
export function speedMissed(
  [one, other]: readonly [SeenLevel, SeenLevel],
  conditions: Conditions,
  change: Change,
  { before, after }: Pick<ComparedPair, 'before' | 'after'>,
): string | null {
  const { speedDb } = conditions;
  const width = halfWidth(change);
  if (change.real || width === null || Math.abs(speedDb) <= MET_DB) return null;
  const widthMet = halfWidth(changeOf(one, other, { ...conditions, speedDb: 0 }));
  if (widthMet === null || widthMet > WORTH_DRIVING * width) return null;
  const percent = (100 * Math.abs(10 ** (speedDb / 20) - 1)).toFixed(1);
  const { speedMps } = before;
  const again =
    speedMps === null
      ? 'at the same speed'
      : `at ${mphFromMps(speedMps).toFixed(1)} mph (${kmhFromMps(speedMps).toFixed(1)} km/h), by cruise control`;
  return (
    `${after.name} was ${percent} % ${speedDb > 0 ? 'faster' : 'slower'} than ${before.name}, and how the level follows the speed is not known well: ` +
    `that makes the interval ±${width.toFixed(1)} dB. Driven again ${again}, it would be ±${widthMet.toFixed(1)} dB.`
  );
}
