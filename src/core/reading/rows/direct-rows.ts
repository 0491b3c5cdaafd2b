/**
 * The short way through a regular body: numbers are converted where they stand in the bytes, no text is made. A row
 * with a quote, a byte above 127 in a kept cell or a lone carriage return is left to papaparse. What is not a plain
 * number (an exponent, a word, a blank inside) goes through the same slow conversion as on the other way, so that both
 * ways give the same columns, bit for bit.
 */
import { POWERS_OF_TEN } from '../scan/number-scan.ts';
import { NUMBER, SKIP, STAMP } from './row-sink.ts';
import type { RowSink } from './row-sink.ts';

const NEWLINE = 10;
const RETURN = 13;
const QUOTE = 34;
const BLANK = 32;
const TAB = 9;
const MINUS = 45;

export interface Progress {
  /** Offset behind the last row taken. */
  readonly offset: number;
  readonly line: number;
}

/**
 * Takes rows until the end of the block or the first row that is not plain.
 *
 * @param bytes whole lines; the last byte is a line end
 */
export function takeRowsDirectly(bytes: Uint8Array, sink: RowSink, line: number): Progress {
  const { delimiter, decimal, kinds, columnCount } = sink;
  const blanks = delimiter === BLANK;
  const length = bytes.length;
  let i = 0;
  while (i < length) {
    const start = i;
    let byte = bytes[i]!;
    if (byte < 48 && byte !== MINUS) {
      // Maybe a blank line, a remark, or blanks before the first cell.
      while (byte === BLANK || byte === TAB) byte = bytes[++i]!;
      if (byte === RETURN && bytes[i + 1] === NEWLINE) byte = bytes[++i]!;
      if (byte === NEWLINE || isCommentStart(bytes, i)) {
        i = bytes.indexOf(NEWLINE, i) + 1;
        line++;
        continue;
      }
      if (!blanks) i = start;
    }
    let column = 0;
    for (;;) {
      const from = i;
      const kind = column < columnCount ? kinds[column]! : -1;
      let plain = false;
      byte = bytes[i]!;
      if (kind === NUMBER || kind === STAMP) {
        while (byte === BLANK && !blanks) byte = bytes[++i]!;
        const negative = byte === MINUS;
        if (negative) byte = bytes[++i]!;
        const first = i;
        let mantissa = 0;
        let digit = byte - 48;
        while (digit >= 0 && digit <= 9) {
          mantissa = mantissa * 10 + digit;
          digit = bytes[++i]! - 48;
        }
        let digits = i - first;
        let decimals = 0;
        const whole = mantissa;
        byte = digit + 48;
        if (byte === decimal && digits > 0) {
          const point = ++i;
          digit = bytes[i]! - 48;
          while (digit >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            digit = bytes[++i]! - 48;
          }
          decimals = i - point;
          digits = decimals === 0 ? 0 : digits + decimals;
          byte = digit + 48;
        }
        plain = digits > 0 && digits <= 15 && (byte === delimiter || byte === NEWLINE || byte === RETURN);
        if (plain) {
          if (kind === NUMBER) {
            const value = decimals === 0 ? mantissa : mantissa / POWERS_OF_TEN[decimals]!;
            sink.gotNumber(column, negative ? -value : value);
          } else {
            const fraction = (mantissa - whole * POWERS_OF_TEN[decimals]!) / POWERS_OF_TEN[decimals]!;
            sink.gotStamp(column, negative ? -whole : whole, negative ? -fraction : fraction);
          }
        }
      }
      if (!plain) {
        while (byte !== delimiter && byte !== NEWLINE && byte !== RETURN && byte !== QUOTE) {
          if ((byte > 127 && kind !== SKIP) || (blanks && byte === TAB)) break;
          byte = bytes[++i]!;
        }
        if (byte === QUOTE || byte > 127) return leftAt(start, line, sink);
        if (kind !== SKIP) sink.cell(column, bytes, from, i);
      }
      column++;
      if (blanks && (byte === BLANK || byte === TAB)) {
        while (byte === BLANK || byte === TAB) byte = bytes[++i]!;
        if (byte !== NEWLINE && byte !== RETURN) continue;
      } else if (byte === delimiter) {
        i++;
        continue;
      }
      if (byte === RETURN && bytes[++i] !== NEWLINE) return leftAt(start, line, sink);
      i++;
      break;
    }
    sink.endRow(column, line++);
  }
  return { offset: length, line };
}

/** The row that starts here is not plain; nothing of it is kept. */
function leftAt(start: number, line: number, sink: RowSink): Progress {
  sink.forgetRow();
  return { offset: start, line };
}

const isCommentStart = (bytes: Uint8Array, i: number): boolean =>
  bytes[i] === 35 || bytes[i] === 37 || (bytes[i] === 47 && bytes[i + 1] === 47);
