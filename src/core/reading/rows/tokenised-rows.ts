/** The general way through a body: papaparse finds the cells, quoted ones with separators and line ends included. */
import Papa from 'papaparse';
import { collapsedBlanks, quotesMakeSense } from '../layout/table-shape.ts';
import type { Delimiter } from '../layout/table-shape.ts';
import type { RowSink } from './row-sink.ts';
import { SKIP } from './row-sink.ts';

/** A character that cannot be in the text, for reading quotes as plain characters. */
const NO_QUOTE = '\u0000';

interface Parsed {
  readonly data: readonly (readonly string[])[];
  readonly meta: { readonly cursor: number };
}

export class TokenisedRows {
  readonly #sink: RowSink;
  readonly #delimiter: Delimiter;
  #scratch = new Uint8Array(512);
  /** Text of a row whose quotes are still open. */
  #pending = '';
  line = 1;

  constructor(sink: RowSink, delimiter: Delimiter) {
    this.#sink = sink;
    this.#delimiter = delimiter;
  }

  get pendingLength(): number {
    return this.#pending.length;
  }

  /**
   * Takes the rows of a text of whole lines; what ends inside a quote is kept for the next call.
   *
   * @returns false where the quotes are no quotes, and the text was taken as it stands
   */
  take(text: string): boolean {
    const whole = this.#pending + text;
    const quoted = quotesMakeSense(whole, this.#delimiter);
    this.#pending = this.#parse(whole, quoted ? '"' : NO_QUOTE);
    return quoted;
  }

  /** Takes what is pending as plain lines: its quote is never closed. @returns lines taken so */
  takePendingUnquoted(): number {
    const before = this.line;
    const text = this.#pending;
    this.#pending = '';
    this.#parse(text, NO_QUOTE);
    return this.line - before;
  }

  #parse(text: string, quoteChar: string): string {
    const whole = this.#delimiter === ' ' ? collapsedBlanks(text) : text;
    const parser = new Papa.Parser({ delimiter: this.#delimiter, newline: '\n', quoteChar });
    const parsed = parser.parse(whole, 0, true) as Parsed;
    for (const row of parsed.data) this.#row(row);
    return whole.slice(parsed.meta.cursor);
  }

  #row(row: readonly string[]): void {
    const { kinds, columnCount } = this.#sink;
    const first = (row[0] ?? '').trimStart();
    const blank = row.length === 1 && first.trim() === '';
    if (!blank && !/^(?:#|%|\/\/)/.test(first)) {
      for (let column = 0; column < row.length; column++) {
        if (column < columnCount && kinds[column] === SKIP) continue;
        const length = this.#encode(row[column]!);
        this.#sink.cell(column, this.#scratch, 0, length);
      }
      this.#sink.endRow(row.length, this.line);
    }
    this.line++;
    for (const cell of row) for (let at = cell.indexOf('\n'); at >= 0; at = cell.indexOf('\n', at + 1)) this.line++;
  }

  /** Cell text to bytes: typographic minus and blanks to plain ones, anything else above 127 to a mark. */
  #encode(text: string): number {
    if (text.length > this.#scratch.length) this.#scratch = new Uint8Array(text.length * 2);
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      this.#scratch[i] =
        code < 128 ? code : code === 0x2212 ? 45 : code === 0xa0 || code === 0x202f || code === 0x2009 ? 32 : 127;
    }
    return text.length;
  }
}
