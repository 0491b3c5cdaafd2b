/**
 * Numbers with units as people type them: "62 mph", "3,73", "2.36m", "92 7/8 in", "1,850 rpm".
 *
 * A comma may be a decimal sign or part thousands, and so may a dot. Where the digits leave it open, the reading that
 * is possible for the quantity wins; where both are possible a comma is refused with the two ways to write it.
 */
import { failure, success } from '../note.ts';
import type { Result } from '../note.ts';
import { readingsOfNumber } from './number-text.ts';
import type { NumberReading } from './number-text.ts';
import * as kinds from './quantity-kinds.ts';
import type { QuantityKind } from './quantity-kinds.ts';

export interface QuantityOptions {
  /** Narrower limits than the kind's own, in the core's unit. */
  readonly range?: readonly [number, number];
  /** What the number is, for the sentence: 'rolling circumference'. */
  readonly name?: string;
  /** How to write it, where the kind's own example is of another sort. */
  readonly example?: string;
}

/** 'a speed', 'an axle ratio'. */
const one = (name: string): string => `${/^[aeiou]/iu.test(name) ? 'an' : 'a'} ${name}`;

/** '62/63 mph' is no fraction of a mile per hour: those of rulers are under one, in halves to 128ths. */
const isTwoNumbers = (text: string): boolean => {
  const [, over = '', under = ''] = /^\s*[+\-−]?\s*(\d+)\s*[/⁄]\s*(\d+)/u.exec(text) ?? [];
  return under !== '' && !(Number(over) < Number(under) && [2, 4, 8, 16, 32, 64, 128].includes(Number(under)));
};

/** ' in', but '°' stands close. */
const withUnit = (unit: string): string => (unit === '°' ? unit : ` ${unit}`);

const cleanUnit = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[\s.]+/gu, '')
    .replaceAll('μ', 'µ');

/**
 * Reads one quantity.
 *
 * @param text What was typed.
 * @param kind Which quantity; gives the units, the limits and the example.
 * @param defaultUnit Unit meant when none is typed; without it, a number without a unit is refused.
 * @returns The value in the core's unit for this kind, or a Problem that quotes the text and shows an example.
 */
export const parseQuantity = (
  text: string,
  kind: QuantityKind,
  defaultUnit?: string,
  options: QuantityOptions = {},
): Result<number> => {
  const name = options.name ?? kind.name;
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  const refuse = (code: string, message: string, remedy: string) => failure({ code, message, remedy });
  const example = `Write it like ${options.example ?? kind.example}.`;

  const { readings, rest } = readingsOfNumber(text);
  if (readings.length === 0) return refuse('not-a-number', `"${shown}" is not ${one(name)}.`, example);

  if (!Object.hasOwn(kind.units, '') && isTwoNumbers(text)) {
    return refuse('two-numbers', `"${shown}" holds two numbers where one is wanted.`, example);
  }
  const typedUnit = cleanUnit(rest);
  if (typedUnit === '' && defaultUnit === undefined && !Object.hasOwn(kind.units, '')) {
    return refuse('no-unit', `"${shown}" has no unit, so the ${name} is not known.`, example);
  }
  const unitName = typedUnit === '' && defaultUnit !== undefined ? cleanUnit(defaultUnit) : typedUnit;
  const convert = Object.hasOwn(kind.units, unitName) ? kind.units[unitName] : undefined;
  if (convert === undefined) {
    const why = Object.hasOwn(kind.units, '')
      ? 'does not belong here: this number has no unit'
      : `is not a unit of ${kind.name}`;
    return refuse('unknown-unit', `"${rest.trim()}" ${why}.`, example);
  }

  const within = (limits: readonly [number, number]) => (reading: NumberReading) =>
    convert(reading.value) >= limits[0] && convert(reading.value) <= limits[1];
  const possible = readings.filter(within(options.range ?? kind.range));
  const usual = possible.filter(within(kind.usual ?? kind.range));
  const [first, second] = usual.length === 1 ? usual : possible;
  if (first === undefined) {
    const asRead = `"${shown}${typedUnit === '' && unitName !== '' ? withUnit(defaultUnit ?? '') : ''}"`;
    const limits = options.range === undefined ? kind.between : undefined;
    return refuse(
      'out-of-range',
      `${asRead} is outside what is possible for ${one(name)}${limits === undefined ? '' : `, ${limits}`}.`,
      limits === undefined ? example : 'Check the number and its unit.',
    );
  }
  if (second !== undefined && !first.plain) {
    const ways = `${first.value} or ${second.value}`;
    return refuse('two-readings', `"${shown}" can be read in two ways: ${ways}.`, `Write ${ways} without the comma.`);
  }
  return success(convert(first.value));
};

type Parser = (text: string, defaultUnit?: string, options?: QuantityOptions) => Result<number>;
const parser =
  (kind: QuantityKind): Parser =>
  (text, defaultUnit, options) =>
    parseQuantity(text, kind, defaultUnit, options);

export const parseSpeedMps = parser(kinds.SPEED);
export const parseLengthM = parser(kinds.LENGTH_M);
export const parseLengthMm = parser(kinds.LENGTH_MM);
export const parseRpm = parser(kinds.TURNING_SPEED_RPM);
export const parseFrequencyHz = parser(kinds.FREQUENCY_HZ);
export const parseMassKg = parser(kinds.MASS_KG);
export const parseAngleDeg = parser(kinds.ANGLE_DEG);
export const parseTorqueNm = parser(kinds.TORQUE_NM);
export const parseUnbalanceGmm = parser(kinds.UNBALANCE_GMM);
export const parseAccelerationMps2 = parser(kinds.ACCELERATION_MPS2);
/** A balance quality grade: 'G 16', '16', '16 mm/s'. */
export const parseGradeMmps: Parser = (text, defaultUnit = 'mm/s', options) =>
  parseQuantity(withoutGradeSign(text), kinds.GRADE_MMPS, defaultUnit, options);
/** '16' of 'G 16': the letter is the name of the quantity, no unit. */
export const withoutGradeSign = (text: string): string => text.replace(/^\s*G\s*(?=[\d.,])/iu, '');
/** '140 s', '2.5 min', '2:20'. */
export const parseTimeS: Parser = (text, defaultUnit, options) => {
  const [, minutes, seconds] = /^\s*(\d{1,5}):([0-5]\d)\s*$/u.exec(text) ?? [];
  const plain = minutes === undefined ? text : `${60 * Number(minutes) + Number(seconds)} s`;
  return parseQuantity(plain, kinds.TIME_S, defaultUnit, options);
};
/** A plain number: "3.73", "3,73", "3.73:1", or of teeth "41/11", "41:11". */
export const parseRatio = (text: string, options?: QuantityOptions): Result<number> =>
  parseQuantity(text.replace(/^\s*(\d+)\s*:\s*(\d+)\s*$/u, '$1/$2'), kinds.RATIO, undefined, options);
