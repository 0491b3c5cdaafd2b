/** What the remarks above the table say: the sampling rate, and the unit. */
import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import type { SaidUnit } from './measured-unit.ts';
import { accelerationUnitOf } from './header-units.ts';
import { INTERVAL_WORDS, matchesAny, normalised, RATE_WORDS, UNIT_WORDS, wordsOf } from './header-words.ts';

export interface StatedRate {
  readonly rateHz: number;
  readonly line: number;
  readonly text: string;
}

/** What follows in a longer remark is not read. */
const LONGEST_REMARK = 300;

const NUMBER =
  /([+-]?\d+(?:[.,]\d+)?(?:e[+-]?\d+)?)\s*(k?hz|1\/s|\/s|samples?\s*(?:per|\/)\s*s\w*|sps|ms|us|ns|s(?:ec\w*)?)?(?![a-z])/;

/** The sampling rate that a remark states: "Sampling rate: 1000 Hz", "Abtastrate;500", "interval 2 ms", "fs=400". */
export function statedRate(lines: readonly { readonly text: string; readonly line: number }[]): StatedRate | null {
  for (const { text: whole, line } of lines) {
    const text = whole.slice(0, LONGEST_REMARK);
    const words = wordsOf(text);
    const rate = matchesAny(words, RATE_WORDS);
    const interval = matchesAny(words, INTERVAL_WORDS);
    if (!rate && !interval) continue;
    const found = numberAfterWord(normalised(text));
    if (!found) continue;
    const rateHz = rateFrom(found.value, found.unit, interval && !/hz/.test(found.unit));
    if (rateHz !== null && rateHz > 0 && rateHz < 1e7) return { rateHz, line, text: text.trim().slice(0, 80) };
  }
  return null;
}

function numberAfterWord(text: string): { value: number; unit: string } | null {
  const from = text.search(/[=:;,\t|]|\d/);
  const found = from < 0 ? null : NUMBER.exec(text.slice(from));
  if (!found) return null;
  const label = /\(\s*(k?hz|ms|us|ns|s)\s*\)|\[\s*(k?hz|ms|us|ns|s)\s*\]/.exec(text);
  return { value: Number(found[1]!.replace(',', '.')), unit: found[2] ?? label?.[1] ?? label?.[2] ?? '' };
}

const SECONDS: Readonly<Record<string, number>> = { s: 1, sec: 1, ms: 1e-3, us: 1e-6, ns: 1e-9 };

function rateFrom(value: number, unit: string, interval: boolean): number | null {
  if (unit === 'khz') return value * 1000;
  if (/hz|^1?\/s|sampl|sps/.test(unit)) return value;
  const seconds = SECONDS[unit] ?? (unit.startsWith('sec') ? 1 : undefined);
  if (interval) return seconds !== undefined && value > 0 ? 1 / (value * seconds) : null;
  // A bare number after 'rate' is in Hz; a time after 'rate' ("rate: 10 ms") is the interval.
  return seconds !== undefined ? 1 / (value * seconds) : value;
}

/** The unit of acceleration that a remark states: "Unit: g", "Einheit; m/s²", "scale 16384 LSB/g". */
export function statedUnit(lines: readonly { readonly text: string }[]): SaidUnit | null {
  for (const { text: whole } of lines) {
    const text = whole.slice(0, LONGEST_REMARK);
    const because = `a remark above the table says "${text.trim().slice(0, 60)}"`;
    const scale = /(\d+(?:\.\d+)?)\s*(?:lsb|counts?|digits?)\s*(?:\/|per)\s*g\b/i.exec(text);
    if (scale && Number(scale[1]) > 0)
      return { unit: 'counts', mps2PerUnit: STANDARD_GRAVITY_MPS2 / Number(scale[1]), because };
    if (!matchesAny(wordsOf(text), UNIT_WORDS)) continue;
    const unit = accelerationUnitOf(
      `acceleration (${text.slice(text.search(/[:=;,\t]/) + 1).replace(/[;,\s"()[\]]+$|^[\s"()[\]]+/g, '')})`,
    );
    if (unit !== null && unit !== 'counts') return { ...unit, because };
  }
  return null;
}
