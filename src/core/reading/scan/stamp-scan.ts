/**
 * Time stamps out of bytes, as the difference from the first stamp. An epoch in nanoseconds has 19 digits, more than
 * a double holds; taking the difference piece by piece keeps every one of them.
 */
import { cellText, POWERS_OF_TEN } from './number-scan.ts';

const MINUS = 45;
const PLUS = 43;
const BILLION = 1e9;
/** Whole numbers up to this many digits are exact in a double. */
const EXACT_DIGITS = 15;
/** The clock of a logger may be wrong for so many rows before it is set. */
const HEAD = 16;
/** Differences this many steps long would cost the steps their last digits. */
const LOST_AT = 1e9;

/**
 * Reads stamps of one column and remembers the first. One instance a file.
 *
 * A first stamp that is far from all others, as of a clock not yet set, would leave no digits for the steps between the
 * others: where two stamps in the head of the file agree and the first does not, counting begins anew with them.
 */
export class StampScan {
  readonly #decimal: number;
  readonly #onBegin: () => void;
  #read = 0;
  // A stamp is high · 10⁹ + low + fraction, each piece exact; first… is the first stamp of the file.
  #firstHigh = 0;
  #firstLow = 0;
  #firstFraction = 0;
  #beforeHigh = 0;
  #beforeLow = 0;
  #beforeFraction = 0;
  #high = 0;
  #low = 0;
  #fraction = 0;

  /**
   * @param decimal byte of the decimal mark, 46 or 44
   * @param onBegin called when counting begins anew: differences given before no longer hold
   */
  constructor(decimal: number, onBegin: () => void = () => {}) {
    this.#decimal = decimal;
    this.#onBegin = onBegin;
  }

  /** The first stamp as a double: good for its size, not for its last digits. NaN before any stamp was read. */
  get firstStamp(): number {
    return this.#read > 0 ? this.#firstHigh * BILLION + this.#firstLow + this.#firstFraction : NaN;
  }

  /** Stamp in `bytes[from, to)` minus the first stamp, in the column's own unit; NaN where there is no number. */
  scan(bytes: Uint8Array, from: number, to: number): number {
    return this.#split(bytes, from, to) ? this.sinceFirst(this.#high, this.#low, this.#fraction) : NaN;
  }

  /** The same for a stamp that is already in pieces, all with its sign. */
  sinceFirst(high: number, low: number, fraction: number): number {
    if (this.#read < HEAD) this.#lookAtHead(high, low, fraction);
    return (high - this.#firstHigh) * BILLION + (low - this.#firstLow) + (fraction - this.#firstFraction);
  }

  #lookAtHead(high: number, low: number, fraction: number): void {
    const since = (high - this.#firstHigh) * BILLION + (low - this.#firstLow) + (fraction - this.#firstFraction);
    const step = (high - this.#beforeHigh) * BILLION + (low - this.#beforeLow) + (fraction - this.#beforeFraction);
    const anew = this.#read > 0 && step !== 0 && Math.abs(since) > LOST_AT * Math.abs(step);
    if (this.#read === 0 || anew) {
      this.#firstHigh = high;
      this.#firstLow = low;
      this.#firstFraction = fraction;
    }
    if (anew) this.#onBegin();
    this.#beforeHigh = high;
    this.#beforeLow = low;
    this.#beforeFraction = fraction;
    this.#read++;
  }

  #split(bytes: Uint8Array, from: number, to: number): boolean {
    let i = from;
    while (i < to && bytes[i]! <= 32) i++;
    while (to > i && bytes[to - 1]! <= 32) to--;
    const start = i;
    const sign = bytes[i] === MINUS ? -1 : 1;
    if (bytes[i] === MINUS || bytes[i] === PLUS) i++;
    const first = i;
    let low = 0;
    for (; i < to && bytes[i]! >= 48 && bytes[i]! <= 57; i++) low = low * 10 + (bytes[i]! - 48);
    const digits = i - first;
    let high = 0;
    if (digits > EXACT_DIGITS) {
      if (digits > EXACT_DIGITS + 9) return false;
      low = 0;
      for (let k = first; k < i - 9; k++) high = high * 10 + (bytes[k]! - 48);
      for (let k = i - 9; k < i; k++) low = low * 10 + (bytes[k]! - 48);
    }
    let fraction = 0;
    let decimals = 0;
    if (i < to && bytes[i] === this.#decimal) {
      i++;
      for (; i < to && bytes[i]! >= 48 && bytes[i]! <= 57; i++) {
        if (decimals === EXACT_DIGITS) continue;
        fraction = fraction * 10 + (bytes[i]! - 48);
        decimals++;
      }
    }
    if (i !== to || digits + decimals === 0) return this.#scientific(bytes, start, to);
    this.#high = sign * high;
    this.#low = sign * low;
    this.#fraction = (sign * fraction) / POWERS_OF_TEN[decimals]!;
    return true;
  }

  /** Stamps such as 1.70000000012E+09, as spreadsheets write them. */
  #scientific(bytes: Uint8Array, from: number, to: number): boolean {
    if (to - from > 60) return false;
    const text = cellText(bytes, from, to).replace(this.#decimal === 44 ? ',' : '.', '.');
    if (!/^[+-]?\d+(?:\.\d*)?[eE][+-]?\d{1,3}$/.test(text)) return false;
    const value = Number(text);
    if (Math.abs(value) > 1e24) return false;
    this.#high = Math.trunc(value / BILLION);
    this.#low = Math.trunc(value - this.#high * BILLION);
    this.#fraction = value - Math.trunc(value);
    return true;
  }
}
