/** Numbers that the thread under test and its watcher share. */
export interface Heartbeat {
  /** Index of the target at work. */
  readonly target: number;
  readonly index: number;
  /** Grows with every case. */
  readonly beats: number;
}

const TARGET = 0;
const INDEX = 1;
const BEATS = 2;

/** Memory for a heartbeat and the count of each target's cases. */
export const sharedCounts = (targets: number): Int32Array =>
  new Int32Array(new SharedArrayBuffer(4 * (BEATS + 1 + targets)));

export function beat(shared: Int32Array, target: number, index: number): void {
  Atomics.store(shared, TARGET, target);
  Atomics.store(shared, INDEX, index);
  Atomics.add(shared, BEATS, 1);
}

export const count = (shared: Int32Array, target: number): void => void Atomics.add(shared, BEATS + 1 + target, 1);

export const heartbeatOf = (shared: Int32Array): Heartbeat => ({
  target: Atomics.load(shared, TARGET),
  index: Atomics.load(shared, INDEX),
  beats: Atomics.load(shared, BEATS),
});

export const countsOf = (shared: Int32Array): number[] => [...shared.subarray(BEATS + 1)];
