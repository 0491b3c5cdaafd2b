/**
 * Every repair of a recording, in the order in which it is done, and each leaves a note. Nothing is repaired anywhere
 * else.
 *
 * | found | done |
 * |---|---|
 * | rows too short, too long, or of text (while reading) | left out, counted |
 * | last line without a line end | left out: its last number may be cut off |
 * | clock passed midnight, counter started again | time continued |
 * | stamps that cannot be read or fall out of line | set between their neighbors |
 * | clock set back, recordings appended | split there |
 * | rows repeated whole, same stamp | left out |
 * | each value repeated a few times | only the first row of each is kept, at its lower rate |
 * | stamps shared by many rows, rounded or written late | rows spread evenly |
 * | a few rows missing | time goes on after a hole; kept as uneven times |
 * | many rows missing | split there, never bridged |
 * | missing, infinite, impossible values | up to three rows closed by a line; more are left out and split |
 * | values standing still | left out and split |
 * | values at the end stop | kept, counted as clipped |
 * | speed that falls to nought at once (speed-dropouts.ts) | left out: a lost signal |
 */
import type { Note } from '../../note.ts';
import { dropHeldRows, dropRepeatedRows } from './repair-rows.ts';
import type { KeptRows } from './repair-rows.ts';
import { continueAfterSetBack, replaceStrayStamps, unwrap } from './repair-stamps.ts';
import { findStuckValues, repairCorruptValues } from './repair-values.ts';
import type { RowRange } from './repair-values.ts';
import type { Body } from '../rows/read-body.ts';
import type { Tally } from '../rows/tally.ts';
import { StampGroups } from './stamp-groups.ts';

/** Pieces shorter than this say nothing about a vibration and are left out. */
export const SHORTEST_PIECE_ROWS = 16;

/** Notes on rows that were left out while reading. */
export function notesOfReading({ table, unfinishedLine, openQuoteLine, tooLongLine }: Body): Note[] {
  const notes: Note[] = [];
  const tell = (code: string, { count, firstLine }: Tally, what: string): void => {
    if (count === 0) return;
    notes.push({
      code,
      severity: 'warning',
      text: `${count} ${count === 1 ? 'row' : 'rows'} ${what} left out (first: line ${firstLine}).`,
    });
  };
  tell('rows-too-short', table.shortRows, 'with too few cells');
  tell('rows-too-long', table.longRows, 'with too many cells');
  tell('rows-of-text', table.textRows, 'without a number');
  if (table.rowsWithoutAcceleration > 0)
    notes.push({
      code: 'rows-of-other-sensors',
      severity: 'info',
      text: `${table.rowsWithoutAcceleration} rows hold other sensors only.`,
    });
  if (unfinishedLine !== null)
    notes.push({
      code: 'last-line-unfinished',
      severity: 'info',
      text: `The last line (${unfinishedLine}) has no line end, so its last number may be cut off; it is left out.`,
    });
  if (openQuoteLine !== null)
    notes.push({
      code: 'quote-not-closed',
      severity: 'warning',
      text: `A quote in line ${openQuoteLine} is never closed or out of place; quotes there are read as plain marks.`,
    });
  if (tooLongLine !== null)
    notes.push({
      code: 'line-too-long',
      severity: 'warning',
      text: `Line ${tooLongLine} is too long to be a row; reading stopped there.`,
    });
  return notes;
}

/** Repairs of single stamps, in seconds. @returns rows at which the clock was set back */
export function repairStamps(stamps: Float64Array, clockWrap: number, notes: Note[]): number[] {
  unwrap(stamps, clockWrap, notes);
  replaceStrayStamps(stamps, notes);
  return continueAfterSetBack(stamps, notes);
}

/**
 * Repairs that leave out rows. Rows under coarse stamps may be alike by chance, and none is left out as repeated.
 *
 * @param stamps null where the file has none
 */
export function repairRows(stamps: Float64Array | null, axes: readonly Float64Array[], notes: Note[]): KeptRows {
  const held = dropHeldRows(stamps, axes, notes);
  if (held) return held;
  const rows = axes[0]?.length ?? 0;
  if (!stamps) return { rows, dropped: [] };
  const groups = new StampGroups(stamps);
  return groups.coarse || groups.equalStamps === 0 ? { rows, dropped: [] } : dropRepeatedRows(stamps, axes, notes);
}

/** Repairs of values, m/s². @returns the ranges of rows that make up the recording */
export function repairValues(
  axes: readonly Float64Array[],
  breaks: readonly number[],
  rateHz: number,
  notes: Note[],
): RowRange[] {
  const left = [...repairCorruptValues(axes, new Set(breaks), notes), ...findStuckValues(axes, rateHz, notes)].sort(
    (a, b) => a[0] - b[0],
  );
  const rows = axes[0]?.length ?? 0;
  const kept: RowRange[] = [];
  const cuts = [...breaks, rows];
  let from = 0;
  let next = 0;
  for (const cut of cuts) {
    while (next < left.length && left[next]![0] < cut) {
      const [start, end] = left[next++]!;
      if (start > from) kept.push([from, start]);
      from = Math.max(from, end);
    }
    if (cut > from) kept.push([from, cut]);
    from = Math.max(from, cut);
  }
  const long = kept.filter(([start, end]) => end - start >= SHORTEST_PIECE_ROWS);
  const short = kept.length - long.length;
  if (short > 0 && long.length > 0)
    notes.push({
      code: 'pieces-too-short',
      severity: 'info',
      text: `${short} ${short === 1 ? 'piece' : 'pieces'} of fewer than ${SHORTEST_PIECE_ROWS} rows left out.`,
    });
  return long;
}
