/** The unit of the time stamps: as the column's name says, or by the size of an epoch, or by the only likely rate. */
import type { TimeColumn } from '../layout/time-column.ts';
import type { ScaledUnit } from '../layout/header-units.ts';

export interface TimeUnit extends ScaledUnit {
  readonly because: string;
  /** Set where the name's unit was overruled. */
  readonly overruled?: string;
}

const UNITS: readonly ScaledUnit[] = [
  { unit: 's', factor: 1 },
  { unit: 'ms', factor: 1e-3 },
  { unit: 'µs', factor: 1e-6 },
  { unit: 'ns', factor: 1e-9 },
];

/** Seconds since 1970 between 2001 and 2100: stamps of this size are an epoch, and in one unit only. */
const EPOCH_FROM_S = 978_307_200;
const EPOCH_TO_S = 4_102_444_800;

/**
 * Rates between which an accelerometer recording lies when nothing else is known. The range spans less than a factor
 * of 1000, so of s, ms, µs and ns at most one fits; judgment.
 */
const LIKELY_LOW_HZ = 20;
const LIKELY_HIGH_HZ = 5000;
/** Faster than this no accelerometer logger writes, whatever the unit. */
const FASTEST_HZ = 200_000;

/** @param meanStep mean step from row to row, in the column's unit */
export function decideTimeUnit(time: TimeColumn, firstStamp: number, meanStep: number): TimeUnit | null {
  if (time.kind === 'clock') return { unit: 's', factor: 1, because: `"${time.name}" is a clock time` };
  const epoch = UNITS.find(({ factor }) => firstStamp * factor > EPOCH_FROM_S && firstStamp * factor < EPOCH_TO_S);
  const likely = likelyUnit(meanStep);
  if (time.unit) {
    if (epoch && likely === epoch && epoch.factor !== time.unit.factor)
      return { ...epoch, because: `stamps of this size count ${epoch.unit} since 1970`, overruled: time.unit.unit };
    return { ...time.unit, because: `its name says ${time.unit.unit}` };
  }
  if (epoch && (!likely || likely === epoch))
    return { ...epoch, because: `stamps of this size count ${epoch.unit} since 1970` };
  // A step of exactly one may be a count of rows as well as a millisecond: nobody can tell.
  if (!likely || meanStep === 1) return null;
  return {
    ...likely,
    because: `in ${likely.unit} the steps give ${Number((1 / (meanStep * likely.factor)).toPrecision(3))} Hz, the only likely rate`,
  };
}

function likelyUnit(meanStep: number): ScaledUnit | undefined {
  const rateHz = (factor: number): number => 1 / (meanStep * factor);
  // Small fractions can only be seconds: in any finer unit they would be faster still.
  if (rateHz(1) > LIKELY_HIGH_HZ && rateHz(1) <= FASTEST_HZ) return UNITS[0];
  return UNITS.find(({ factor }) => rateHz(factor) >= LIKELY_LOW_HZ && rateHz(factor) <= LIKELY_HIGH_HZ);
}
