/** The unit of columns that name none, by the size of gravity in them: a usual unit, or raw counts and their scale. */
import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import { unitByGravity } from './gravity-size.ts';
import type { AccelerationUnit } from './header-units.ts';

/** A unit that is said elsewhere than in the columns' names. */
export interface SaidUnit extends AccelerationUnit {
  readonly because: string;
}

/**
 * Whole numbers may be milli-g, mm/s², or raw counts; converters have a power of two of them to the g. The steady part
 * is off by the sensor's own error, mostly its zero point, some 30 mg; so what lies this close to it is possible, and
 * the closest is taken. 1000 (milli-g) and 1024 are the only pair that one steady part can be close to.
 */
const SENSOR_ERROR = 0.03;

/** Fewer counts than this for gravity are too coarse to scale by, and to measure with. */
const LEAST_COUNTS = 20;

export const rounded = (value: number): string => String(Number(value.toPrecision(4)));

export interface MeasuredUnit extends SaidUnit {
  /** What the numbers may be as well, in words. */
  readonly rival: string | null;
}

const offBy = (size: number, perG: number): number => Math.abs(Math.log(size / perG));

/** The unit by the size of gravity. @param counts the header says that these are raw counts */
export function measuredUnit(size: number, whole: boolean, counts: boolean): MeasuredUnit | null {
  const exact = counts || (whole && size > 100);
  const usual = unitByGravity(size, exact ? SENSOR_ERROR : undefined);
  const perG = usual ? STANDARD_GRAVITY_MPS2 / usual.mps2PerUnit : NaN;
  if (usual && !exact)
    return { ...usual, because: `the steady part is ${rounded(size)}, which is gravity in ${usual.unit}`, rival: null };
  if (!counts && !(whole && size >= 50)) return null;
  if (!(size >= LEAST_COUNTS)) return null;
  const power = 2 ** Math.round(Math.log2(size));
  const converter = offBy(size, power) <= SENSOR_ERROR;
  const asConverter = `${power} raw counts to the g`;
  const asUsual = usual ? (counts ? `${rounded(perG)} raw counts to the g` : usual.unit) : '';
  const rival = (taken: string, other: string): string =>
    `A steady part of ${rounded(size)} in whole numbers is nearest to ${taken}, but may be ${other}: levels are then off by ${(100 * offBy(power, perG)).toFixed(1)} %`;
  if (usual && !(converter && offBy(size, power) < offBy(size, perG)))
    return {
      unit: counts ? 'counts' : usual.unit,
      mps2PerUnit: usual.mps2PerUnit,
      because: `the steady part is ${rounded(size)}, which is gravity ${counts ? `at ${asUsual}` : `in ${asUsual}`}`,
      rival: converter ? rival(asUsual, asConverter) : null,
    };
  return {
    unit: 'counts',
    mps2PerUnit: STANDARD_GRAVITY_MPS2 / (converter ? power : size),
    because: converter
      ? `raw counts, ${asConverter}: the power of two at the steady part of ${rounded(size)} counts, which is gravity`
      : `raw counts, scaled so that the steady part of ${rounded(size)} counts is gravity`,
    rival: usual ? rival(asConverter, asUsual) : null,
  };
}
