/** The unit of the acceleration columns, with the reason: from their names, from the size of gravity, or refused. */
import type { Note, Problem } from '../note.ts';
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import type { AxisColumn } from './layout/acceleration-columns.ts';
import { measuredUnit, rounded } from './layout/measured-unit.ts';
import type { SaidUnit } from './layout/measured-unit.ts';
import { medianOf, unitByGravity, USUAL_UNITS } from './layout/gravity-size.ts';
import type { Place } from './layout/columns.ts';
import type { GivenUnit } from './given.ts';
import { readingProblems } from './problems.ts';
import type { Channel } from './recording.ts';

export interface UnitDecision {
  readonly channels: readonly Channel[];
  readonly notes: readonly Note[];
}

/** Gravity this close to another unit's, and far from the named one's, overrules the name; judgment. */
const CLEAR = 0.06;
/** Scatter over steady part beyond which the steady part is no measure of gravity; judgment. */
const LARGEST_SCATTER = 3;
/** A column thinned out: enough for the size of gravity, at no cost on long files. */
function thinned(axis: Float64Array): Float64Array {
  const stride = Math.max(1, Math.floor(axis.length / 8_000));
  return Float64Array.from({ length: Math.floor((axis.length - 1) / stride) + 1 }, (_, i) => axis[i * stride]!);
}

/** Scatter that a few shocks do not change: 1.4826 times the median distance from the median. */
function scatterOf(axis: Float64Array): number {
  const values = thinned(axis);
  const middle = medianOf(values);
  return 1.4826 * medianOf(values.map((value) => Math.abs(value - middle)));
}

/**
 * @param axes the columns' numbers as the file has them
 * @param given unit given by hand: nothing overrules it
 * @param remarked unit stated above the table, for columns whose names state none
 */
export function decideUnits(
  columns: readonly AxisColumn[],
  axes: readonly Float64Array[],
  place: Place,
  given: SaidUnit | null,
  remarked: SaidUnit | null,
): UnitDecision | Problem {
  const notes: Note[] = [];
  const said = given ?? (columns.some(({ unit }) => unit === null) ? remarked : null);
  if (given) notes.push({ code: 'unit-by-hand', severity: 'info', text: `Unit of acceleration: ${given.because}.` });
  if (said) return { channels: columns.map((column) => channelOf(column, said)), notes };
  const size = Math.hypot(...axes.map((axis) => medianOf(thinned(axis))));
  const named = columns.every(({ unit }) => unit !== null && unit !== 'counts');
  if (named) return { channels: columns.map((column, i) => byName(column, axes, i, size, notes)), notes };
  const scatter = Math.hypot(...axes.map(scatterOf));
  const counts = columns.some(({ unit }) => unit === 'counts');
  const measured = scatter > LARGEST_SCATTER * size ? null : measuredUnit(size, axes.every(isWhole), counts);
  if (!measured) return readingProblems.unitUnclear(place.file, place.line, columns[0]!.name, size);
  const silent = counts ? 'The header says raw counts' : 'The header names no unit of acceleration';
  notes.push({ code: 'unit-by-gravity', severity: 'info', text: `${silent}; ${measured.because}.` });
  if (measured.rival !== null)
    notes.push({
      code: 'unit-ambiguous',
      severity: 'info',
      text: `${measured.rival}. Write the unit into the header, such as (mg), where levels have to be exact.`,
    });
  return { channels: columns.map((column) => channelOf(column, measured)), notes };
}

export const unitByHand = (unit: GivenUnit): SaidUnit => ({
  ...USUAL_UNITS.find((usual) => usual.unit === unit)!,
  because: `${unit} was given by hand`,
});

const isWhole = (axis: Float64Array): boolean =>
  axis.subarray(0, 5000).every((value) => Number.isInteger(value) || Number.isNaN(value));

const channelOf = ({ axis, name }: AxisColumn, { unit, mps2PerUnit, because }: SaidUnit): Channel => ({
  axis,
  columnName: name,
  unit,
  unitBecause: because,
  mps2PerUnit,
});

/** The named unit, unless gravity is plainly there in another one. */
function byName(column: AxisColumn, axes: readonly Float64Array[], i: number, size: number, notes: Note[]): Channel {
  const { axis, name } = column;
  const unit = column.unit as Exclude<AxisColumn['unit'], 'counts' | null>;
  const seen = axes.length === 3 ? unitByGravity(size, CLEAR) : null;
  const ratio = (size * unit.mps2PerUnit) / STANDARD_GRAVITY_MPS2;
  if (seen && seen.unit !== unit.unit && (ratio > 5 || (ratio < 0.2 && ratio > 0.0005))) {
    const because = `its name says ${unit.unit}, but the steady part is ${rounded(size)}, which is gravity in ${seen.unit}`;
    if (i === 0)
      notes.push({ code: 'unit-overruled', severity: 'warning', text: `"${name}": ${because}; read as ${seen.unit}.` });
    return { axis, columnName: name, unit: seen.unit, unitBecause: because, mps2PerUnit: seen.mps2PerUnit };
  }
  return {
    axis,
    columnName: name,
    unit: unit.unit,
    unitBecause: `its name says ${unit.unit}`,
    mps2PerUnit: unit.mps2PerUnit,
  };
}
