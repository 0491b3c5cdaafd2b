/** The text of one field → numbers in the core's units. Any unit may be typed; a bare number is in the reader's. */
import type { WeightUnit } from '../../core/driveline/measurement.ts';
import type { Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import { ANGLE_DEG, LENGTH_MM, RATIO } from '../../core/quantity/quantity-kinds.ts';
import type { Counted } from '../../core/quantity/quantity-list.ts';
import { parseCountedList } from '../../core/quantity/quantity-list.ts';
import * as parse from '../../core/quantity/quantity.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { texts } from '../texts.ts';
import type { FieldKind, MeasureField } from './measure-form.ts';

/** The unit that a bare number is in, for the label of the field. */
export function unitOf(kind: FieldKind, units: UnitSystem): string {
  switch (kind) {
    case 'length':
    case 'lengths':
      return units === 'us' ? 'in' : 'mm';
    case 'angle':
    case 'angles':
    case 'phase':
      return '°';
    case 'grams':
      return 'g';
    case 'mass':
      return units === 'us' ? 'lb' : 'kg';
    case 'torque':
      return units === 'us' ? 'lb-ft' : 'N·m';
    case 'turning-speed':
      return 'rpm';
    case 'road-speed':
      return units === 'us' ? 'mph' : 'km/h';
    case 'grade':
      return 'mm/s';
    case 'acceleration':
      return 'm/s²';
    case 'weight':
    case 'weights':
    case 'level':
    case 'count':
      return '';
  }
}

/** What a field holds. */
export interface FieldValue {
  readonly number?: number;
  readonly uncertainty?: number;
  readonly list?: readonly Counted[];
}

/** What stands around a field and decides how its text is read. */
export interface FieldSetting {
  readonly units: UnitSystem;
  /** Unit of the form's weights. */
  readonly weightUnit: WeightUnit;
}

/** What a message calls plain numbers, and what is usual for the bench. Other kinds have names of their own. */
const OPTIONS: Partial<Record<FieldKind, parse.QuantityOptions>> = {
  level: { name: 'level', example: '0.40' },
  count: { name: 'number', example: '8' },
  grams: { name: 'weight' },
  weight: { name: 'weight' },
  length: { example: '1.55 mm or 0.061 in' },
  'turning-speed': { example: '3000 rpm' },
};

export function parseField(field: MeasureField, text: string, setting: FieldSetting): Result<FieldValue> {
  const { kind } = field;
  const options = OPTIONS[kind] ?? {};
  const unit = unitOf(kind, setting.units);
  const one = (parsed: Result<number>): Result<FieldValue> => (parsed.ok ? success({ number: parsed.value }) : parsed);
  switch (kind) {
    case 'length':
      return one(parse.parseLengthMm(text, unit, options));
    case 'angle':
      return one(parse.parseAngleDeg(text, unit, options));
    case 'phase':
      return withUncertainty(text, (part) => parse.parseAngleDeg(part, unit, options));
    case 'level':
      return withUncertainty(text, (part) => parse.parseRatio(part, { ...options, range: [0, 1e6] }));
    case 'acceleration':
      return one(parse.parseAccelerationMps2(text, unit, options));
    case 'grams':
      return one(parse.parseMassG(text, unit, options));
    case 'weight':
      return one(parseWeight(text, setting.weightUnit, options));
    case 'mass':
      return one(parse.parseMassKg(text, unit, { ...options, range: [0.01, 1e4] }));
    case 'torque':
      return one(parse.parseTorqueNm(text, unit, options));
    case 'turning-speed':
      return one(parse.parseRpm(text, unit, options));
    case 'road-speed':
      return one(parse.parseSpeedMps(text, unit, options));
    case 'grade':
      return one(parse.parseGradeMmps(text, unit, options));
    case 'count':
      return one(parse.parseRatio(text, { ...options, range: [1, 100] }));
    case 'lengths':
      return listed(parseCountedList(text, LENGTH_MM, unit));
    case 'angles':
      return listed(parseCountedList(text, ANGLE_DEG, unit));
    case 'weights':
      return listed(parseCountedList(text, { ...RATIO, name: 'weight', range: [0, 1e6], example: '10 / 20 / 35' }, ''));
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

/** A trial weight in the unit its form counts in: a plain number, or typed with a unit of the same sort. */
function parseWeight(text: string, unit: WeightUnit, options: parse.QuantityOptions): Result<number> {
  const parsed = unit === 'g' ? parse.parseMassG(text, 'g', options) : parse.parseUnbalanceGmm(text, 'g·mm', options);
  if (parsed.ok && !(parsed.value > 0)) {
    const { weightNotPositive: message, weightRemedy } = texts.bench.problem;
    return failure({ code: 'weight-zero', message, remedy: weightRemedy[unit] });
  }
  return parsed;
}
