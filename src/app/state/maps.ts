/** Maps that are replaced, never changed: what `$state.raw` wants. */

export const emptyMap = <K, V>(): ReadonlyMap<K, V> => new Map();

export const mapOf = <K, V>(entries: Iterable<readonly [K, V]>): ReadonlyMap<K, V> => new Map(entries);

export const withEntry = <K, V>(map: ReadonlyMap<K, V>, key: K, value: V): ReadonlyMap<K, V> =>
  new Map([...map, [key, value]]);

export function withoutEntry<K, V>(map: ReadonlyMap<K, V>, key: K): ReadonlyMap<K, V> {
  const copy = new Map(map);
  copy.delete(key);
  return copy;
}

/** A set for bookkeeping nothing on the screen depends on. */
export const mutableSet = <T>(): Set<T> => new Set();
