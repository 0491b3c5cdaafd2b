/** Guards for numbers in a job file: a bare number in the unit its key names, or a text with a unit. */
import { success } from '../note.ts';
import {
  ANGLE_DEG,
  FREQUENCY_HZ,
  LENGTH_M,
  LENGTH_MM,
  MASS_KG,
  RATIO,
  SPEED,
  TIME_S,
  TURNING_SPEED_RPM,
} from '../quantity/quantity-kinds.ts';
import { parseQuantity } from '../quantity/quantity.ts';
import type { QuantityKind } from '../quantity/quantity-kinds.ts';
import { shown, wrongKey } from './guards.ts';
import type { Guard } from './guards.ts';

/** A quantity between two limits, in the unit the core holds it in. */
export const quantity =
  (kind: QuantityKind, least: number, most: number): Guard<number> =>
  (value, key) => {
    const orText = Object.hasOwn(kind.units, '')
      ? `, like ${kind.example}`
      : `, or a text with its unit like ${kind.example}`;
    const example = `Write a number from ${least} to ${most}${orText}.`;
    if (typeof value === 'number') {
      return value >= least && value <= most
        ? success(value)
        : wrongKey(key, `${shown(value)} is outside what is possible for this ${kind.name}`, example);
    }
    if (typeof value !== 'string') {
      return wrongKey(key, `a ${kind.name} is expected, but it holds ${shown(value)}`, example);
    }
    const parsed = parseQuantity(value, kind, undefined, { range: [least, most] });
    return parsed.ok ? parsed : wrongKey(key, parsed.problem.message.replace(/\.$/u, ''), parsed.problem.remedy);
  };

/** A whole number between two limits. */
export const count =
  (least: number, most: number): Guard<number> =>
  (value, key) =>
    typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most
      ? success(value)
      : wrongKey(
          key,
          `a whole number is expected, but it holds ${shown(value)}`,
          `Write one from ${least} to ${most}.`,
        );

export const ratio = (least: number, most: number): Guard<number> => quantity(RATIO, least, most);
/** Road speeds up to 150 m/s (335 mph). */
export const speedMps = quantity(SPEED, 0, 150);
export const engineRpm = quantity(TURNING_SPEED_RPM, 0, 30_000);
/** From a slow logger to a fast data recorder. */
export const samplingRateHz = quantity(FREQUENCY_HZ, 0.1, 10_000_000);
/** A place in a recording of up to four days. */
export const timeS = quantity(TIME_S, 0, 345_600);
export const circumferenceM = quantity(LENGTH_M, 0.7, 5);
export const lengthMm = (least: number, most: number): Guard<number> => quantity(LENGTH_MM, least, most);
export const massKg = quantity(MASS_KG, 0, 1000);
export const angleDeg = (most: number): Guard<number> => quantity(ANGLE_DEG, -most, most);
