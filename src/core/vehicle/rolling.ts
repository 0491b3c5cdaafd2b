/** How far a tire rolls in one turn. */
import { failure, success } from '../note.ts';
import type { Note, Result } from '../note.ts';
import { METRES_PER_MILE } from '../units.ts';
import { parseTireSize } from './tire-size.ts';
import type { TireConstruction, TireSize } from './tire-parts.ts';
import type { TireSpec } from './vehicle.ts';

/**
 * Rolling circumference over free diameter. A tire rolls less far than π·D as the belt flattens in the contact patch:
 * 3.05 for radials, 2.99 for diagonal and bias-belted tires (ETRTO Standards Manual, general notes, at 60 km/h; from
 * memory of the manual). Check from geometry (Jazar, Vehicle Dynamics, tire chapter): 3.066 for a 205/55R16.
 */
const ROLLING_FACTOR: Readonly<Record<TireConstruction, number>> = {
  radial: 3.05,
  diagonal: 2.99,
  'bias-belted': 2.99,
};

/** Standard uncertainty of the circumference from the size alone, wear unknown (common practice, no source). */
const SD_FROM_SIZE = 0.012;
/** A maker's turns per mile belong to a new tire at rated load; wear is not in them (judgment). */
const SD_FROM_TURNS = 0.008;
/** A measured roll-out still changes with pressure, load and speed by about 0.5 % (common practice, no source). */
const SD_MEASURED = 0.005;
/** Ratio-less sizes: 80 or 82 % moves the diameter by about 1 %, taken as half-way to either side. */
const SD_UNPRINTED_RATIO = 0.005;
/** A flotation size's true diameter is often 0…15 mm below its number (common practice): √(mean² + spread²). */
const SD_FLOTATION_MM = Math.hypot(7.5, 15 / Math.sqrt(12));
/** From a kart's tire to a heavy truck's. */
const LEAST_M = 0.7;
const MOST_M = 5;

export interface RollingCircumference {
  readonly circumferenceM: number;
  /** Relative standard uncertainty. */
  readonly relativeSd: number;
  /** Where it comes from, in a sentence. */
  readonly because: string;
  /** The size it was computed from, where it was. */
  readonly size?: TireSize;
  readonly notes: readonly Note[];
}

const sizeSd = (size: TireSize): number =>
  Math.hypot(
    SD_FROM_SIZE,
    size.aspectAssumed ? SD_UNPRINTED_RATIO : 0,
    size.form === 'flotation' ? SD_FLOTATION_MM / size.diameterMm : 0,
  );

const fromSize = (text: string): Result<RollingCircumference> => {
  const size = parseTireSize(text);
  if (!size.ok) return size;
  const { written, construction, diameterMm, notes } = size.value;
  const factor = ROLLING_FACTOR[construction];
  return success({
    circumferenceM: (factor * diameterMm) / 1000,
    relativeSd: sizeSd(size.value),
    because: `${written}: ${factor} times the outer diameter of ${diameterMm.toFixed(0)} mm (${construction}).`,
    size: size.value,
    notes,
  });
};

const checked = (circumferenceM: number, relativeSd: number, because: string): Result<RollingCircumference> =>
  circumferenceM >= LEAST_M && circumferenceM <= MOST_M
    ? success({ circumferenceM, relativeSd, because, notes: [] })
    : failure({
        code: 'rolling-circumference',
        message: `A rolling circumference of ${Number(circumferenceM.toPrecision(3))} m does not belong to a road vehicle.`,
        remedy: `Give one between ${LEAST_M} and ${MOST_M} m; mark tire and floor, roll one turn, and measure.`,
      });

/**
 * Rolling circumference from whatever is known of the tire.
 *
 * @returns Circumference in metres with its relative standard uncertainty, or the Problem of the size or number.
 */
export const rollingCircumference = (spec: TireSpec): Result<RollingCircumference> => {
  switch (spec.kind) {
    case 'size':
      return fromSize(spec.size);
    case 'rolling-circumference':
      return checked(spec.circumferenceM, SD_MEASURED, 'Rolling circumference as measured.');
    case 'revs-per-mile':
      return checked(METRES_PER_MILE / spec.revsPerMile, SD_FROM_TURNS, `From ${spec.revsPerMile} turns per mile.`);
    case 'revs-per-km':
      return checked(1000 / spec.revsPerKm, SD_FROM_TURNS, `From ${spec.revsPerKm} turns per kilometer.`);
  }
};

/** Turns per mile of a tire that rolls this far in one turn. */
export const revsPerMile = (circumferenceM: number): number => METRES_PER_MILE / circumferenceM;
/** Turns per kilometre of a tire that rolls this far in one turn. */
export const revsPerKm = (circumferenceM: number): number => 1000 / circumferenceM;
