/** Repairs of acceleration values; the list of all repairs stands in repair.ts. */
import type { Note } from '../../note.ts';

/** No sensor that survives on a vehicle reads more, m/s² (about 1000 g); judgment. */
const LARGEST_MPS2 = 10_000;
/** A hole of so many rows or fewer is closed by a straight line; a longer one splits the recording. */
const CLOSED_ROWS = 3;
/** All axes unchanged for so long, while they change elsewhere: the sensor or its line has frozen. */
const STUCK_S = 0.25;
const STUCK_ROWS = 25;

/** Rows from…to (exclusive) that are left out. */
export type RowRange = readonly [from: number, to: number];

/** Values that are not numbers, infinite or beyond any sensor: short runs closed, long runs left out. */
export function repairCorruptValues(
  axes: readonly Float64Array[],
  breaks: ReadonlySet<number>,
  notes: Note[],
): RowRange[] {
  const rows = axes[0]?.length ?? 0;
  const bad = badRows(axes);
  const left: RowRange[] = [];
  let closed = 0;
  let dropped = 0;
  let firstRow = -1;
  for (let k = 0; k < bad.length;) {
    const i = bad[k]!;
    if (firstRow < 0) firstRow = i;
    let to = i;
    while (k < bad.length && bad[k] === to) {
      k++;
      to++;
    }
    const inside = i > 0 && to < rows && !hasBreak(breaks, i, to);
    if (inside && to - i <= CLOSED_ROWS) {
      for (const axis of axes) closeLine(axis, i, to);
      closed += to - i;
    } else {
      left.push([i, to]);
      dropped += to - i;
    }
  }
  if (closed > 0)
    notes.push({
      code: 'values-corrupt-closed',
      severity: 'warning',
      text: `${closed} ${closed === 1 ? 'row' : 'rows'} with missing or impossible values (first: row ${firstRow + 1}) replaced by a straight line between the neighbors.`,
    });
  if (dropped > 0)
    notes.push({
      code: 'values-corrupt-left-out',
      severity: 'warning',
      text: `${dropped} ${dropped === 1 ? 'row' : 'rows'} with missing or impossible values left out (first: row ${firstRow + 1}); the recording is split there.`,
    });
  return left;
}

/** Rows with an impossible value on any axis, rising. */
function badRows(axes: readonly Float64Array[]): number[] {
  const rows: number[] = [];
  for (const axis of axes)
    for (let i = 0; i < axis.length; i++) if (!(Math.abs(axis[i]!) <= LARGEST_MPS2)) rows.push(i);
  return axes.length > 1 && rows.length > 0 ? [...new Set(rows)].sort((a, b) => a - b) : rows;
}

const hasBreak = (breaks: ReadonlySet<number>, from: number, to: number): boolean => {
  for (let i = from; i <= to; i++) if (breaks.has(i)) return true;
  return false;
};

/** Only this axis's bad values are replaced; a good value beside a bad one stays. */
function closeLine(axis: Float64Array, from: number, to: number): void {
  const before = axis[from - 1]!;
  const after = axis[to]!;
  for (let i = from; i < to; i++)
    if (!(Math.abs(axis[i]!) <= LARGEST_MPS2)) axis[i] = before + ((after - before) * (i - from + 1)) / (to - from + 1);
}

/** Stretches in which no axis changes although the axes change elsewhere. */
export function findStuckValues(axes: readonly Float64Array[], rateHz: number, notes: Note[]): RowRange[] {
  const rows = axes[0]?.length ?? 0;
  const least = Math.max(STUCK_ROWS, Math.ceil(STUCK_S * rateHz));
  const same = (i: number): boolean => axes.every((axis) => axis[i] === axis[i - 1]);
  const runs: RowRange[] = [];
  let repeats = 0;
  for (let i = 1; i < rows; i++) {
    if (!same(i)) continue;
    let to = i + 1;
    while (to < rows && same(to)) to++;
    repeats += to - i;
    if (to - (i - 1) >= least) runs.push([i - 1, to]);
    i = to;
  }
  const stuck = runs.reduce((sum, [from, to]) => sum + to - from, 0);
  // A coarse sensor on a quiet bench repeats itself everywhere: that is resolution, not a fault.
  const repeatsElsewhere = (repeats - stuck) / Math.max(1, rows - stuck);
  if (runs.length === 0 || repeatsElsewhere > 0.3) return [];
  notes.push({
    code: 'values-stuck',
    severity: 'warning',
    text: `The values stand still for ${Number((stuck / rateHz).toPrecision(2))} s in all (first: row ${runs[0]![0] + 1}); those stretches are left out and the recording is split there.`,
  });
  return runs;
}
