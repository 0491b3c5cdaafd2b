/**
 * The time of every row, the sampling rate, the gaps, and whether uneven stamps mean uneven sampling.
 *
 * The residual of a stamp is what it is off an even grid of the mean step.
 * - It jumps up and stays up: rows are missing. Up to MISSING_SPLIT steps, times go on after a hole; beyond, the
 *   recording is split.
 * - Sampling is held to be even, the unevenness being the stamps' own, where
 *   (a) a fifth of the rows or more follow the row before by less than 0.3 of a step: no sensor samples like that, the
 *       stamps are whole seconds, or those of bunches of rows; or
 *   (b) all but one in 200 stamps lie within EVEN_WITHIN of a step of the grid, or within half the resolution of the
 *       stamps: rounding, or scatter so small that it does not matter (an sd of 0.05 of a step takes 1 % off a tone at
 *       half the sampling rate), unless the samples themselves follow it: in the image of a tone far above half the rate
 *       it does matter, and tells it from a tone; or
 *   (c) one stamp in 100 or more is that close to the one before, and the residual does not wander: rows written late.
 *       A sampling clock cannot run that much too fast and come back. Not so where the samples themselves know of it.
 * - Otherwise the sampling itself is uneven, and the stamps are kept as sample times.
 * A clock that drifts slowly against the grid is followed by straight lines. The limits are judgment.
 */
import { areTrueInstants } from './true-instants.ts';
import { StampGroups } from '../repair/stamp-groups.ts';
import { CountedRows, driftAt, fitPieces, latenessOf, roundStep, scatterOf } from './time-fit.ts';
import type { Fit, Hole } from './time-fit.ts';

const MISSING_SPLIT = 4.5;
const EVEN_WITHIN = 0.16;
const OUTSIDE = 0.005;
/** Unevenness under this share of a step (sd) is not worth asking the samples about. */
const TRIFLING = 0.005;
/** Stamps this near a grid (sd, of a step) leave no doubt whether one step passed or two, uneven as they are. */
const NEAR_GRID = 0.25;
const LATE_SHARE = 0.01;
/** Whole scatter over scatter within 32 stamps: 1 for independent lateness, near 3 for a wandering clock. */
const WANDERING = 1.6;

const EVEN_STAMPS = 'the time stamps are even within their own coarseness';

export interface TimeLine {
  readonly rateHz: number;
  readonly jitterSdS: number;
  readonly even: boolean;
  /** The times are the even grid of the rate within each piece, holes aside. */
  readonly uniform: boolean;
  /** Rows at which a new piece begins. */
  readonly breaks: readonly number[];
  readonly holes: readonly Hole[];
  readonly because: string;
}

/**
 * @param times stamps in seconds; in place becomes the time of every row, s, first row 0
 * @param setBacks rows before which the clock was set back
 * @param lostBefore rows before which rows of the file could not be used
 * @param axes the samples, in any unit
 * @returns null where the stamps do not run
 */
export function fitTimeLine(
  times: Float64Array,
  setBacks: readonly number[],
  lostBefore: readonly number[] = [],
  axes: readonly Float64Array[] = [],
): TimeLine | null {
  const grid = regularGrid(times, axes);
  if (grid && setBacks.length === 0) return grid;
  const groups = new StampGroups(times, lostBefore);
  if (groups.count < 3) return null;
  const rough = groups.typicalStep;
  if (!(rough > 0)) return null;
  const { gaps, holes } = missingRows(groups, rough, new Set(setBacks));
  const breaks = [...new Set([...setBacks, ...gaps])].sort((a, b) => a - b);
  const even = judged(groups, breaks, holes, axes);
  // Holes are counted in steps of a grid; without one they mean nothing. With one, rows over time would be too low a rate.
  const onGrid = even !== null && (even.even || even.jitterSdS < NEAR_GRID * even.fit.step);
  const line = even && !onGrid && holes.length > 0 ? judged(groups, breaks, [], axes) : even;
  if (!line) return null;
  if (line.even) spread(times, groups, line);
  else makeRising(times, breaks, line.fit.step);
  const zero = times[0]!;
  for (let i = 0; i < times.length; i++) times[i] = times[i]! - zero;
  const { fit, drifting, ...rest } = line;
  return { rateHz: 1 / fit.step, uniform: line.even && !drifting, breaks, ...rest };
}

/**
 * The usual case in one pass: every stamp close to the line through the first and the last. Nothing can be missing
 * then, and the rows may be taken as even; null where a single stamp is further off, or the samples follow the stamps.
 */
function regularGrid(times: Float64Array, axes: readonly Float64Array[]): TimeLine | null {
  const last = times.length - 1;
  if (last < 3) return null;
  const zero = times[0]!;
  const chord = (times[last]! - zero) / last;
  if (!(chord > 0)) return null;
  const limit = EVEN_WITHIN * chord;
  const middle = last / 2;
  let sum = 0;
  let squares = 0;
  let moment = 0;
  for (let i = 0; i <= last; i++) {
    const rest = times[i]! - zero - i * chord;
    if (!(Math.abs(rest) <= limit)) return null;
    sum += rest;
    squares += rest * rest;
    moment += rest * (i - middle);
  }
  const rows = last + 1;
  const mean = sum / rows;
  // Least squares about the chord; the sum of (i - middle)² is rows·(rows² - 1)/12.
  const spreadOfRows = (rows * (rows * rows - 1)) / 12;
  const slope = moment / spreadOfRows;
  const variance = squares / rows - mean * mean - (slope * slope * spreadOfRows) / rows;
  const jitterSdS = Math.sqrt(Math.max(0, variance));
  const step = roundStep(chord + slope, jitterSdS, rows);
  if (jitterSdS > TRIFLING * step) {
    const lateS = times.map((t, i) => t - zero - i * step - mean);
    if (areTrueInstants(lateS, step, axes)) return null;
  }
  for (let i = 0; i <= last; i++) times[i] = i * step;
  return { rateHz: 1 / step, uniform: true, breaks: [], holes: [], even: true, jitterSdS, because: EVEN_STAMPS };
}

