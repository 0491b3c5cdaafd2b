/**
 * The time of every row, the sampling rate, the gaps, and whether uneven stamps mean uneven sampling.
 *
 * Rows that share a stamp form a group; times are judged by the first row of each group. The residual of a group is
 * its stamp minus its row number times the mean step:
 * - it jumps up and stays up: rows are missing. Up to MISSING_SPLIT steps, times go on after a hole; beyond, the
 *   recording is split.
 * - sampling is held to be even (the stamps' unevenness being their own) where
 *   (a) a fifth or more of the rows share their stamp with the row before: no sensor gives two samples at one time,
 *       so the stamps are coarse; or
 *   (b) all but one in 200 stamps lie within EVEN_WITHIN of a step of the even grid: rounded stamps, or scatter so
 *       small that it does not matter (sd 0.05 of a step takes 1 % off a tone at half the sampling rate); or
 *   (c) one stamp in 100 or more follows the one before by less than 0.3 of a step, and the residual does not wander:
 *       rows written late and in bunches. A sampling clock cannot run that much too fast and come back.
 * - otherwise the sampling itself is uneven, and the stamps are kept as sample times.
 * A clock that drifts slowly against the even grid is followed by straight lines over 256 groups.
 * The limits are judgement.
 */
import { medianOf } from './gravity-size.ts';
import { blockScatter, countedRows, fitPieces, groupsOf, quantile, rootMeanSquare, withoutDrift } from './time-fit.ts';
import type { Fit, Groups } from './time-fit.ts';

export const MISSING_SPLIT = 4.5;
const EVEN_WITHIN = 0.16;
export const SHARED_STAMPS = 0.2;

export interface TimeLine {
  /** Time of every row, s, first row 0. */
  readonly times: Float64Array;
  readonly rateHz: number;
  readonly jitterSdS: number;
  readonly even: boolean;
  /** Sample times leave the even grid of the recording's rate: there are holes, drift or true unevenness. */
  readonly uniform: boolean;
  /** Rows at which a new piece begins. */
  readonly breaks: readonly number[];
  /** Rows before which a few samples are missing, and how many. */
  readonly holes: readonly { readonly row: number; readonly missing: number }[];
  readonly sharedStamps: number;
  readonly because: string;
}

/** Share of rows that have the stamp of the row before. */
export function sharedShare(stamps: Float64Array): number {
  let shared = 0;
  for (let i = 1; i < stamps.length; i++) if (stamps[i] === stamps[i - 1]) shared++;
  return shared / Math.max(1, stamps.length);
}

/** Mean step by the median over windows, so that gaps do not count. */
function typicalStep({ row, time }: Groups): number {
  const count = row.length;
  const width = Math.max(1, Math.min(64, count >> 2));
  const slopes: number[] = [];
  const stride = Math.max(1, Math.floor(count / 4000));
  for (let j = 0; j + width < count; j += stride)
    slopes.push((time[j + width]! - time[j]!) / (row[j + width]! - row[j]!));
  return medianOf(slopes);
}

interface Shift {
  readonly group: number;
  readonly missing: number;
}

/** Where the residual jumps up and stays up, and by how many steps. */
function shiftsOf({ row, time }: Groups, step: number, already: ReadonlySet<number>): Shift[] {
  const found: Shift[] = [];
  const residual = (j: number): number => time[j]! - row[j]! * step;
  const AROUND = 6;
  for (let j = 0; j + 1 < row.length; j++) {
    if (already.has(row[j + 1]!)) continue;
    const own = residual(j + 1) - residual(j);
    if (own < 0.5 * step) continue;
    let past = -Infinity;
    for (let k = Math.max(0, j - AROUND + 1); k <= j; k++) past = Math.max(past, residual(k));
    let future = Infinity;
    for (let k = j + 1; k <= Math.min(row.length - 1, j + AROUND); k++) future = Math.min(future, residual(k));
    const missing = Math.min(own, future - past) / step;
    if (missing > 0.5) found.push({ group: j + 1, missing });
  }
  return found;
}

