/** Bench numbers and limits in words, in the reader's units. */
import type { LimitUnit } from '../driveline/limits/limit-entry.ts';
import type { JudgedNumber, Limit } from '../driveline/limits/limit.ts';
import type { Prediction } from '../driveline/judging/judged-measurement.ts';
import type { RingSelection } from '../driveline/rings/ring-selection.ts';
import type { WeightUnit } from '../driveline/measurement.ts';
import { inchFromMm, lbfFromNewton, lbfFtFromNm, ounceFromGram, ozInFromGmm } from '../units.ts';
import type { UnitSystem } from './format.ts';
import { NO_BREAK, significant } from './format.ts';
import { capitalized } from '../words.ts';

/** '0.0020 in (0.050 mm)' or '0.050 mm': what a dial or micrometer shows. */
export const smallLengthText = (mm: number, units: UnitSystem, decimalsMm = 3): string => {
  const metric = `${fixed(mm, decimalsMm)}${NO_BREAK}mm`;
  return units === 'us' ? `${fixed(inchFromMm(mm), decimalsMm + 1)}${NO_BREAK}in (${metric})` : metric;
};

/** The same with a minus sign, but not before a figure that is rounded to nothing. */
export const signedLengthText = (mm: number, units: UnitSystem): string => {
  const text = smallLengthText(Math.abs(mm), units);
  return mm < 0 && /^[0.]*[1-9]/u.test(text) ? `−${text}` : text;
};

/** In so many decimals, never as −0.000. */
const fixed = (value: number, decimals: number): string =>
  (Number(value.toFixed(decimals)) || 0).toFixed(decimals).replace('-', '−');

/** '0.32 oz·in (230 g·mm)' or '230 g·mm'; weights at a radius as '0.9 oz (25 g)' or '25 g'. */
export const weightText = (amount: number, unit: WeightUnit, units: UnitSystem, digits = 3): string => {
  const metric = `${significant(amount, digits)}${NO_BREAK}${unit}`;
  if (units === 'metric') return metric;
  return unit === 'g·mm'
    ? `${significant(ozInFromGmm(amount), 2)}${NO_BREAK}oz·in (${metric})`
    : `${significant(ounceFromGram(amount), 2)}${NO_BREAK}oz (${metric})`;
};

/** '33.2 lbf (148 N)' or '148 N'. */
export const forceText = (newton: number, units: UnitSystem, digits = 3): string => {
  const metric = `${significant(newton, digits)}${NO_BREAK}N`;
  return units === 'us' ? `${significant(lbfFromNewton(newton), digits)}${NO_BREAK}lbf (${metric})` : metric;
};

/** '9.66 lb·ft (13.1 N·m)' or '13.1 N·m'. */
export const torqueText = (nm: number, units: UnitSystem, digits = 3): string => {
  const metric = `${significant(nm, digits)}${NO_BREAK}N·m`;
  return units === 'us' ? `${significant(lbfFtFromNm(nm), digits)}${NO_BREAK}lb·ft (${metric})` : metric;
};

/** '6.7 lbf (30 N)', '150 rad/s²': what a measurement foretells, to the two digits it is worth. */
export const predictedText = ({ value, unit }: Prediction, units: UnitSystem): string => {
  if (unit === 'N') return forceText(value, units, 2);
  return unit === 'N·m' ? torqueText(value, units, 2) : `${significant(value, 2)}${NO_BREAK}${unit}`;
};

/** Rings that would center each axis: 'axis 1: two equal rings of 1.600 mm to 1.620 mm'. */
export const neededRingsText = ({ neededMm }: Pick<RingSelection, 'neededMm'>, units: UnitSystem): string => {
  const span = ([least, most]: readonly [number, number]): string =>
    `${smallLengthText(Math.max(least, 0), units)} to ${smallLengthText(most, units)}`;
  return neededMm
    .map(({ ring1Mm, ring2Mm }, axis) =>
      Math.abs(ring1Mm[0] - ring2Mm[0]) < 5e-4
        ? `axis ${axis + 1}: two equal rings of ${span(ring1Mm)}`
        : `axis ${axis + 1}: ${span(ring1Mm)} at ring 1 and ${span(ring2Mm)} at ring 2`,
    )
    .join('; ');
};

