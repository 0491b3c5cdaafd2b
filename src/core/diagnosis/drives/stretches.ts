/** Where a drive was steady, and where the vehicle moved at all, by its logged speed. */
import type { Span } from '../../reading/cut-recording.ts';
import type { Track } from '../../reading/recording.ts';
import { MovingExtreme } from './moving-extreme.ts';

/** A stretch driven at one speed. */
export interface Hold extends Span {
  readonly speedMps: number;
}

/** What a logged speed says of a drive. */
export interface Drive {
  /** Steady stretches, longest first. */
  readonly holds: readonly Hold[];
  /** Where it moved, in order of time. */
  readonly moving: readonly Span[];
  readonly movingS: number;
  readonly stoodS: number;
  /** Greatest over least speed while it moved. */
  readonly ratio: number;
}

const STEP_S = 1;
/** A longer log (s) is one of days, or has a hole of hours in it: no drive to be cut. */
const LONGEST_S = 20_000;
/** Slower than this a drive is setting off or coming to rest, m/s. */
const MOVING_MPS = 2;
/** So many steps before the log says that it moves it set off: it was slow at first, and a log is up to a second late. */
const SET_OFF_STEPS = 2;
/** A hold keeps its speed within this share to either side. A driver's foot is worth a percent, a grade a few. */
const HELD_WITHIN = 0.04;
/** In shorter holds weak lines are lost that the drive as a whole, followed along its log, still shows, s. */
const SHORTEST_HOLD_S = 25;
/** Below this (m/s) nothing is held on the road. */
const LEAST_HELD_MPS = 4;
/** A day's drive has more; the longest do. */
const MOST_HOLDS = 60;
/** A log lags by up to a second: so much is left out at the ends of a hold. */
const END_S = 1;

/** Speed at even steps from the first value to the last, by straight lines. */
const evenSpeeds = ({ timeS, value }: Track): Float64Array => {
  const last = timeS.length - 1;
  const count = Math.max(1, Math.floor((timeS[last]! - timeS[0]!) / STEP_S) + 1);
  let at = 0;
  return Float64Array.from({ length: count }, (_, k) => {
    const t = timeS[0]! + k * STEP_S;
    while (at + 1 < last && timeS[at + 1]! <= t) at++;
    const next = Math.min(last, at + 1);
    const width = timeS[next]! - timeS[at]!;
    const share = width > 0 ? Math.min(1, Math.max(0, (t - timeS[at]!) / width)) : 0;
    return value[at]! + share * (value[next]! - value[at]!);
  });
};

/** Longest run of free steps whose speeds stay within the share of their middle; null where none is long enough. */
const longestHold = (speeds: Float64Array, free: Uint8Array): { from: number; to: number } | null => {
  const spread = (1 + HELD_WITHIN) / (1 - HELD_WITHIN);
  const lowest = new MovingExtreme(speeds, (a, b) => a < b);
  const highest = new MovingExtreme(speeds, (a, b) => a > b);
  let best = { from: 0, to: 0 };
  let from = 0;
  for (let k = 0; k < speeds.length; k++) {
    const isOut = !free[k] || speeds[k]! < LEAST_HELD_MPS;
    if (isOut) from = k + 1;
    lowest.leaveBefore(from);
    highest.leaveBefore(from);
    if (isOut) continue;
    lowest.enter(k);
    highest.enter(k);
    while (highest.value > spread * lowest.value) {
      from += 1;
      lowest.leaveBefore(from);
      highest.leaveBefore(from);
    }
    if (k + 1 - from > best.to - best.from) best = { from, to: k + 1 };
  }
  return (best.to - best.from) * STEP_S >= SHORTEST_HOLD_S + 2 * END_S ? best : null;
};

/** Runs of steps at which the vehicle moved, as spans. */
const movingSpans = (speeds: Float64Array, startS: number): readonly Span[] => {
  const spans: Span[] = [];
  let from = -1;
  for (let k = 0; k <= speeds.length; k++) {
    const moves = k < speeds.length && speeds[k]! >= MOVING_MPS;
    if (moves && from < 0) from = k;
    if (moves || from < 0) continue;
    spans.push({ fromS: startS + Math.max(0, from - SET_OFF_STEPS) * STEP_S, toS: startS + (k - 1) * STEP_S });
    from = -1;
  }
  return spans.filter(({ fromS, toS }) => toS > fromS);
};

/**
 * @param log road or wheel speed, m/s
 * @returns null where it holds too little to be followed, or spans more than a long day's drive
 */
export const driveOf = (log: Track): Drive | null => {
  if (log.timeS.length < 4 || log.timeS.at(-1)! - log.timeS[0]! > LONGEST_S) return null;
  const speeds = evenSpeeds(log);
  const startS = log.timeS[0]!;
  const moved = speeds.filter((v) => v >= MOVING_MPS);
  const moving = movingSpans(speeds, startS);
  const free = new Uint8Array(speeds.length).fill(1);
  const holds: Hold[] = [];
  while (holds.length < MOST_HOLDS) {
    const found = longestHold(speeds, free);
    if (!found) break;
    const { from, to } = found;
    free.fill(0, from, to);
    const held = speeds.subarray(from, to);
    holds.push({
      fromS: startS + from * STEP_S + END_S,
      toS: startS + (to - 1) * STEP_S - END_S,
      speedMps: held.reduce((sum, v) => sum + v, 0) / held.length,
    });
  }
  return {
    holds,
    moving,
    movingS: moved.length * STEP_S,
    stoodS: (speeds.length - moved.length) * STEP_S,
    ratio: moved.length > 0 ? Math.max(...moved) / Math.min(...moved) : 1,
  };
};
