/** Plain-text layout: wrapping, indents and tables for a terminal of fixed width. */

/** Blanks of any kind but the no-break one part words; no-break blanks become plain ones in the output. */
const words = (text: string): string[] => text.split(/[ \n\t]+/).filter((word) => word !== '');

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

/**
 * Wraps a paragraph.
 * @param first indent of the first line; @param rest indent of the others (default: as wide as `first`).
 */
export function wrap(text: string, width: number, first = '', rest = ' '.repeat(first.length)): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of words(text)) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = rest;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  lines.push(line);
  return plain(lines.join('\n'));
}

/** Left-aligned first column, the others aligned as told; columns parted by two blanks. */
export function table(
  rows: readonly (readonly string[])[],
  align: readonly ('left' | 'right')[],
  indent = '  ',
): string {
  const widths = align.map((_, column) => Math.max(0, ...rows.map((row) => (row[column] ?? '').length)));
  return plain(
    rows
      .map((row) =>
        (
          indent +
          row
            .map((cell, column) => {
              const width = widths[column] ?? 0;
              return align[column] === 'right' ? cell.padStart(width) : cell.padEnd(width);
            })
            .join('  ')
        ).trimEnd(),
      )
      .join('\n'),
  );
}
