/**
 * Clock times out of bytes, as seconds since the first one: 12:34:56.789, 34:56.7 (minutes and seconds),
 * 2024-05-01T12:34:56.789Z, 01.05.2024 12:34:56,789, 5/1/2024 1:34:56 PM, 12:34:56:789.
 *
 * A date in year-month-day order is used as a date. Of any other order only the time of day is used, because nothing
 * tells day and month apart; a recording over midnight is put right by the repair of wrapped clocks.
 */
import { cellText, POWERS_OF_TEN } from './number-scan.ts';

const CLOCK =
  /^(?:(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T ]+|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4},?[T ]+|[A-Za-z]{3,9}\.? \d{1,2},? \d{4},? )?(\d{1,3}):(\d{2})(?::(\d{2}))?(?:[.,:](\d{1,12}))?\s*([AaPp]\.?[Mm]\.?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/;

/** Days from 1970-01-01 in the Gregorian calendar; H. Hinnant, chrono-compatible low-level date algorithms, 2013. */
export function daysFromCivil(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

interface ClockTime {
  readonly wholeS: number;
  readonly fractionS: number;
  /** Length after which this kind of clock starts again, s; 0 where it has a date. */
  readonly wrapS: number;
}

/** Clock time in a cell's text, or null. */
export function clockFromText(text: string): ClockTime | null {
  const found = CLOCK.exec(text);
  if (!found) return null;
  const [, year, month, day, first, second, third, decimals, half, zone] = found;
  const fraction = decimals ? Number(decimals) / POWERS_OF_TEN[decimals.length]! : 0;
  // Two fields without a date are minutes and seconds when they carry decimals, else hours and minutes.
  const minutesOnly = third === undefined && decimals !== undefined && year === undefined;
  const hours = minutesOnly ? 0 : hourOfDay(Number(first), half);
  const minutes = minutesOnly ? Number(first) : Number(second);
  const seconds = minutesOnly ? Number(second) : Number(third ?? '0');
  if (seconds > 60 || minutes > 59 || (hours > 24 && year !== undefined)) return null;
  const days = year === undefined ? 0 : daysFromCivil(Number(year), Number(month), Number(day));
  const wholeS = days * 86400 + hours * 3600 + minutes * 60 + seconds - zoneOffsetS(zone);
  return { wholeS, fractionS: fraction, wrapS: year !== undefined ? 0 : minutesOnly ? 3600 : 86400 };
}

function hourOfDay(hour: number, half: string | undefined): number {
  if (half === undefined) return hour;
  return (hour % 12) + (/^p/i.test(half) ? 12 : 0);
}

function zoneOffsetS(zone: string | undefined): number {
  const found = /^([+-])(\d{2}):?(\d{2})$/.exec(zone ?? '');
  if (!found) return 0;
  return (found[1] === '-' ? -1 : 1) * (Number(found[2]) * 3600 + Number(found[3]) * 60);
}

/** Reads the clock times of one column and remembers the first. One instance a file. */
export class ClockScan {
  #first: ClockTime | null = null;
  /** Zone text aside, the first clock time as it was: its size is not used for anything. */
  get wrapS(): number {
    return this.#first?.wrapS ?? 0;
  }

  /** Seconds since the first clock time; NaN where the cell is none. */
  scan(bytes: Uint8Array, from: number, to: number): number {
    if (to - from > 60) return NaN;
    const time = clockFromText(cellText(bytes, from, to));
    if (!time) return NaN;
    this.#first ??= time;
    return time.wholeS - this.#first.wholeS + (time.fractionS - this.#first.fractionS);
  }
}
