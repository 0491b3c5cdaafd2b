/** Decides from the first stretch of a file how all of it is to be read, with the reasons. */
import type { Note, Problem } from '../../note.ts';
import { assignColumns } from './columns.ts';
import type { ColumnRoles } from './columns.ts';
import { columnFacts } from './column-facts.ts';
import { decideDialect, isComment } from './dialect.ts';
import { splitLine } from './table-shape.ts';
import type { Delimiter } from './table-shape.ts';
import type { Dialect, HeadLine } from './dialect.ts';
import { isMissingWord } from '../scan/number-scan.ts';
import { isUnitCell } from './header-units.ts';
import type { SaidUnit } from './measured-unit.ts';
import { statedRate, statedUnit } from './preamble.ts';
import type { StatedRate } from './preamble.ts';
import { readingProblems } from '../problems.ts';

export interface Layout {
  readonly delimiter: Delimiter;
  readonly decimalMark: '.' | ',';
  /** Byte offset of the first row in the head, and its line in the file. */
  readonly bodyOffset: number;
  readonly bodyLine: number;
  readonly columnCount: number;
  readonly headers: readonly string[] | null;
  readonly roles: ColumnRoles;
  readonly statedRate: StatedRate | null;
  readonly statedUnit: SaidUnit | null;
  readonly notes: readonly Note[];
}

/** More columns than any logger writes; looking through them would only cost time. */
const COLUMN_LIMIT = 20_000;

/** The layout; a Problem where the file is no recording; null where more of the file may help. */
export function decideLayout(lines: readonly HeadLine[], file: string, complete: boolean): Layout | Problem | null {
  const declared = declaredDelimiter(lines[0]?.text ?? '');
  const dialect = decideDialect(lines, declared);
  if (!dialect) return complete ? withoutNumbers(lines, file) : null;
  const firstRow = lines[dialect.firstRow]!;
  if (dialect.columnCount > COLUMN_LIMIT)
    return readingProblems.tooManyColumns(file, firstRow.line, dialect.columnCount, COLUMN_LIMIT);
  const above = lines.slice(0, dialect.firstRow).filter((line) => line.text.trim() !== '');
  const header = findHeader(above, dialect);
  if (header && ambiguousCommas(header.cells, dialect)) {
    const cells = dialect.columnCount;
    return readingProblems.commasUnclear(file, firstRow.line, header.cells.filter((cell) => cell !== '').length, cells);
  }
  const preamble = header ? above.filter((line) => line.line < header.line) : above;
  const facts = columnFacts(header?.names ?? null, dialect.rows, dialect.columnCount, dialect.decimalMark);
  const context = [file, ...preamble.map((line) => line.text)];
  const roles = assignColumns(facts, { file, line: header?.line ?? firstRow.line, context });
  if ('code' in roles) {
    const labels = facts[0]!.texts.length > facts[0]!.numbers.length + facts[0]!.clocks.length;
    return labels && dialect.columnCount <= 3 ? readingProblems.metadataOnly(file, firstRow.line) : roles;
  }
  return {
    delimiter: dialect.delimiter,
    decimalMark: dialect.decimalMark,
    bodyOffset: firstRow.offset,
    bodyLine: firstRow.line,
    columnCount: dialect.columnCount,
    headers: header?.names ?? null,
    roles,
    statedRate: statedRate(preamble),
    statedUnit: statedUnit(preamble),
    notes: roles.notes,
  };
}

/** A first line that only declares the separator: "sep=;". */
function declaredDelimiter(text: string): Delimiter | null {
  const found = /^\s*"?sep\s*=\s*(\\t|.)"?\s*$/i.exec(text);
  if (!found) return null;
  const mark = found[1] === '\\t' ? '\t' : found[1]!;
  return ([',', ';', '\t', '|', ' '] as const).find((delimiter) => delimiter === mark) ?? null;
}

interface Header {
  readonly line: number;
  readonly cells: readonly string[];
  readonly names: readonly string[];
}

const uncommented = (text: string): string => text.replace(/^\s*(?:#+|%+|\/\/)\s*/, '');

/** The line that names the columns: the last one above the rows with as many cells; a row of units may follow it. */
function findHeader(above: readonly HeadLine[], dialect: Dialect): Header | null {
  let units: readonly string[] | null = null;
  for (const line of above.slice(-4).reverse()) {
    const cells = headerCells(uncommented(line.text), dialect);
    if (!cells) {
      if (isComment(line.text) || units) continue;
      return null;
    }
    const filled = cells.filter((cell) => cell !== '');
    // A first row in which nothing was measured yet.
    if (filled.every(isMissingWord)) continue;
    if (!units && filled.length > 1 && filled.every(isUnitCell) && line !== above[0]) {
      units = cells;
      continue;
    }
    const names = cells.map((cell, i) => (units?.[i] ? `${cell} (${units[i]!.replace(/^[([]|[)\]]$/g, '')})` : cell));
    return { line: line.line, cells, names };
  }
  return null;
}

/** The cells of a line if they can name the columns of this table. */
function headerCells(text: string, dialect: Dialect): readonly string[] | null {
  const count = dialect.columnCount;
  const cells = splitLine(text, dialect.delimiter);
  const fits = (row: readonly string[]): boolean =>
    row.length === count ||
    (row.length === count - 1 && lastColumnEmpty(dialect)) ||
    (row.length === count + 1 && row.at(-1) === '');
  if (fits(cells)) return cells;
  if (dialect.delimiter === ' ') {
    const glued = text
      .trim()
      .replace(/(?<!\s)\s+([([][^()[\]]{0,40}[)\]])/g, '\u00a0$1')
      .split(/[ \t]+/)
      .map((cell) => cell.replace('\u00a0', ' '));
    if (fits(glued)) return glued;
    const wide = text.trim().split(/\t+| {2,}/);
    if (fits(wide)) return wide;
  }
  for (const delimiter of [',', ';', '\t', '|'] as const) {
    const other = splitLine(text, delimiter);
    if (delimiter !== dialect.delimiter && count > 1 && fits(other)) return other;
  }
  // A first column of row names without a header of its own.
  if (cells.length === count - 1 && count > 2) return ['', ...cells];
  return dialect.delimiter === ',' && cells.length > 1 && cells.length * 2 === count ? cells : null;
}

const lastColumnEmpty = (dialect: Dialect): boolean =>
  dialect.rows.every((row) => (row[dialect.columnCount - 1] ?? '') === '');

const ambiguousCommas = (cells: readonly string[], dialect: Dialect): boolean =>
  dialect.delimiter === ',' && cells.length * 2 === dialect.columnCount;

/** Why a text without a single row of numbers is refused. */
function withoutNumbers(lines: readonly HeadLine[], file: string): Problem {
  const filled = lines.filter((line) => line.text.trim() !== '');
  const last = filled.at(-1);
  if (!last) return readingProblems.emptyFile(file);
  for (const delimiter of [',', ';', '\t', '|', ' '] as const) {
    const cells = splitLine(uncommented(last.text), delimiter).filter((cell) => cell !== '');
    if (cells.length < 2 || cells.length > COLUMN_LIMIT) continue;
    const facts = columnFacts(cells, [], cells.length, '.');
    const telling = facts.filter((fact) => fact.quantity !== null || fact.axis !== null).length;
    if (telling >= 2 && telling * 2 >= cells.length) return readingProblems.headerOnly(file, last.line, cells);
  }
  return readingProblems.notATable(file, last.line, last.text.trim());
}
