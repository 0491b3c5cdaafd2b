/** Whether the second run's speed, and not the repair, leaves open what changed: then how to drive it again. */
import { kmhFromMps, mphFromMps } from '../../units.ts';
import type { Change, Conditions, SeenLevel } from './change.ts';
import { changeOf } from './change.ts';

/** Speeds this near are the same to a driver with a cruise control, dB of speed (half a percent). */
const MET_DB = 20 * Math.log10(1.005);
/** At the same speed the interval would be narrower than this share of what it is, or speed does not matter much. */
const WORTH_DRIVING = 0.75;

const halfWidth = ({ lowDb, highDb }: Change): number | null =>
  lowDb === null || highDb === null ? null : (highDb - lowDb) / 2;

/**
 * @param change between the two levels under these conditions
 * @param speedMps of the run before, null where not known
 * @returns a sentence, or null where a change is shown, the speed was met, or meeting it would not narrow the interval
 */
export function speedMissed(
  one: SeenLevel,
  other: SeenLevel,
  conditions: Conditions,
  change: Change,
  speedMps: number | null,
): string | null {
  const { speedDb } = conditions;
  const width = halfWidth(change);
  if (change.real || width === null || Math.abs(speedDb) <= MET_DB) return null;
  const widthMet = halfWidth(changeOf(one, other, { ...conditions, speedDb: 0 }));
  if (widthMet === null || widthMet > WORTH_DRIVING * width) return null;
  const percent = (100 * Math.abs(10 ** (speedDb / 20) - 1)).toFixed(1);
  const again =
    speedMps === null
      ? 'at the speed of the run before'
      : `at ${mphFromMps(speedMps).toFixed(1)} mph (${kmhFromMps(speedMps).toFixed(1)} km/h), by cruise control`;
  return (
    `The run after was ${percent} % ${speedDb > 0 ? 'faster' : 'slower'} than the run before, and how the level follows the speed is not known well: ` +
    `that makes the interval ±${width.toFixed(1)} dB. Driven again ${again}, it would be ±${widthMet.toFixed(1)} dB.`
  );
}
