/**
 * The short way through a regular body: cells are found and converted in the bytes, no text is made. A row with a
 * quote, a byte above 127 in a kept cell or a lone carriage return is left to papaparse.
 */
import { SKIP } from './row-sink.ts';
import type { RowSink } from './row-sink.ts';

const NEWLINE = 10;
const RETURN = 13;
const QUOTE = 34;
const BLANK = 32;
const TAB = 9;

export interface Progress {
  /** Offset behind the last row taken. */
  readonly offset: number;
  readonly line: number;
}

export const isCommentStart = (bytes: Uint8Array, i: number): boolean =>
  bytes[i] === 35 || bytes[i] === 37 || (bytes[i] === 47 && bytes[i + 1] === 47);

/** Takes rows from a block of whole lines until its end or the first row it cannot take. */
export function takeRowsDirectly(bytes: Uint8Array, sink: RowSink, line: number): Progress {
  let offset = 0;
  while (offset < bytes.length) {
    const end = takeRow(bytes, offset, sink, line);
    if (end < 0) break;
    offset = end;
    line++;
  }
  return { offset, line };
}

/** Takes one row. @returns the offset behind its line end, or -1 if the row is not plain */
function takeRow(bytes: Uint8Array, start: number, sink: RowSink, line: number): number {
  const end = plainLineEnd(bytes, start);
  if (end < 0) return -1;
  let stop = end;
  if (stop > start && bytes[stop - 1] === RETURN) stop--;
  let i = start;
  while (i < stop && (bytes[i] === BLANK || bytes[i] === TAB)) i++;
  if (i === stop || isCommentStart(bytes, i)) return end + 1;
  const cells = sink.delimiter === BLANK ? takeBlankCells(bytes, i, stop, sink) : takeCells(bytes, start, stop, sink);
  sink.endRow(cells, line);
  return end + 1;
}

function plainLineEnd(bytes: Uint8Array, start: number): number {
  for (let i = start; i < bytes.length; i++) {
    const byte = bytes[i]!;
    if (byte === NEWLINE) return i;
    if (byte === QUOTE || byte > 127) return -1;
    if (byte === RETURN && bytes[i + 1] !== NEWLINE) return -1;
  }
  return -1;
}

function takeCells(bytes: Uint8Array, start: number, stop: number, sink: RowSink): number {
  const { delimiter, kinds, columnCount } = sink;
  let column = 0;
  let from = start;
  for (;;) {
    let to = from;
    while (to < stop && bytes[to] !== delimiter) to++;
    if (column >= columnCount || kinds[column] !== SKIP) sink.cell(column, bytes, from, to);
    column++;
    if (to >= stop) return column;
    from = to + 1;
  }
}

function takeBlankCells(bytes: Uint8Array, start: number, stop: number, sink: RowSink): number {
  const { kinds, columnCount } = sink;
  let column = 0;
  let from = start;
  while (from < stop) {
    let to = from;
    while (to < stop && bytes[to] !== BLANK && bytes[to] !== TAB) to++;
    if (column >= columnCount || kinds[column] !== SKIP) sink.cell(column, bytes, from, to);
    column++;
    from = to;
    while (from < stop && (bytes[from] === BLANK || bytes[from] === TAB)) from++;
  }
  return column;
}