/** What is said instead of a weight where the runs are too poor for one. */
export const NO_CORRECTION =
  'No correction can be worked out from these runs. Repeat them at one steady speed, with a heavier trial weight where it changed the vibration little.';

/** '231°', '3.53°'. */
export const angleText = (angleDeg: number, decimals = 0): string =>
  // Rounding may turn 359.9 into 360, and −0.001 into −0.
  `${(Number(angleDeg.toFixed(decimals)) % 360 || 0).toFixed(decimals)}°`;

/** A figure in the unit of a limit. */
const figureText = (value: number, unit: LimitUnit, units: UnitSystem): string => {
  switch (unit) {
    case '°':
      return `${value.toFixed(2)}°`;
    case 'rad/s²':
      return `${value.toFixed(value < 10 ? 1 : 0)}${NO_BREAK}rad/s²`;
    case 'mm':
      return smallLengthText(value, units, value >= 2 ? 1 : 3);
    case 'g':
      return weightText(value, 'g', units);
    case 'mm/s':
      return `G${NO_BREAK}${significant(value, 2)}`;
    case 'share':
      return `${(value * 100).toFixed(0)}${NO_BREAK}%`;
  }
};

/** '0.002 in (0.05 mm)', '1°': the limit's figure, as the trade says it where it has its own words. */
export const limitFigureText = (limit: Limit, units: UnitSystem): string => {
  const { value, unit, inchText } = limit;
  if (unit === '°') return `${+value.toFixed(2)}°`;
  if (unit !== 'mm') return figureText(value, unit, units);
  const metric = `${+value.toFixed(3)}${NO_BREAK}mm`;
  return units === 'metric' ? metric : `${inchText ?? `${fixed(inchFromMm(value), 4)}${NO_BREAK}in`} (${metric})`;
};

/**
 * 'End play, first axis: 0.0031 in (0.080 mm), OUTSIDE the limit of 0.002 in (0.05 mm) [common practice, no source]'.
 * @param loud false for numbers that do not decide: in small letters, and the limit is called what is preferred
 */
export const judgedText = (number: JudgedNumber, units: UnitSystem, loud = true): string => {
  const { title, limit, inside } = number;
  const head = capitalized(title);
  const atMost = limit.sense === 'at-most';
  const [measured, figure] = [measuredText(number, units), limitFigureText(limit, units)];
  // Where rounding hides on which side of the limit it lies, the word tells.
  const just = !inside && firstNumber(measured) === firstNumber(figure) ? 'just ' : '';
  const beyond = atMost ? (loud ? 'outside' : 'above') : 'below';
  const stands = inside ? (atMost ? (loud ? 'inside' : 'within') : 'above') : loud ? beyond.toUpperCase() : beyond;
  const bound = atMost ? (loud ? 'limit of' : 'preferred') : 'least of';
  return `${head}: ${measured}, ${just}${stands} the ${bound} ${figure} [${limit.source}].`;
};

/** The figure that is read first: 0.002 of '0.0020 in (0.051 mm)'. */
const firstNumber = (text: string): number => Number(/[\d.]+/u.exec(text)?.[0]);

/** Where the limit has its own inch figure, the measured one is rounded so that both tell the same side of it. */
export const measuredText = (
  { measured, limit, inside }: Pick<JudgedNumber, 'measured' | 'limit' | 'inside'>,
  units: UnitSystem,
): string => {
  if (units === 'metric' || limit.inchText === undefined) return figureText(measured, limit.unit, units);
  // What was typed in inches comes back from millimeters with noise in its last digits: 0.0060 is not 0.0061.
  const tenths = Number((inchFromMm(measured) * 1e4).toFixed(6));
  // What a reading error lets pass is rounded as it is: it lies on the other side.
  const passed = inside && measured > limit.value;
  const rounded = Math.round(tenths) / 1e4;
  const within =
    limit.sense === 'at-most' ? rounded <= firstNumber(limit.inchText) : rounded >= firstNumber(limit.inchText);
  const ownSide = inside === (limit.sense === 'at-most') ? Math.floor(tenths) : Math.ceil(tenths);
  const inch = passed || within === inside ? rounded : ownSide / 1e4;
  return `${fixed(inch, 4)}${NO_BREAK}in (${fixed(measured, 3)}${NO_BREAK}mm)`;
};
