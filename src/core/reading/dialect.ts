/** How the file writes a table: separator, decimal mark, where the rows begin and which line names the columns. */
import Papa from 'papaparse';
import { clockFromText } from './clock-scan.ts';
import { isMissingWord, numberFromText } from './number-scan.ts';

export type Delimiter = ',' | ';' | '\t' | '|' | ' ';

export interface HeadLine {
  readonly text: string;
  /** 1-based line in the file. */
  readonly line: number;
  /** Byte offset of its start in the head. */
  readonly offset: number;
}

export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimalMark: '.' | ',';
  /** Index into the head lines of the first row. */
  readonly firstRow: number;
  /** Cells in a row; a trailing empty cell counts. */
  readonly columnCount: number;
  /** The rows of the head, split. */
  readonly rows: readonly (readonly string[])[];
}

const CANDIDATES: readonly (readonly [Delimiter, '.' | ','])[] = [
  ['\t', '.'],
  [';', '.'],
  [',', '.'],
  ['|', '.'],
  ['\t', ','],
  [';', ','],
  ['|', ','],
  [' ', '.'],
  [' ', ','],
  [',', ','],
];
/** Rows looked at to decide: enough for any preamble met in practice, few enough to cost nothing. */
const LOOK_AT = 2000;
/** Rows of another shape that may stand inside a run of rows: a broken write now and then. */
const TOLERATED = 2;

export const isComment = (text: string): boolean => /^\s*(?:#|%|\/\/)/.test(text);

/** The cells of one line. Blanks as separator count as one, however many. */
export function splitLine(text: string, delimiter: Delimiter): string[] {
  const line = delimiter === ' ' ? collapsedBlanks(text) : text;
  if (!line.includes('"')) return line.split(delimiter).map((cell) => cell.trim());
  const rows = Papa.parse<string[]>(line, { delimiter, newline: '\n' }).data;
  return rows.flat().map((cell) => cell.trim());
}

/** Runs of blanks and tabs outside quotes become one blank; none at the ends of a line. */
export function collapsedBlanks(text: string): string {
  if (!text.includes('"'))
    return text
      .replace(/[ \t]+/g, ' ')
      .replace(/ ?(\r?\n) ?/g, '$1')
      .replace(/^ | $/g, '');
  return text
    .split(/("(?:[^"]|"")*"?)/)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(/[ \t]+/g, ' ').replace(/ ?(\r?\n) ?/g, '$1')))
    .join('')
    .replace(/^ | $/g, '');
}

interface RowShape {
  readonly cells: number;
  readonly numeric: number;
  /** Share of filled cells that are a number, a clock time or a word for no value. */
  readonly filled: number;
  readonly valued: number;
}

function shapeOf(cells: readonly string[], decimalMark: '.' | ','): RowShape {
  let numeric = 0;
  let filled = 0;
  let valued = 0;
  for (const cell of cells) {
    if (cell === '') continue;
    filled++;
    if (!Number.isNaN(numberFromText(cell.replace('−', '-'), decimalMark)) || clockFromText(cell)) {
      numeric++;
      valued++;
    } else if (isMissingWord(cell) || /^\d{4}-\d\d-\d\d$/.test(cell)) valued++;
  }
  return { cells: cells.length, numeric, filled, valued };
}

interface Run {
  readonly first: number;
  readonly score: number;
  readonly cells: number;
}

/** The run of like rows that holds most numbers. */
function bestRun(shapes: readonly (RowShape | null)[]): Run | null {
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

function runFrom(shapes: readonly (RowShape | null)[], from: number, cells: number): Run & { end: number } {
  let strangers = 0;
  let end = from;
  let numeric = 0;
  let filled = 0;
  let valued = 0;
  let first = -1;
  for (let i = from; i < shapes.length && strangers <= TOLERATED; i++) {
    const shape = shapes[i];
    if (!shape) continue;
    if (shape.cells !== cells || shape.numeric === 0) {
      strangers++;
      continue;
    }
    strangers = 0;
    if (first < 0) first = i;
    numeric += shape.numeric;
    filled += shape.filled;
    valued += shape.valued;
    end = i + 1;
  }
  return { first, end, cells, score: numeric * (valued / Math.max(1, filled)) ** 2 };
}

/** Separator, decimal mark and first row; null where no line holds a number in a table. */
export function decideDialect(lines: readonly HeadLine[], declared: Delimiter | null): Dialect | null {
  const looked = lines.slice(0, LOOK_AT);
  const quotes = looked.some((line) => line.text.includes('"'));
  let best: { run: Run; delimiter: Delimiter; decimalMark: '.' | ',' } | null = null;
  for (const [delimiter, decimalMark] of CANDIDATES) {
    if (declared !== null && delimiter !== declared) continue;
    if (delimiter === ',' && decimalMark === ',' && !quotes && declared === null) continue;
    const shapes = looked.map((line) =>
      line.text.trim() === '' || isComment(line.text) ? null : shapeOf(splitLine(line.text, delimiter), decimalMark),
    );
    const run = bestRun(shapes);
    if (run && run.score > (best?.run.score ?? 0)) best = { run, delimiter, decimalMark };
  }
  if (!best) return null;
  const { run, delimiter } = best;
  const rows = looked
    .slice(run.first)
    .filter((line) => line.text.trim() !== '' && !isComment(line.text))
    .map((line) => splitLine(line.text, delimiter));
  return { delimiter, decimalMark: best.decimalMark, firstRow: run.first, columnCount: run.cells, rows };
}
