/** A result as a plain list, so that hundreds of them stay readable in one file. */

export type Leaf = number | string | boolean | null;

/** Told elsewhere, and the same for every measurement held to one limit. */
const LIMIT_WORDS: readonly string[] = ['title', 'unit', 'direction', 'basis', 'source', 'note'];

/** All numbers and words of a value, in the order of its keys. What JSON cannot hold is told as a word. */
export const leaves = (value: unknown): Leaf[] => {
  if (typeof value === 'number') return [Number.isFinite(value) ? value : String(value)];
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return [value];
  if (value === undefined || typeof value === 'function') return [];
  const isLimit = 'id' in (value as object) && 'source' in (value as object);
  return Object.entries(value as object).flatMap(([key, one]) =>
    isLimit && LIMIT_WORDS.includes(key) ? [] : leaves(one),
  );
};
