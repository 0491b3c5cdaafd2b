/** How the lines of a file look when split by one separator: the ground on which the separator is chosen. */
import Papa from 'papaparse';
import { clockFromText } from '../scan/clock-scan.ts';
import { isMissingWord, numberFromText } from '../scan/number-scan.ts';

export type Delimiter = ',' | ';' | '\t' | '|' | ' ';
export type DecimalMark = '.' | ',';

/** Cells of a line that are judged; the rest of a very wide line is only counted. */
const JUDGED_CELLS = 256;
/** Rows of another shape that may stand inside a run of rows: a broken write now and then. */
const TOLERATED = 2;

export interface RowShape {
  readonly cells: number;
  /** Cells that hold a number or a clock time. */
  readonly numeric: number;
  readonly filled: number;
  /** Cells that hold a number, a clock time, a date or a word for no value. */
  readonly valued: number;
}

export interface Run {
  /** Index of the first row. */
  readonly first: number;
  /** Index behind the last row. */
  readonly end: number;
  readonly rows: number;
  readonly cells: number;
  /** Numbers in the run, less where other text stands between them. */
  readonly score: number;
}

/** The cells of one line. Blanks as separator count as one, however many. */
export function splitLine(text: string, delimiter: Delimiter): string[] {
  const line = delimiter === ' ' ? collapsedBlanks(text) : text;
  if (!line.includes('"') || !quotesMakeSense(line, delimiter)) return line.split(delimiter).map((cell) => cell.trim());
  // The tokeniser itself: deciding anew on every line what it has to do costs more than doing it.
  const rows = new Papa.Parser({ delimiter, newline: '\n' }).parse(line, 0, false).data as string[][];
  return rows.flat().map((cell) => cell.trim());
}

/** More quotes than cells can have: stray marks, and a trap for a tokeniser that reports each of them. */
export const quotesMakeSense = (text: string, delimiter: Delimiter): boolean =>
  countOf(text, '"') <= 6 * (countOf(text, delimiter) + countOf(text, '\n')) + 20;

/** Runs of blanks and tabs outside quotes become one blank; none at the ends of a line. */
export function collapsedBlanks(text: string): string {
  if (!text.includes('"')) return collapsed(text).replace(/^ | $/g, '');
  // Between a doubled mark and its twin stands an empty part outside: every second part is a quoted one.
  const parts = text.split('"').map((part, i) => (i % 2 === 1 ? part : collapsed(part)));
  return parts.join('"').replace(/^ | $/g, '');
}

const collapsed = (text: string): string => text.replace(/[ \t]+/g, ' ').replace(/ ?(\r?\n) ?/g, '$1');

function countOf(text: string, mark: string): number {
  let count = 0;
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) count++;
  return count;
}

/** A line without a digit is no row, however it is split. */
const NO_ROW: RowShape = { cells: 1, numeric: 0, filled: 0, valued: 0 };

/** The shape of one line under a separator and a decimal mark. */
export function shapeOf(text: string, delimiter: Delimiter, decimalMark: DecimalMark): RowShape {
  if (!/\d/.test(text)) return NO_ROW;
  let cells: string[];
  let count: number;
  if (text.includes('"') || delimiter === ' ') {
    cells = splitLine(text, delimiter);
    count = cells.length;
  } else {
    count = countOf(text, delimiter) + 1;
    cells = text.split(delimiter, JUDGED_CELLS).map((cell) => cell.trim());
  }
  let numeric = 0;
  let filled = 0;
  let valued = 0;
  for (const cell of cells.slice(0, JUDGED_CELLS)) {
    if (cell === '') continue;
    filled++;
    if (isNumeric(cell, decimalMark)) {
      numeric++;
      valued++;
    } else if (isMissingWord(cell) || /^\d{4}-\d\d-\d\d$/.test(cell)) valued++;
  }
  return { cells: count, numeric, filled, valued };
}

const isNumeric = (cell: string, decimalMark: DecimalMark): boolean =>
  /\d/.test(cell) &&
  (!Number.isNaN(numberFromText(cell.replace('−', '-'), decimalMark)) || clockFromText(cell) !== null);

/** The run of like rows that holds most numbers; null entries are blank lines and comments. */
export function bestRun(shapes: readonly (RowShape | null)[]): Run | null {
  let best: Run | null = null;
  for (let i = 0; i < shapes.length;) {
    const start = shapes[i];
    if (!start || start.numeric === 0) {
      i++;
      continue;
    }
    const run = runFrom(shapes, i, start.cells);
    if (!best || run.score > best.score) best = run;
    i = run.end;
  }
  return best;
}

function runFrom(shapes: readonly (RowShape | null)[], from: number, cells: number): Run {
  let strangers = 0;
  let end = from;
  let rows = 0;
  let numeric = 0;
  let filled = 0;
  let valued = 0;
  const counts: number[] = [];
  for (let i = from; i < shapes.length && strangers <= TOLERATED; i++) {
    const shape = shapes[i];
    if (!shape) continue;
    if (shape.cells !== cells || shape.numeric === 0) {
      strangers++;
      continue;
    }
    strangers = 0;
    rows++;
    numeric += shape.numeric;
    filled += shape.filled;
    valued += shape.valued;
    counts.push(shape.numeric);
    end = i + 1;
  }
  const score = numeric * (valued / Math.max(1, filled)) ** 2;
  return { first: firstTypical(shapes, from, end, cells, counts), end, rows, cells, score };
}

/**
 * A line of settings may have as many cells as the rows below it: the run begins where half the usual numbers are, or
 * words for a missing one in their place and nothing else.
 */
function firstTypical(
  shapes: readonly (RowShape | null)[],
  from: number,
  end: number,
  cells: number,
  counts: number[],
): number {
  const usual = [...counts].sort((a, b) => a - b)[counts.length >> 1] ?? 0;
  for (let i = from; i < end; i++) {
    const shape = shapes[i];
    if (!shape || shape.cells !== cells || shape.numeric === 0) continue;
    if (shape.numeric * 2 >= usual || (shape.valued * 2 >= usual && shape.valued === shape.filled)) return i;
  }
  return from;
}
