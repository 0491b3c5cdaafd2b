/** Tables as CSV that a spreadsheet opens and cannot be tricked by. */

/** First characters that make a spreadsheet take a cell for a formula. */
const FORMULA_START = /^[=+\-@\t\r]/u;
const NUMBER = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/iu;

/** One cell: quoted where needed; text that begins like a formula gets a leading apostrophe, numbers stay numbers. */
export function csvCell(value: string | number | null): string {
  const text = value === null ? '' : String(value);
  const safe = FORMULA_START.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** RFC 4180: comma, CRLF, quotes doubled. */
export function csvText(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}
