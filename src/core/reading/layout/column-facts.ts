/** What a column's name says and what its numbers look like: the ground on which roles are given. */
import { clockFromText } from '../scan/clock-scan.ts';
import {
  AXIS_WORDS,
  matchesAny,
  NEUTRAL_WORDS,
  OTHER_SHAFTS,
  SENSOR_WORDS,
  SHAKING,
  WHEEL,
  WORD_RULES,
  wordsOf,
  normalised,
} from './header-words.ts';
import type { Quantity } from './header-words.ts';
import { accelerationUnitOf, isAngularUnit, isMagneticUnit, timeUnitOf, turningUnitOf } from './header-units.ts';
import { isMissingWord, numberFromText } from '../scan/number-scan.ts';
import type { AxisName } from '../recording.ts';

/** What follows in a longer name is not read. */
const LONGEST_NAME = 200;

export interface ColumnFacts {
  readonly column: number;
  /** Name from the header, or 'column 3'. */
  readonly name: string;
  readonly named: boolean;
  /** The name has no meaning of its own: 'ch1', 'value'. */
  readonly neutral: boolean;
  readonly quantity: Quantity | null;
  readonly axis: AxisName | null;
  /** Name without its axis letter: columns of one sensor share it. */
  readonly stem: string;
  readonly numbers: readonly number[];
  readonly clocks: readonly number[];
  readonly texts: readonly string[];
}

/** The axis a name ends or begins with, and the name's words without it. */
function axisOf(words: readonly string[]): { axis: AxisName | null; rest: string[] } {
  for (const axis of ['x', 'y', 'z'] as const) {
    const at = words.findIndex((word) => matchesAny([word], AXIS_WORDS[axis]));
    if (at >= 0) return { axis, rest: words.filter((_, i) => i !== at) };
  }
  for (const [i, word] of words.entries()) {
    const glued =
      /^(a|acc|accel|acceleration|accelerometer|accl|g|gf|gforce|gyro|gyr|gyroscope|rot|mag|linacc|lacc|beschl|beschleunigung|aceleracion|raw)([xyz])$/.exec(
        word,
      );
    const leading = /^([xyz])(a|acc|accel|acceleration|axis|achse|axe|gyro|mag|wert|value)$/.exec(word);
    const axis = (glued?.[2] ?? leading?.[1]) as AxisName | undefined;
    if (axis) return { axis, rest: [...words.slice(0, i), (glued?.[1] ?? leading?.[2])!, ...words.slice(i + 1)] };
  }
  return { axis: null, rest: [...words] };
}

/** 'a' and 'g' alone, glued to an axis letter, stand for acceleration and (mostly) for a gyroscope. */
function quantityOf(name: string, words: readonly string[], axis: AxisName | null): Quantity | null {
  if (isAngularUnit(name) && !matchesAny(words, ['wheel*', 'rad', 'roue*', 'rueda*', 'engine*', 'motor*']))
    return 'gyroscope';
  if (isMagneticUnit(name)) return 'magnetometer';
  const everything = [...words, ...normalised(name).split(/[^a-z0-9]+/), normalised(name).replace(/[^a-z]/g, '')];
  // "vitesse moteur (tr/min)", "velocidad de rotación (rpm)": a unit that only turning things have outweighs the words.
  if (turningUnitOf(name)?.unit === 'rev/min' && !matchesAny(everything, [...WHEEL, ...OTHER_SHAFTS]))
    return 'engine-speed';
  for (const rule of WORD_RULES) {
    if (!matchesAny(everything, rule.any)) continue;
    if (rule.all && !rule.all.every((word) => matchesAny(everything, [word]))) continue;
    if (rule.not && matchesAny(everything, rule.not)) continue;
    if (rule.quantity === 'time' && axis !== null) continue;
    // A speed to a German reader, the time to an Italian one: the unit tells.
    if (rule.quantity === 'road-speed' && words.includes('tempo') && timeUnitOf(name) !== null) continue;
    if (rule.quantity === 'magnitude' && axis !== null) continue;
    return rule.quantity;
  }
  const unit = accelerationUnitOf(name);
  if (axis === null && matchesAny(words, SHAKING) && unit !== null && unit !== 'counts') return 'acceleration';
  if (axis !== null) {
    if (words.includes('a')) return 'acceleration';
    // The unit comes first: in 'X (g)' the g is one, in 'gx' it is not.
    if (unit !== null) return 'acceleration';
    if (words.includes('g') && words[0] === 'g') return 'gyroscope';
  }
  return null;
}

/** Facts of every column from its name and the first rows. */
export function columnFacts(
  headers: readonly string[] | null,
  rows: readonly (readonly string[])[],
  columnCount: number,
  decimalMark: '.' | ',',
): ColumnFacts[] {
  return Array.from({ length: columnCount }, (_, column) => {
    const header = headers?.[column]?.trim().slice(0, LONGEST_NAME) ?? '';
    const named = header !== '';
    const words = wordsOf(header);
    const { axis, rest } = axisOf(words);
    const numbers: number[] = [];
    const clocks: number[] = [];
    const texts: string[] = [];
    for (const row of rows) {
      const cell = row[column];
      if (cell === undefined || cell === '') continue;
      const value = numberFromText(cell.replace('−', '-'), decimalMark);
      if (!Number.isNaN(value)) numbers.push(value);
      else {
        const clock = clockFromText(cell);
        if (clock) clocks.push(clock.wholeS + clock.fractionS);
        else if (!isMissingWord(cell)) texts.push(cell);
      }
    }
    const quantity = named ? quantityOf(header, rest, axis) : null;
    const neutral = !named || rest.every((word) => /^\d+$/.test(word) || matchesAny([word], NEUTRAL_WORDS));
    return {
      column,
      name: named ? header : `column ${column + 1}`,
      named,
      neutral,
      quantity,
      axis,
      stem: rest.join(' '),
      numbers,
      clocks,
      texts,
    };
  });
}

/** The sensor a file name, a remark or a cell speaks of; null where it speaks of acceleration or of nothing. */
export function sensorNamed(text: string): Quantity | null {
  const words = wordsOf(text);
  if (isAccelerationName(text)) return null;
  return SENSOR_WORDS.find((sensor) => matchesAny(words, sensor.words))?.quantity ?? null;
}

export const isAccelerationName = (text: string): boolean => {
  const rule = WORD_RULES.find((candidate) => candidate.quantity === 'acceleration')!;
  return matchesAny(wordsOf(text), rule.any);
};
