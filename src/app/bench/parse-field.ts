/** The text of one field → numbers in the core's units. Any unit may be typed; a bare number is in the reader's. */
import type { WeightUnit } from '../../core/driveline/measurement.ts';
import type { Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import {
  DRIVESHAFT_RPM,
  LENGTHS,
  LEVEL_MPS2,
  SHAFT_MASS_KG,
  TRIAL_WEIGHT_G,
  TRIAL_WEIGHT_GMM,
} from '../../core/quantity/plausible.ts';
import { ANGLE_DEG, LENGTH_MM, MASS_G, UNBALANCE_GMM } from '../../core/quantity/quantity-kinds.ts';
import type { Counted } from '../../core/quantity/quantity-list.ts';
import { parseCountedList } from '../../core/quantity/quantity-list.ts';
import * as parse from '../../core/quantity/quantity.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { texts } from '../texts.ts';
import type { FieldKind, MeasureField } from './measure-form.ts';

/** What stands around a field and decides how its text is read. */
export interface FieldSetting {
  readonly units: UnitSystem;
  /** What the form's weights are counted in: weights as such, or weights times their radius. */
  readonly weightUnit: WeightUnit;
}

/** The unit that a bare number is in, for the label of the field. */
export function unitOf(kind: FieldKind, { units, weightUnit }: FieldSetting): string {
  switch (kind) {
    case 'length':
    case 'lengths':
      return units === 'us' ? 'in' : 'mm';
    case 'angle':
    case 'angles':
    case 'phase':
      return '°';
    case 'grams':
      return bareWeightUnit('g', units);
    case 'weight':
    case 'weights':
      return bareWeightUnit(weightUnit, units);
    case 'mass':
      return units === 'us' ? 'lb' : 'kg';
    case 'torque':
      return units === 'us' ? 'lb·ft' : 'N·m';
    case 'turning-speed':
      return 'rpm';
    case 'road-speed':
      return units === 'us' ? 'mph' : 'km/h';
    case 'grade':
      return 'mm/s';
    case 'acceleration':
      return 'm/s²';
    case 'level':
    case 'count':
      return '';
  }
}

/** What a bare weight is in: ounces, or ounces times inches, where the reader uses them. */
export function bareWeightUnit(unit: WeightUnit, units: UnitSystem): string {
  if (units === 'metric') return unit;
  return unit === 'g' ? 'oz' : 'oz·in';
}

/** What a field holds. */
export interface FieldValue {
  readonly number?: number;
  readonly uncertainty?: number;
  readonly list?: readonly Counted[];
}

/** What a message calls plain numbers, and what is usual for the bench. Other kinds have names of their own. */
const OPTIONS: Partial<Record<FieldKind, parse.QuantityOptions>> = {
  level: { name: 'level', example: '0.40' },
  count: { name: 'number', example: '8' },
  length: { example: '1.55 mm or 0.061 in' },
};

export function parseField(field: MeasureField, text: string, setting: FieldSetting): Result<FieldValue> {
  const { kind } = field;
  const options = OPTIONS[kind] ?? {};
  const unit = unitOf(kind, setting);
  const one = (parsed: Result<number>): Result<FieldValue> => (parsed.ok ? success({ number: parsed.value }) : parsed);
  switch (kind) {
    case 'length':
      return one(parse.parseQuantity(text, field.of ? LENGTHS[field.of] : LENGTH_MM, unit, field.of ? {} : options));
    case 'angle':
      return one(parse.parseAngleDeg(text, unit, options));
    case 'phase':
      return withUncertainty(text, (part) => parse.parseAngleDeg(part, unit, options));
    case 'level':
      return withUncertainty(text, (part) => parse.parseRatio(part, { ...options, range: [0, 1e6] }));
    case 'acceleration':
      return one(parse.parseQuantity(text, LEVEL_MPS2, unit));
    case 'grams':
      return one(parse.parseQuantity(text, TRIAL_WEIGHT_G, unit));
    case 'weight':
      return one(parseWeight(text, setting));
    case 'mass':
      return one(parse.parseQuantity(text, SHAFT_MASS_KG, unit));
    case 'torque':
      return one(parse.parseTorqueNm(text, unit, options));
    case 'turning-speed':
      return one(parse.parseQuantity(text, DRIVESHAFT_RPM, unit));
    case 'road-speed':
      return one(parse.parseSpeedMps(text, unit, options));
    case 'grade':
      return one(parse.parseGradeMmps(text, unit, options));
    case 'count':
      return one(parse.parseRatio(text, { ...options, range: [1, 100] }));
    case 'lengths':
      return listed(parseCountedList(text, field.of ? LENGTHS[field.of] : LENGTH_MM, unit));
    case 'angles':
      return listed(parseCountedList(text, ANGLE_DEG, unit));
    case 'weights':
      return listed(parseCountedList(text, setting.weightUnit === 'g' ? MASS_G : UNBALANCE_GMM, unit));
  }
}

const listed = (parsed: Result<readonly Counted[]>): Result<FieldValue> =>
  parsed.ok ? success({ list: parsed.value }) : parsed;

/** '0.40', '0.40 ± 0.01', '0.40 +- 0.01'. */
function withUncertainty(text: string, parse: (part: string) => Result<number>): Result<FieldValue> {
  const [value = '', sd] = text.replace(/\+\/?-/u, '±').split('±');
  const number = parse(value);
  if (!number.ok || sd === undefined) return number.ok ? success({ number: number.value }) : number;
  const uncertainty = parse(sd);
  return uncertainty.ok ? success({ number: number.value, uncertainty: Math.abs(uncertainty.value) }) : uncertainty;
}

/** A trial weight of the sort its form counts in, in its metric unit: a bare number, or typed with a unit. */
function parseWeight(text: string, setting: FieldSetting): Result<number> {
  const { weightUnit } = setting;
  const unit = bareWeightUnit(weightUnit, setting.units);
  const parsed = parse.parseQuantity(text, weightUnit === 'g' ? TRIAL_WEIGHT_G : TRIAL_WEIGHT_GMM, unit);
  if (parsed.ok && !(parsed.value > 0)) {
    const { weightNotPositive: message, weightRemedy } = texts.bench.problem;
    return failure({ code: 'weight-zero', message, remedy: weightRemedy[weightUnit] });
  }
  return parsed;
}
