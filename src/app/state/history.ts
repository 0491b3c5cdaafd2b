/** Undo and redo over whole values. Plain data in, plain data out. */

export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** What the last change touched and when, so that one word typed is one step back. */
  readonly last: { readonly what: string; readonly atMs: number } | null;
}

/** Steps kept; beyond this the oldest is let go. */
const LIMIT = 200;
/** Changes to the same thing within this time are one step. */
const JOIN_MS = 1500;

export const startHistory = <T>(present: T): History<T> => ({ past: [], present, future: [], last: null });

/** @param what Name of what is changed, such as a field id; changes to one thing in quick order are one step. */
export function change<T>(history: History<T>, present: T, what: string, atMs: number): History<T> {
  if (present === history.present) return history;
  const last = { what, atMs };
  const joins = history.last !== null && history.last.what === what && atMs - history.last.atMs < JOIN_MS;
  const past = joins ? history.past : [...history.past, history.present].slice(-LIMIT);
  return { past, present, future: [], last };
}

/** The same history where there is nothing to take back. */
export function undo<T>(history: History<T>): History<T> {
  const present = history.past.at(-1);
  if (present === undefined) return history;
  return { past: history.past.slice(0, -1), present, future: [history.present, ...history.future], last: null };
}

/** The same history where there is nothing to do again. */
export function redo<T>(history: History<T>): History<T> {
  const [present, ...future] = history.future;
  if (present === undefined) return history;
  return { past: [...history.past, history.present], present, future, last: null };
}
