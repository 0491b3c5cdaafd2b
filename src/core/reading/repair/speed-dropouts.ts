/** A receiver or bus that loses its signal may write nought: no vehicle stops from a drive within a blink. */
import type { Track } from '../recording.ts';

/** A stop from above this, at more than so much, is none. m/s and m/s²; the hardest braking on a road is some 10 m/s². */
const DRIVING_MPS = 5;
const IMPOSSIBLE_MPS2 = 15;
/** Values up to this are noughts, m/s. */
const NOUGHT_MPS = 0.1;

/** Whether going between two values at this distance in time takes more than brakes or engine can do. */
const isLeap = (fromMps: number, toMps: number, withinS: number): boolean =>
  Math.max(fromMps, toMps) > DRIVING_MPS && Math.abs(fromMps - toMps) > IMPOSSIBLE_MPS2 * withinS;

export interface WithoutDropouts {
  readonly track: Track;
  /** Runs of noughts that were left out, and how long they lasted in all, s. */
  readonly count: number;
  readonly seconds: number;
}

/** Leaves out runs of noughts that the speed fell into, or rose out of, at an impossible rate. */
export const withoutDropouts = (track: Track): WithoutDropouts => {
  const { timeS, value, intervalS } = track;
  const kept: number[] = [];
  let count = 0;
  let seconds = 0;
  for (let i = 0; i < value.length;) {
    if (value[i]! > NOUGHT_MPS) {
      kept.push(i++);
      continue;
    }
    let end = i;
    while (end < value.length && value[end]! <= NOUGHT_MPS) end++;
    // A held column has long steps; the change itself took no longer than one.
    const within = (a: number, b: number): number => Math.min(timeS[b]! - timeS[a]!, Math.max(intervalS, 1e-3));
    const falls = i > 0 && isLeap(value[i - 1]!, value[i]!, within(i - 1, i));
    const rises = end < value.length && isLeap(value[end - 1]!, value[end]!, within(end - 1, end));
    if (falls || rises) {
      count++;
      seconds += (end < value.length ? timeS[end]! : timeS.at(-1)!) - timeS[i]!;
    } else for (let k = i; k < end; k++) kept.push(k);
    i = end;
  }
  if (count === 0) return { track, count, seconds };
  return {
    track: {
      ...track,
      timeS: Float64Array.from(kept, (i) => timeS[i]!),
      value: Float64Array.from(kept, (i) => value[i]!),
    },
    count,
    seconds,
  };
};
