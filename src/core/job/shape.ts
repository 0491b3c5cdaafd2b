/** Guards for objects: their known keys, their other names with units, and unions told apart by 'kind'. */
import { success } from '../note.ts';
import type { Result } from '../note.ts';
import { isObject, shown, wrongKey } from './guards.ts';
import type { Guard } from './guards.ts';

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
