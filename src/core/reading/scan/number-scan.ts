/**
 * Numbers out of bytes. Both ways of reading a body (straight from the bytes, or through papaparse) end here, so both
 * give the same double for the same text, and it is the double nearest to the decimal text.
 */

const MINUS = 45;
const PLUS = 43;
const ZERO = 48;
const DOT = 46;

/** Powers of ten that a double holds exactly. */
export const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));

/** How a cell that gave no number reads. */
export type CellState = typeof CELL_NUMBER | typeof CELL_EMPTY | typeof CELL_MISSING | typeof CELL_UNREADABLE;
export const CELL_NUMBER = 0;
export const CELL_EMPTY = 1;
/** A word for 'no value': NaN, null, n/a, a dash. */
const CELL_MISSING = 2;
const CELL_UNREADABLE = 3;

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,5})?$/;
const INFINITE = /^([+-]?)(?:inf|infinity|infinite|∞|1\.#inf)$/i;
const MISSING =
  /^(?:[+-]?nan|1\.#(?:ind|qnan)|null|none|nil|n\/?a|#n\/a|#div\/0!|#num!|#value!|-+|\?+|\*+|missing|void|empty)$/i;

/** Is this text a word for a missing value? */
export const isMissingWord = (text: string): boolean => MISSING.test(text);

/**
 * The number in `bytes[from, to)`, blanks around it allowed; NaN where there is none, ±Infinity for the word or for
 * more than a double holds. Up to 15 digits with at most 22 decimals are taken as integer divided by a power of ten,
 * both exact, so the one rounding gives the nearest double (W. D. Clinger, How to Read Floating Point Numbers
 * Accurately, 1990); everything else goes through the language's own conversion, which is exact as well.
 *
 * @param decimal byte of the decimal mark, 46 or 44
 */
export function scanNumber(bytes: Uint8Array, from: number, to: number, decimal: number): number {
  let i = from;
  while (i < to && bytes[i]! <= 32) i++;
  while (to > i && bytes[to - 1]! <= 32) to--;
  const start = i;
  let negative = false;
  if (bytes[i] === MINUS) {
    negative = true;
    i++;
  } else if (bytes[i] === PLUS) i++;
  let mantissa = 0;
  let digits = 0;
  let decimals = 0;
  const first = i;
  while (i < to) {
    const digit = bytes[i]! - ZERO;
    if (digit < 0 || digit > 9) break;
    mantissa = mantissa * 10 + digit;
    i++;
  }
  digits = i - first;
  if (i < to && bytes[i] === decimal) {
    i++;
    const point = i;
    while (i < to) {
      const digit = bytes[i]! - ZERO;
      if (digit < 0 || digit > 9) break;
      mantissa = mantissa * 10 + digit;
      i++;
    }
    decimals = i - point;
    digits += decimals;
    if (decimals === 0 && decimal !== DOT) return scanSlowly(bytes, start, to, decimal);
  }
  if (i !== to || digits === 0 || digits > 15) return scanSlowly(bytes, start, to, decimal);
  const value = mantissa / POWERS_OF_TEN[decimals]!;
  return negative ? -value : value;
}

/** Text of a cell; bytes above 127 become a mark that no number has. */
export const cellText = (bytes: Uint8Array, from: number, to: number): string => {
  let text = '';
  for (let i = from; i < to && i < from + 400; i++) text += String.fromCharCode(bytes[i]!);
  return text.trim();
};

function scanSlowly(bytes: Uint8Array, from: number, to: number, decimal: number): number {
  if (to - from > 400) return NaN;
  return numberFromText(cellText(bytes, from, to), decimal === DOT ? '.' : ',');
}

/** As {@link scanNumber}, from text: also exponents, more digits, grouped thousands and the words for infinity. */
export function numberFromText(text: string, decimalMark: '.' | ','): number {
  if (text === '') return NaN;
  const last = text.charCodeAt(text.length - 1);
  if (decimalMark === ',' && last === 44) return NaN;
  const pointed = decimalMark === '.' ? text : text.includes('.') ? ' ' : text.replace(',', '.');
  if (PLAIN.test(pointed)) return Number(pointed);
  const infinite = INFINITE.exec(text);
  if (infinite) return infinite[1] === '-' ? -Infinity : Infinity;
  return grouped(text, decimalMark);
}

/**
 * Thousands in groups, after decimal point and after decimal comma. Without a decimal part a lone group such as 1,234
 * may be a decimal mark misread: only two groups are proof.
 */
const GROUPED: Readonly<Record<'.' | ',', RegExp>> = {
  '.': /^[+-]?\d{1,3}(?:(?:,\d{3})+\.\d+|(?:,\d{3}){2,}|(?:[ ']\d{3})+(?:\.\d+)?)$/,
  ',': /^[+-]?\d{1,3}(?:(?:\.\d{3})+,\d+|(?:\.\d{3}){2,}|(?:[ ']\d{3})+(?:,\d+)?)$/,
};

/** 1,234.5 or 1.234,5 or 1 234,5 or 1'234.5; only where the grouping is strict. */
function grouped(text: string, decimalMark: '.' | ','): number {
  if (!GROUPED[decimalMark].test(text)) return NaN;
  return Number(text.replace(decimalMark === '.' ? /[, ']/g : /[. ']/g, '').replace(',', '.'));
}

/** Why a cell gave no number. */
export function cellState(bytes: Uint8Array, from: number, to: number): CellState {
  if (to - from > 400) return CELL_UNREADABLE;
  const text = cellText(bytes, from, to);
  if (text === '') return CELL_EMPTY;
  return isMissingWord(text) ? CELL_MISSING : CELL_UNREADABLE;
}
