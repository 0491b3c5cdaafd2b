/** Repairs that leave out whole rows; the list of all repairs stands in repair.ts. */
import type { Note } from '../../note.ts';

export interface KeptRows {
  /** Rows left, moved up to the beginning of the columns. */
  readonly rows: number;
  /** Rows left out, rising, as they were numbered before. */
  readonly dropped: readonly number[];
}

/** Moves the rows that are kept to the beginning of the columns. */
function compact(
  columns: readonly Float64Array[],
  rows: number,
  keep: (row: number, lastKept: number) => boolean,
): KeptRows {
  const dropped: number[] = [];
  let kept = Math.min(1, rows);
  for (let i = 1; i < rows; i++) {
    if (!keep(i, kept - 1)) {
      dropped.push(i);
      continue;
    }
    if (kept !== i) for (const column of columns) column[kept] = column[i]!;
    kept++;
  }
  return { rows: kept, dropped };
}

/** Drops rows that repeat the row before in every kept number, stamp included. */
export function dropRepeatedRows(stamps: Float64Array, axes: readonly Float64Array[], notes: Note[]): KeptRows {
  const columns = [stamps, ...axes];
  const kept = compact(columns, stamps.length, (i, last) => columns.some((column) => column[i] !== column[last]));
  const count = kept.dropped.length;
  const text = `${count} ${count === 1 ? 'row repeats' : 'rows repeat'} the row before, time stamp included; left out.`;
  if (count > 0) notes.push({ code: 'rows-repeated', severity: 'warning', text });
  return kept;
}

/** Runs of like rows longer than this are a stuck sensor, not a slow one. */
const LONGEST_HELD = 64;
/** Mean run of like rows from which on, and relative scatter of the runs up to which, values are held; judgment. */
const HELD_MEAN = 1.45;
const HELD_SCATTER = 0.4;

/**
 * A logger that writes faster than the sensor measures repeats each value two, three or more times. The repeats are no
 * samples: they would feign a higher rate and mirror every tone. Only the first row of each run is kept. Held values
 * show by runs of nearly the same length; a coarse sensor at rest repeats itself too, but in runs of any length.
 *
 * @returns null where values are not held
 */
export function dropHeldRows(
  stamps: Float64Array | null,
  axes: readonly Float64Array[],
  notes: Note[],
): KeptRows | null {
  const rows = axes[0]?.length ?? 0;
  const same = (i: number, k: number): boolean => {
    for (const axis of axes) if (axis[i] !== axis[k]) return false;
    return true;
  };
  const lengths = new Float64Array(LONGEST_HELD + 1);
  for (let from = 0; from < rows;) {
    let to = from + 1;
    while (to < rows && same(to, from)) to++;
    if (to - from <= LONGEST_HELD) lengths[to - from]!++;
    from = to;
  }
  const runs = lengths.reduce((sum, count) => sum + count, 0);
  const mean = lengths.reduce((sum, count, length) => sum + count * length, 0) / runs;
  const square = lengths.reduce((sum, count, length) => sum + count * (length - mean) ** 2, 0) / runs;
  if (!(runs >= 16) || mean < HELD_MEAN || Math.sqrt(square) > HELD_SCATTER * mean) return null;
  const kept = compact(stamps ? [stamps, ...axes] : axes, rows, (i, last) => !same(i, last));
  const text = `Each value is repeated ${Number(mean.toPrecision(2))} times: the logger wrote faster than the sensor measured. Only fresh values are kept.`;
  notes.push({ code: 'values-held', severity: 'warning', text });
  return kept;
}