/** @param times stamps in seconds, in place: becomes the time of every row; never falling by more than a few steps */
export function fitTimeLine(times: Float64Array, breaksBefore: readonly number[]): TimeLine | null {
  const groups = groupsOf(times);
  const shared = 1 - groups.row.length / times.length;
  const coarse = shared >= SHARED_STAMPS;
  if (groups.row.length < 3 || times.length < 3) return null;
  const rough = typicalStep(groups);
  if (!(rough > 0)) return null;
  const shifts = shiftsOf(groups, rough, new Set(breaksBefore));
  const coarseness = coarse ? medianOf(groups.time.slice(1).map((t, j) => t - groups.time[j]!)) : 0;
  const splitAt = Math.max(MISSING_SPLIT, (0.25 * coarseness) / rough);
  const gaps = shifts.filter((shift) => shift.missing > splitAt);
  const breaks = [...breaksBefore, ...gaps.map((gap) => groups.row[gap.group]!)].sort((a, b) => a - b);
  const holes = coarse
    ? []
    : shifts
        .filter((s) => s.missing <= splitAt)
        .map((s) => ({ row: groups.row[s.group]!, missing: Math.max(1, Math.round(s.missing)) }));
  const index = countedRows(times.length, holes);
  const fit = fitPieces(groups, index, breaks, coarse);
  if (!fit) return null;
  const { step, residuals } = fit;
  const local = withoutDrift(residuals, breaks, groups);
  const jitterSdS = rootMeanSquare(local.rest);
  const late = isLate(groups, step, local.rest);
  const within = quantile(local.rest.map(Math.abs), 0.995);
  const even = coarse || within <= EVEN_WITHIN * step || late;
  const drifting = Math.max(...local.drift.map(Math.abs)) > 0.5 * step;
  const because = coarse
    ? 'many rows share a time stamp, so the rows are spread evenly'
    : within <= EVEN_WITHIN * step
      ? 'the time stamps are even within their own coarseness'
      : late
        ? 'rows were written late and in bunches, so the rows are spread evenly'
        : 'the time stamps are uneven and are kept as sample times';
  if (even) spread(times, groups, index, fit, drifting && !coarse ? local.drift : null, breaks);
  else makeRising(times, breaks);
  const rateHz = 1 / step;
  const zero = times[0]!;
  for (let i = 0; i < times.length; i++) times[i] = times[i]! - zero;
  return {
    times,
    rateHz,
    jitterSdS,
    even,
    uniform: even && !drifting,
    breaks,
    holes: even ? holes : [],
    sharedStamps: shared,
    because,
  };
}

/** Written late and in bunches: very short steps, and a residual that always comes back. */
function isLate(groups: Groups, step: number, rest: Float64Array): boolean {
  let short = 0;
  for (let j = 1; j < groups.time.length; j++) if (groups.time[j]! - groups.time[j - 1]! < 0.3 * step) short++;
  if (short < 0.01 * groups.time.length) return false;
  return rootMeanSquare(rest) < 1.6 * blockScatter(rest, 32);
}

function spread(
  times: Float64Array,
  groups: Groups,
  index: Float64Array,
  fit: Fit,
  drift: Float64Array | null,
  breaks: readonly number[],
): void {
  let piece = 0;
  let group = 0;
  let next = 0;
  for (let i = 0; i < times.length; i++) {
    if (next < breaks.length && breaks[next] === i) {
      next++;
      piece++;
    }
    while (group + 1 < groups.row.length && groups.row[group + 1]! <= i) group++;
    times[i] = fit.starts[piece]! + fit.step * index[i]! + (drift ? drift[group]! : 0);
  }
}

/** Equal or falling stamps are set between the last good one and the next. */
function makeRising(times: Float64Array, breaks: readonly number[]): void {
  const starts = new Set(breaks);
  for (let i = 1; i < times.length; i++) {
    if (times[i]! > times[i - 1]! || starts.has(i)) continue;
    let to = i;
    while (to < times.length && !(times[to]! > times[i - 1]!)) to++;
    const from = i - 1;
    const rise =
      to < times.length
        ? (times[to]! - times[from]!) / (to - from)
        : Math.max(1e-9, times[from]! - times[Math.max(0, from - 1)]!);
    for (let k = i; k < to; k++) times[k] = times[from]! + (k - from) * rise;
  }
}
