/** Small guards that take a value out of JSON, or say which key is wrong, why, and what to write instead. */
import { failure, success } from '../note.ts';
import type { Result } from '../note.ts';

/** Checks a value found at a key path and gives it its type. Problems carry the key; file and line are added later. */
export type Guard<T> = (value: unknown, key: string) => Result<T>;

export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What a value is, for a sentence; long texts are cut. */
export const shown = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (isObject(value)) return 'an object';
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
    return word === undefined
      ? wrongKey(key, `${shown(value)} is not one of the known words`, `Write one of: ${words.join(', ')}.`)
      : success(word);
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

export interface ShapeOptions<T> {
  readonly required: readonly (keyof T & string)[];
  /** Other names of keys: 'speed' for 'speedMps'. Their values must be texts that carry their unit. */
  readonly withUnit?: Readonly<Record<string, keyof T & string>>;
}

/** One guard for every key of T; a key added to T does not compile until it has its guard here. */
export type Fields<T> = { readonly [K in keyof T]-?: Guard<Exclude<T[K], undefined>> };

const carriesUnit = (value: unknown): boolean =>
  typeof value === 'string' || (Array.isArray(value) && value.every((item) => typeof item === 'string'));

/**
 * An object with known keys. Keys it does not know stay in the object, so that saving loses nothing; null counts as
 * absent.
 */
export const shape =
  <T extends object>(fields: Fields<T>, { required, withUnit = {} }: ShapeOptions<T>): Guard<T> =>
  (value, key) => {
    const inside = (name: string): string => (key === '' ? name : `${key}.${name}`);
    if (!isObject(value)) {
      return wrongKey(key, `an object is expected, but it holds ${shown(value)}`, 'Write keys and values in braces.');
    }
    const guards = new Map<string, Guard<unknown>>(Object.entries(fields));
    const entries = new Map<string, unknown>();
    for (const [name, entry] of Object.entries(value)) {
      const alias = Object.hasOwn(withUnit, name) ? withUnit[name] : undefined;
      const target = alias ?? name;
      const guard = guards.get(target);
      if (guard === undefined) {
        entries.set(name, entry);
        continue;
      }
      if (entry === null) continue;
      if (entries.has(target))
        return wrongKey(inside(name), `it is given twice, also as ${target}`, 'Keep one of them.');
      if (alias !== undefined && !carriesUnit(entry)) {
        const remedy = `Write it as a text with its unit, or name the key ${alias}.`;
        return wrongKey(inside(name), `${shown(entry)} has no unit`, remedy);
      }
      const checked = guard(entry, inside(name));
      if (!checked.ok) return checked;
      entries.set(target, checked.value);
    }
    const missing = required.find((name) => !entries.has(name));
    if (missing !== undefined) {
      const probe = guards.get(missing)?.(undefined, inside(missing));
      const remedy = probe !== undefined && !probe.ok ? probe.problem.remedy : 'Add it.';
      return wrongKey(inside(missing), 'it is missing', remedy);
    }
    // The guards above have checked every key of T; this is the one place where that becomes its type.
    return success(Object.fromEntries(entries) as T);
  };

/** A union told apart by its 'kind'. */
export const byKind =
  <T extends { readonly kind: string }>(variants: {
    readonly [K in T['kind']]: Guard<Extract<T, { readonly kind: K }>>;
  }): Guard<T> =>
  (value, key) => {
    if (!isObject(value)) return shape<object>({}, { required: [] })(value, key) as Result<T>;
    const guards = new Map<string, Guard<unknown>>(Object.entries(variants));
    const guard = typeof value['kind'] === 'string' ? guards.get(value['kind']) : undefined;
    return guard === undefined
      ? wrongKey(
          `${key}.kind`,
          `${shown(value['kind'])} is not a known kind`,
          `Write one of: ${[...guards.keys()].join(', ')}.`,
        )
      : (guard(value, key) as Result<T>);
  };
