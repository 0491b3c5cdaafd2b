/** Words of `perrev runout` → readings at each place. */
import type { RunoutMeasurement, RunoutPlace } from '../../core/driveline/measurement.ts';
import { LENGTHS } from '../../core/quantity/plausible.ts';
import { LENGTH_MM } from '../../core/quantity/quantity-kinds.ts';
import type { Arguments } from '../arguments.ts';
import { choiceOf } from '../arguments.ts';
import { UsageError } from '../io.ts';
import type { OptionRow } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import { bareUnit } from './bench-options.ts';
import { listOf } from './number-lists.ts';

const place = (name: string, what: string): OptionRow => ({ name, value: '"0/.05/.1 mm"', help: what });

export const PLACE_ROWS: readonly OptionRow[] = [
  place('tube-front', 'near the front weld: one total reading, or readings at even steps around from a mark'),
  place('tube-middle', 'the same at mid length'),
  place('tube-rear', 'the same near the rear weld'),
  place('flange-radial', 'pilot of the companion flange'),
  place('flange-face', 'face of the companion flange'),
  place('wheel-radial', 'rim, radially'),
  place('wheel-lateral', 'rim, sideways'),
  place('tire-radial', 'tire, radially'),
  place('tire-lateral', 'tire, sideways'),
  { name: 'wheel-material', value: 'steel', help: 'steel or alloy (default steel)' },
];

export const INDEX_ROWS: readonly OptionRow[] = [
  { name: 'bolts', value: '4', help: 'bolts of the companion flange, to foretell turning the shaft on it' },
  { name: 'flange-at', value: 'rear', help: 'end of the shaft that sits on the flange: front or rear (default rear)' },
  { name: 'turned', value: '"0/.05/.1 mm"', help: 'the same end read again with the shaft turned on' },
  { name: 'turned-by', value: '2', help: 'bolt positions it was turned, in the sense of the readings' },
  { name: 'mass', value: '9kg', help: 'mass of the shaft piece, for the unbalance that runout implies' },
];

const PLACES: Readonly<Record<string, RunoutPlace>> = {
  'tube-front': 'tube-front',
  'tube-middle': 'tube-middle',
  'tube-rear': 'tube-rear',
  'flange-radial': 'companion-flange-radial',
  'flange-face': 'companion-flange-face',
  'wheel-radial': 'wheel-radial',
  'wheel-lateral': 'wheel-lateral',
  'tire-radial': 'tire-radial',
  'tire-lateral': 'tire-lateral',
};

/** Readings around the clock of one option, mm; undefined where it was not given. */
export const readingsOf = (given: Arguments, name: string): number[] | undefined => {
  const text = given.text(name);
  return text === undefined ? undefined : listOf(name, text, LENGTHS.dial, bareUnit(given, LENGTH_MM));
};

/** From options; where none are given, those of the job. */
export function runoutMeasurements(given: Arguments, { job }: Bench): RunoutMeasurement[] {
  const material = given.text('wheel-material');
  const wheel =
    material === undefined ? {} : { wheelMaterial: choiceOf('wheel-material', material, ['steel', 'alloy'] as const) };
  const typed = Object.entries(PLACES).flatMap(([name, at]): RunoutMeasurement[] => {
    const values = readingsOf(given, name);
    if (values === undefined) return [];
    const [first = 0, second] = values;
    if (second !== undefined) return [{ kind: 'runout', place: at, readingsMm: values, ...wheel }];
    if (first < 0) throw new UsageError(`--${name}: a total reading is not below zero.`);
    return [{ kind: 'runout', place: at, tirMm: first, ...wheel }];
  });
  if (typed.length > 0) return typed;
  const held = job.measurements.filter((one) => one.kind === 'runout');
  if (held.length > 0) return held;
  throw new UsageError(
    'give a reading as in --tube-middle 0.5mm, or eight around the clock as in --tube-rear "0/.1/.2/.3/.3/.2/.1/0 mm".',
  );
}