/** Where the residual jumps up and stays up. */
function missingRows(groups: StampGroups, step: number, known: ReadonlySet<number>): { gaps: number[]; holes: Hole[] } {
  const AROUND = 6;
  const gaps: number[] = [];
  const holes: Hole[] = [];
  const splitAt = groups.coarse ? Math.max(MISSING_SPLIT, (0.25 * groups.typicalGroupStep) / step) : MISSING_SPLIT;
  const residual = (j: number): number => groups.time(j) - groups.row(j) * step;
  // The first bunch of coarse stamps is incomplete, here and after every gap.
  for (let j = groups.coarse ? 1 : 0; j + 1 < groups.count; j++) {
    const own = residual(j + 1) - residual(j);
    if (own < 0.5 * step || known.has(groups.row(j + 1))) continue;
    let past = -Infinity;
    for (let k = Math.max(0, j - AROUND + 1); k <= j; k++) past = Math.max(past, residual(k));
    let future = Infinity;
    for (let k = j + 1; k <= Math.min(groups.count - 1, j + AROUND); k++) future = Math.min(future, residual(k));
    const missing = Math.min(own, future - past) / step;
    if (missing > splitAt) {
      gaps.push(groups.row(j + 1));
      if (groups.coarse) j++;
    } else if (!groups.coarse && missing > 0.6) holes.push({ row: groups.row(j + 1), missing: Math.round(missing) });
  }
  return { gaps, holes };
}

interface Judged {
  readonly fit: Fit;
  readonly holes: readonly Hole[];
  readonly drifting: boolean;
  readonly even: boolean;
  readonly jitterSdS: number;
  readonly because: string;
}

function judged(
  groups: StampGroups,
  breaks: readonly number[],
  holes: readonly Hole[],
  axes: readonly Float64Array[],
): Judged | null {
  const rows = new CountedRows(holes);
  const fit = fitPieces(groups, rows, breaks);
  if (!fit) return null;
  const scatter = scatterOf(groups, rows, fit, Math.max(EVEN_WITHIN * fit.step, 0.55 * groups.resolution));
  const close = scatter.outside <= OUTSIDE;
  // However close to even: where the samples show that they were taken at their stamps, they were.
  const areInstants =
    !groups.coarse &&
    scatter.sd > TRIFLING * fit.step &&
    areTrueInstants(latenessOf(groups, rows, fit), fit.step, axes);
  const late = groups.shortShare >= LATE_SHARE && scatter.sd < WANDERING * scatter.blockSd && (close || !areInstants);
  const drifting = fit.pieces.some((piece) => piece.drift.some((drift) => Math.abs(drift) > 0.5 * fit.step));
  const because = groups.coarse
    ? 'many rows share a time stamp, so the rows are spread evenly'
    : close && !areInstants
      ? EVEN_STAMPS
      : late
        ? 'rows were written late and in bunches, so the rows are spread evenly'
        : 'the time stamps are uneven and are kept as sample times';
  return { fit, holes, drifting, even: groups.coarse || (close ? !areInstants : late), jitterSdS: scatter.sd, because };
}

/** Rows onto the lines of the fit. */
function spread(times: Float64Array, groups: StampGroups, { fit, holes, drifting }: Judged): void {
  const rows = new CountedRows(holes);
  fit.pieces.forEach((piece, p) => {
    const from = p === 0 ? 0 : groups.row(piece.from);
    const next = fit.pieces[p + 1];
    const to = next ? groups.row(next.from) : times.length;
    let group = piece.from;
    let late = 0;
    for (let i = from; i < to; i++) {
      while (group + 1 < piece.to && groups.row(group + 1) <= i) group++;
      times[i] = piece.start + fit.step * rows.of(i) + (drifting ? driftAt(piece, group) : 0) + late;
      if (i !== from || p === 0) continue;
      // Where stamps are wild, the lines of two pieces may cross: the later piece is moved behind the earlier.
      late = Math.max(0, times[i - 1]! + fit.step - times[i]!);
      times[i] = times[i]! + late;
    }
  });
}

/**
 * Stamps that are equal to or before the last good one are set between it and the next; a piece that begins before the
 * end of the last is moved behind it.
 */
function makeRising(times: Float64Array, breaks: readonly number[], step: number): void {
  const starts = new Set(breaks);
  // Less than this apart two stamps are one: the difference is rounding, and would be lost in the next sum.
  const least = 1e-6 * step;
  let moved = 0;
  for (let i = 1; i < times.length; i++) {
    times[i] = times[i]! + moved;
    if (times[i]! > times[i - 1]! + least) continue;
    if (starts.has(i)) {
      const move = times[i - 1]! + step - times[i]!;
      times[i] = times[i]! + move;
      moved += move;
      continue;
    }
    const from = i - 1;
    let to = i;
    while (
      to < times.length &&
      !starts.has(to) &&
      !((to === i ? times[to]! : times[to]! + moved) > times[from]! + least)
    )
      to++;
    const open = to === times.length || starts.has(to);
    const rise = open ? 1e-3 * step : (times[to]! + moved - times[from]!) / (to - from);
    for (let k = i; k < to; k++) times[k] = times[from]! + (k - from) * rise;
    i = to - 1;
  }
}
