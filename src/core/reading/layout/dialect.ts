/** How the file writes a table: separator, decimal mark, where the rows begin. */
import { bestRun, shapeOf, splitLine } from './table-shape.ts';
import type { DecimalMark, Delimiter, Run } from './table-shape.ts';

export interface HeadLine {
  readonly text: string;
  /** 1-based line in the file. */
  readonly line: number;
  /** Byte offset of its start in the head. */
  readonly offset: number;
}

export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
  /** Index into the head lines of the first row. */
  readonly firstRow: number;
  /** Cells in a row; a trailing empty cell counts. */
  readonly columnCount: number;
  /** The rows of the head, split. */
  readonly rows: readonly (readonly string[])[];
}

/** In the order of preference where several fit alike. */
const CANDIDATES: readonly (readonly [Delimiter, DecimalMark])[] = [
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
/** Lines looked at first; if too few of them are rows (a long preamble), all lines of the head are. */
const FIRST_LOOK = 160;
const ENOUGH_ROWS = 12;
/** Rows handed on for judging the columns, and cells in all of them: bounds the cost of very wide files. */
const SAMPLE_ROWS = 2000;
const SAMPLE_CELLS = 200_000;

export const isComment = (text: string): boolean => /^\s*(?:#|%|\/\/)/.test(text);
const isData = (line: HeadLine): boolean => line.text.trim() !== '' && !isComment(line.text);

interface Choice {
  readonly run: Run;
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
}

/** Separator, decimal mark and first row; null where no line holds a number in a table. */
export function decideDialect(lines: readonly HeadLine[], declared: Delimiter | null): Dialect | null {
  let choice = bestChoice(lines.slice(0, FIRST_LOOK), declared);
  if (lines.length > FIRST_LOOK && (choice?.run.rows ?? 0) < ENOUGH_ROWS) choice = bestChoice(lines, declared);
  if (!choice) return null;
  const { run, delimiter, decimalMark } = choice;
  const sample = Math.max(8, Math.min(SAMPLE_ROWS, Math.floor(SAMPLE_CELLS / run.cells)));
  const rows = lines
    .slice(run.first, run.first + sample)
    .filter(isData)
    .map((line) => splitLine(line.text, delimiter));
  return { delimiter, decimalMark, firstRow: run.first, columnCount: run.cells, rows };
}

function bestChoice(lines: readonly HeadLine[], declared: Delimiter | null): Choice | null {
  const quotes = lines.some((line) => line.text.includes('"'));
  let best: Choice | null = null;
  for (const [delimiter, decimalMark] of CANDIDATES) {
    if (declared !== null && delimiter !== declared) continue;
    // A comma is separator and decimal mark at once only where the numbers stand in quotes.
    if (delimiter === ',' && decimalMark === ',' && !quotes) continue;
    // A separator that is nowhere leaves one column; the semicolon stands for all of those.
    if (
      delimiter !== ';' &&
      !lines.some(({ text }) => (delimiter === ' ' ? /\S[ \t]+\S/.test(text) : text.includes(delimiter)))
    )
      continue;
    const run = bestRun(lines.map((line) => (isData(line) ? shapeOf(line.text, delimiter, decimalMark) : null)));
    if (run && run.score > (best?.run.score ?? 0)) best = { run, delimiter, decimalMark };
  }
  return best && best.delimiter === ',' ? singleColumn(lines, best) : best;
}

/**
 * "9,81" in every line: one column with a decimal comma, or two columns of whole numbers? A second part that begins
 * with a zero before further digits is a fraction.
 */
function singleColumn(lines: readonly HeadLine[], choice: Choice): Choice {
  if (choice.run.cells !== 2) return choice;
  const rows = lines.slice(choice.run.first, choice.run.end).filter(isData);
  const pairs = rows.map((line) => /^\s*[+-]?\d+,(\d+)\s*$/.exec(line.text));
  if (pairs.some((pair) => pair === null) || !pairs.some((pair) => /^0\d/.test(pair![1]!))) return choice;
  return { run: { ...choice.run, cells: 1 }, delimiter: ';', decimalMark: ',' };
}
