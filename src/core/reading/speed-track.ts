/** Speeds logged beside the acceleration, reduced to the rows in which the value is fresh. */
import { medianOf } from './layout/gravity-size.ts';
import type { SpeedColumn } from './layout/columns.ts';
import type { Track } from './recording.ts';
import type { SparseColumn } from './rows/row-sink.ts';

/** Faster than any road vehicle, m/s, and any road engine, rev/min: such values are misread. */
const LARGEST = { speed: 150, turning: 30_000 } as const;
/** A column filled in fewer rows than this holds fresh values only. */
const SPARSE = 0.5;
/** A column that changes in more rows than this is not held between updates. */
const FRESH = 0.5;

/**
 * Keeps the rows in which a slow value is fresh. A column with gaps holds fresh values only, and all are kept. A full
 * column repeats each value until the next: the row of each change is kept, and within a longer stretch of the same
 * value a row every typical interval, so that a steady speed stays a known speed.
 */
export function speedTrack(
  column: SpeedColumn,
  sparse: SparseColumn,
  rows: number,
  timeOf: (row: number) => number,
  kind: 'speed' | 'turning',
): Track | null {
  const good: number[] = [];
  for (let i = 0; i < sparse.value.length; i++) {
    const value = sparse.value[i]! * column.unit.factor;
    // Negative values stand for 'no fix' in position loggers.
    if (value >= 0 && value <= LARGEST[kind]) good.push(i);
  }
  if (good.length === 0) return null;
  const kept = good.length < SPARSE * rows ? good : freshRows(good, sparse.value);
  const all = Float64Array.from(kept, (i) => timeOf(Math.min(rows - 1, sparse.row[i]!)));
  // A repeated row that was left out has the time of the row before: one of them is enough.
  const later = (_: unknown, k: number): boolean => k === 0 || all[k]! > all[k - 1]!;
  const timeS = all.filter(later);
  const value = Float64Array.from(kept.filter(later), (i) => sparse.value[i]! * column.unit.factor);
  const intervals = timeS.slice(1).map((time, i) => time - timeS[i]!);
  return {
    timeS,
    value,
    columnName: column.name,
    unit: column.unit.unit,
    unitBecause: `its name says ${column.unit.unit}`,
    step: smallestStep(value),
    intervalS: intervals.length ? medianOf(intervals) : 0,
  };
}

function freshRows(good: readonly number[], values: Float64Array): number[] {
  const changes = good.filter((index, k) => k === 0 || values[index] !== values[good[k - 1]!]);
  if (changes.length > FRESH * good.length) return [...good];
  const runs = changes.slice(1).map((index, k) => index - changes[k]!);
  const interval = Math.max(1, Math.round(runs.length ? medianOf(runs) : good.length));
  const kept: number[] = [];
  let last = -Infinity;
  for (const [k, index] of good.entries()) {
    const changed = k === 0 || values[index] !== values[good[k - 1]!];
    if (changed || index - last >= interval || k === good.length - 1) {
      kept.push(index);
      last = index;
    }
  }
  return kept;
}

function smallestStep(values: Float64Array): number {
  let smallest = Infinity;
  for (let i = 1; i < values.length; i++) {
    const step = Math.abs(values[i]! - values[i - 1]!);
    if (step > 1e-9 && step < smallest) smallest = step;
  }
  return Number.isFinite(smallest) ? Number(smallest.toPrecision(6)) : 0;
}

/** Mean of several wheels, row by row, where all of them have a value. */
export function meanOfWheels(
  columns: readonly SpeedColumn[],
  wheels: readonly SparseColumn[],
): { column: SpeedColumn; sparse: SparseColumn } {
  const first = columns[0]!;
  if (columns.length === 1) return { column: first, sparse: wheels[0]! };
  const at = wheels.map(() => 0);
  const rows: number[] = [];
  const values: number[] = [];
  for (const row of wheels[0]!.row) {
    let sum = 0;
    let count = 0;
    wheels.forEach((wheel, k) => {
      while (at[k]! < wheel.row.length && wheel.row[at[k]!]! < row) at[k]!++;
      if (wheel.row[at[k]!] !== row) return;
      sum += wheel.value[at[k]!]! * (columns[k]!.unit.factor / first.unit.factor);
      count++;
    });
    if (count < wheels.length) continue;
    rows.push(row);
    values.push(sum / count);
  }
  const name = columns.map((column) => column.name).join(', ');
  return { column: { ...first, name }, sparse: { row: Float64Array.from(rows), value: Float64Array.from(values) } };
}
