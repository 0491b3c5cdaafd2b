/** The vehicle's text fields. */
import type { Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import type { Job } from '../../core/job/job.ts';
import { parseLengthM, parseRatio } from '../../core/quantity/quantity.ts';
import { tireText } from '../../core/report/vehicle-rows.ts';
import { parseTireSize } from '../../core/vehicle/tire-size.ts';
import type { Accessory, Layout, TireSpec, Vehicle } from '../../core/vehicle/vehicle.ts';
import { texts } from '../texts.ts';
import type { FieldSpec } from './document.ts';
import { without } from './document.ts';

const { fields: words, quantities } = texts.form;
type Words = { readonly label: string; readonly example: string; readonly hint: string };
type NumberKey =
  | 'axleRatio'
  | 'frontAxleRatio'
  | 'finalDrive'
  | 'transferRatio'
  | 'cylinders'
  | 'pinionTeeth'
  | 'ringTeeth'
  | 'polePairs';

/** Limits wide enough for any road vehicle; a figure outside them is another figure in the wrong field. */
const RANGES: Readonly<Record<NumberKey, readonly [number, number]>> = {
  axleRatio: [1.5, 12],
  frontAxleRatio: [1.5, 12],
  finalDrive: [1.5, 20],
  transferRatio: [1, 6],
  cylinders: [1, 16],
  pinionTeeth: [5, 40],
  ringTeeth: [15, 120],
  polePairs: [1, 12],
};
const WHOLE: ReadonlySet<NumberKey> = new Set(['cylinders', 'pinionTeeth', 'ringTeeth', 'polePairs']);

const withVehicle = (job: Job, vehicle: Vehicle): Job => ({ ...job, vehicle });

function numberField(key: NumberKey): FieldSpec {
  const { label, example, hint }: Words = words[key];
  return {
    id: `vehicle.${key}`,
    label,
    example,
    hint,
    read: (job) => ratioText(job.vehicle[key]),
    write: (job, text) => {
      if (text.trim() === '') return success(withVehicle(job, without(job.vehicle, key) as Vehicle));
      const number = key === 'cylinders' ? withoutEngineWords(text) : text;
      const parsed = parseRatio(number, { range: RANGES[key], name: quantities[key], example });
      if (!parsed.ok) return parsed;
      if (WHOLE.has(key) && !Number.isInteger(parsed.value)) return notWhole(text, example);
      return success(withVehicle(job, { ...job.vehicle, [key]: parsed.value }));
    },
  };
}

/** As it was typed; of a quotient of tooth counts no more than is read. */
const ratioText = (ratio: number | undefined): string =>
  ratio === undefined ? '' : `${+ratio.toFixed(4) === ratio ? ratio : +ratio.toFixed(3)}`;

/** '8' of 'V8', 'inline 6', '8 cyl', '8 cylinders'. */
const withoutEngineWords = (text: string): string =>
  text
    .trim()
    .replace(/^(?:[vilrhw]|vr|inline|straight|flat)[\s-]?(?=\d)/iu, '')
    .replace(/(?<=\d)[\s-]?cyl(?:\.|inders?)?$/iu, '');

const notWhole = (text: string, example: string): Result<never> =>
  failure({
    code: 'not-whole',
    message: texts.form.problems.whole(text),
    remedy: texts.form.problems.numberRemedy(example),
  });

const PER_MILE = /^([\d.,]+)\s*(?:rev\w*|turns)?\s*(?:\/|per)\s*mi(?:le)?s?$/iu;
const PER_KM = /^([\d.,]+)\s*(?:rev\w*|turns)?\s*(?:\/|per)\s*km$/iu;
/** A length with its unit; anything else is taken for a size. */
const LENGTH = /^[\d.,]+\s*(?:mm|cm|m|in|inch|inches|ft|")$/iu;

/** Reads what people type for tires: a size, a circumference with its unit, or revolutions per mile or km. */
export function parseTire(text: string): Result<TireSpec> {
  const trimmed = text.trim();
  const perMile = PER_MILE.exec(trimmed)?.[1];
  if (perMile !== undefined) {
    const revs = parseRatio(perMile, { range: [300, 1600], name: quantities.turnsPerMile, example: '680' });
    return revs.ok ? success({ kind: 'revs-per-mile', revsPerMile: revs.value }) : revs;
  }
  const perKm = PER_KM.exec(trimmed)?.[1];
  if (perKm !== undefined) {
    const revs = parseRatio(perKm, { range: [200, 1000], name: quantities.turnsPerKm, example: '423' });
    return revs.ok ? success({ kind: 'revs-per-km', revsPerKm: revs.value }) : revs;
  }
  if (LENGTH.test(trimmed)) {
    const length = parseLengthM(trimmed, undefined, { range: [1, 5], name: quantities.circumference });
    return length.ok ? success({ kind: 'rolling-circumference', circumferenceM: length.value }) : length;
  }
  const size = parseTireSize(trimmed);
  return size.ok ? success({ kind: 'size', size: size.value.written }) : size;
}

const tireField: FieldSpec = {
  id: 'vehicle.tire',
  ...words.tire,
  isNeeded: true,
  read: (job, units) => tireText(job.vehicle.tire, units),
  write: (job, text) => {
    if (text.trim() === '') return success(withVehicle(job, without(job.vehicle, 'tire')));
    const tire = parseTire(text);
    return tire.ok ? success(withVehicle(job, { ...job.vehicle, tire: tire.value })) : tire;
  },
};

/** Ratios separated by blanks, semicolons, or commas where a comma is followed by a blank. */
const gearRatiosField: FieldSpec = {
  id: 'vehicle.gearRatios',
  ...words.gearRatios,
  read: (job) => job.vehicle.gearRatios?.join('  ') ?? '',
  write: (job, text) => {
    const pieces = text.split(/[;/\s]+|,\s+/u).filter((piece) => piece !== '');
    if (pieces.length === 0) return success(withVehicle(job, without(job.vehicle, 'gearRatios')));
    const gearRatios: number[] = [];
    for (const piece of pieces) {
      const ratio = parseRatio(piece, {
        range: [0.3, 25],
        name: quantities.gearRatio,
        example: words.gearRatio.example,
      });
      if (!ratio.ok) return ratio;
      gearRatios.push(ratio.value);
    }
    return success(withVehicle(job, { ...job.vehicle, gearRatios }));
  },
};

const accessoriesField: FieldSpec = {
  id: 'vehicle.accessories',
  ...words.accessories,
  read: (job) => job.vehicle.accessories?.map(({ name, ratio }) => `${name} ${ratio}`).join(', ') ?? '',
  write: (job, text) => {
    const pieces = text.split(/;|,\s+|\n/u).filter((piece) => piece.trim() !== '');
    if (pieces.length === 0) return success(withVehicle(job, without(job.vehicle, 'accessories')));
    const accessories: Accessory[] = [];
    for (const piece of pieces) {
      const [, name, ratioText] = /^\s*(.*?\p{L}.*?)\s+([\d.,:]+)\s*$/u.exec(piece) ?? [];
      if (name === undefined || ratioText === undefined) return notAccessory(piece);
      const ratio = parseRatio(ratioText, { range: [0.05, 20], name: quantities.pulleyRatio, example: '2.8' });
      if (!ratio.ok) return ratio;
      accessories.push({ name, ratio: ratio.value });
    }
    return success(withVehicle(job, { ...job.vehicle, accessories }));
  },
};

const notAccessory = (piece: string): Result<never> =>
  failure({
    code: 'not-an-accessory',
    message: texts.form.problems.accessory(piece.trim()),
    remedy: texts.form.problems.numberRemedy(words.accessories.example),
  });

const textField = (key: 'description', label: string, example: string): FieldSpec => ({
  id: `vehicle.${key}`,
  label,
  example,
  hint: '',
  read: (job) => job.vehicle[key] ?? '',
  write: (job, text) =>
    success(withVehicle(job, text === '' ? without(job.vehicle, key) : { ...job.vehicle, [key]: text })),
});

export const descriptionField = textField('description', texts.form.description, texts.form.descriptionExample);

/** Fields asked at once, by layout: those without which the answer would change. */
export function mainFields(layout: Layout): readonly FieldSpec[] {
  if (layout === 'front-drive') return [tireField, numberField('finalDrive'), numberField('cylinders')];
  if (layout === 'electric') return [tireField, numberField('finalDrive')];
  return [tireField, { ...numberField('axleRatio'), isNeeded: true }, numberField('cylinders')];
}

/** Fields that only sometimes matter. */
export function moreFields(layout: Layout): readonly FieldSpec[] {
  const mesh = [numberField('pinionTeeth'), numberField('ringTeeth')];
  if (layout === 'electric') return [numberField('polePairs'), ...mesh];
  if (layout === 'front-drive') return [gearRatiosField, accessoriesField];
  const shared = [gearRatiosField, accessoriesField, ...mesh];
  return layout === 'four-wheel-drive'
    ? [numberField('frontAxleRatio'), numberField('transferRatio'), ...shared]
    : shared;
}

/** What the vehicle has or has not; absent where it is not known. */
export type YesNoKey = 'converter' | 'tripodJoints';
export type YesNo = '' | 'yes' | 'no';

/** Questions of yes or no, by layout: an electric car has no torque converter. */
export const yesNoKeys = (layout: Layout): readonly YesNoKey[] =>
  layout === 'electric' ? ['tripodJoints'] : ['converter', 'tripodJoints'];

export const yesNoOf = (vehicle: Vehicle, key: YesNoKey): YesNo => {
  const has = vehicle[key];
  return has === undefined ? '' : has ? 'yes' : 'no';
};

/** The vehicle with an answer to one question; 'not known' takes it out. */
export const withYesNo = (vehicle: Vehicle, key: YesNoKey, answer: YesNo): Vehicle =>
  answer === '' ? (without(vehicle, key) as Vehicle) : { ...vehicle, [key]: answer === 'yes' };
