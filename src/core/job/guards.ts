/** Small guards that take a value out of JSON, or say which key is wrong, why, and what to write instead. */
import { failure, success } from '../note.ts';
import type { Result } from '../note.ts';
import { nearestWord } from '../quantity/nearest-word.ts';

/** Checks a value found at a key path and gives it its type. Problems carry the key; file and line are added later. */
export type Guard<T> = (value: unknown, key: string) => Result<T>;

export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What a value is, for a sentence; long texts are cut. */
export const shown = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (isObject(value)) return 'an object';
  // What JSON.parse makes of 1e999.
  if (value === Infinity || value === -Infinity) return 'a number too large to be held';
  const text = JSON.stringify(value);
  return text.length > 50 ? `${text.slice(0, 50)}…` : text;
};

export const wrongKey = (key: string, found: string, remedy: string) =>
  failure({ code: 'job-key', key, message: `${key === '' ? 'The file' : key}: ${found}.`, remedy });

/** Longest text of a field; more is a mistake, and would choke the form. */
const LONGEST_TEXT = 100_000;

export const text: Guard<string> = (value, key) =>
  typeof value === 'string' && value.length <= LONGEST_TEXT
    ? success(value)
    : wrongKey(key, `a text is expected, but it holds ${shown(value)}`, 'Write a text in double quotes.');

export const nonEmptyText: Guard<string> = (value, key) => {
  const checked = text(value, key);
  return checked.ok && checked.value.trim() === ''
    ? wrongKey(key, 'it is empty', 'Write a text in double quotes.')
    : checked;
};

export const trueOrFalse: Guard<boolean> = (value, key) =>
  typeof value === 'boolean'
    ? success(value)
    : wrongKey(key, `true or false is expected, but it holds ${shown(value)}`, 'Write true or false, without quotes.');

export const oneOf =
  <T extends string>(...words: readonly T[]): Guard<T> =>
  (value, key) => {
    const word = words.find((known) => known === value);
    if (word !== undefined) return success(word);
    const near = typeof value === 'string' ? nearestWord(value, words) : undefined;
    const meant = near === undefined ? '' : `Did you mean "${near}"? `;
    return wrongKey(key, `${shown(value)} is not one of the known words`, `${meant}Write one of: ${words.join(', ')}.`);
  };

/** Longest list; a job has a handful of runs and measurements. */
const LONGEST_LIST = 10_000;

export const listOf =
  <T>(item: Guard<T>): Guard<readonly T[]> =>
  (value, key) => {
    if (!Array.isArray(value)) {
      return wrongKey(key, `a list is expected, but it holds ${shown(value)}`, 'Write a list in square brackets.');
    }
    if (value.length > LONGEST_LIST) return wrongKey(key, `it holds ${value.length} items`, 'Keep it under 10,000.');
    const items: T[] = [];
    for (const [index, entry] of value.entries()) {
      const checked = item(entry, `${key}[${index}]`);
      if (!checked.ok) return checked;
      items.push(checked.value);
    }
    return success(items);
  };

export const pairOf =
  <T>(item: Guard<T>): Guard<readonly [T, T]> =>
  (value, key) => {
    const list = listOf(item)(value, key);
    if (!list.ok) return list;
    const [first, second, ...more] = list.value;
    return first === undefined || second === undefined || more.length > 0
      ? wrongKey(key, `two values are expected, but it holds ${list.value.length}`, 'Write a list of two.')
      : success([first, second]);
  };
