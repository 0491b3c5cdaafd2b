/** The straight lines under the time base: one step for all pieces of a recording, a start for each, slow drift. */
import type { StampGroups } from '../repair/stamp-groups.ts';

/** Groups over which a slow drift of the clock is averaged. */
const DRIFT_BLOCK = 256;

export interface Hole {
  /** Row before which samples are missing. */
  readonly row: number;
  readonly missing: number;
}

/** Row numbers with the missing rows counted. */
export class CountedRows {
  readonly #rows: readonly number[];
  readonly #before: readonly number[];

  constructor(holes: readonly Hole[]) {
    let sum = 0;
    this.#rows = holes.map((hole) => hole.row);
    this.#before = holes.map((hole) => (sum += hole.missing));
  }

  of(row: number): number {
    if (this.#rows.length === 0) return row;
    let low = 0;
    let high = this.#rows.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#rows[middle]! <= row) low = middle + 1;
      else high = middle;
    }
    return low === 0 ? row : row + this.#before[low - 1]!;
  }
}

export interface Piece {
  /** Groups from…to (exclusive). */
  readonly from: number;
  readonly to: number;
  /** The first group's rows began before the recording did: its first row is late by an unknown time. */
  readonly trusted: number;
  /** Time of counted row 0 on this piece's line, s. */
  start: number;
  /** Means of the residual over blocks of groups, s. */
  drift: Float64Array;
}

export interface Fit {
  readonly step: number;
  readonly pieces: readonly Piece[];
}

/** The groups between the breaks. */
function piecesOf(groups: StampGroups, breaks: readonly number[]): Piece[] {
  const cuts = [...breaks.map((row) => groups.from(row)), groups.count];
  let from = 0;
  const pieces: Piece[] = [];
  for (const to of cuts) {
    if (to <= from) continue;
    const trusted = groups.coarse && to - from > 2 ? from + 1 : from;
    pieces.push({ from, to, trusted, start: 0, drift: new Float64Array(0) });
    from = to;
  }
  return pieces;
}

/** Least squares over the first rows of the groups; null where the stamps do not run. */
export function fitPieces(groups: StampGroups, rows: CountedRows, breaks: readonly number[]): Fit | null {
  const pieces = piecesOf(groups, breaks);
  let over = 0;
  let under = 0;
  let squares = 0;
  let count = 0;
  const means = pieces.map(({ trusted, to }) => {
    const x0 = rows.of(groups.row(trusted));
    const y0 = groups.time(trusted);
    let x = 0;
    let y = 0;
    for (let j = trusted; j < to; j++) {
      x += rows.of(groups.row(j)) - x0;
      y += groups.time(j) - y0;
    }
    x /= to - trusted;
    y /= to - trusted;
    for (let j = trusted; j < to; j++) {
      const dx = rows.of(groups.row(j)) - x0 - x;
      const dy = groups.time(j) - y0 - y;
      over += dx * dy;
      under += dx * dx;
      squares += dy * dy;
      count++;
    }
    return { x: x0 + x, y: y0 + y };
  });
  if (!(under > 0) || !(over > 0)) return null;
  const slope = over / under;
  const step = roundStep(slope, Math.sqrt(Math.max(0, squares - slope * over) / count), count);
  pieces.forEach((piece, p) => (piece.start = means[p]!.y - step * means[p]!.x));
  for (const piece of pieces) piece.drift = driftOf(groups, rows, step, piece);
  return { step, pieces };
}

/**
 * A rate of 99.99998 Hz is 100 Hz where the scatter of the stamps can explain the difference: within three standard
 * errors of the slope, sd·√12/n^1.5 (the textbook variance of a regression on equally spaced points), and always
 * within 1e-9, which is rounding.
 */
export function roundStep(step: number, sd: number, rows: number): number {
  const slack = (3 * Math.sqrt(12) * sd) / rows ** 1.5 + 1e-9 * step;
  for (let digits = 1; digits <= 5; digits++) {
    const rate = Number((1 / step).toPrecision(digits));
    if (Math.abs(1 / rate - step) < slack) return 1 / rate;
  }
  return step;
}

const residualOf = (groups: StampGroups, rows: CountedRows, step: number, piece: Piece, group: number): number =>
  groups.time(group) - piece.start - step * rows.of(groups.row(group));

function driftOf(groups: StampGroups, rows: CountedRows, step: number, piece: Piece): Float64Array {
  const length = piece.to - piece.trusted;
  const blocks = Math.max(1, Math.round(length / DRIFT_BLOCK));
  const means = new Float64Array(blocks);
  for (let b = 0; b < blocks; b++) {
    const from = piece.trusted + Math.floor((b * length) / blocks);
    const to = piece.trusted + Math.floor(((b + 1) * length) / blocks);
    let sum = 0;
    for (let j = from; j < to; j++) sum += residualOf(groups, rows, step, piece, j);
    means[b] = sum / (to - from);
  }
  return means;
}

/** Drift at a group: straight lines through the middles of the blocks, carried on at both ends. */
export function driftAt({ drift, trusted, to }: Piece, group: number): number {
  if (drift.length === 1) return drift[0]!;
  const place = ((group - trusted + 0.5) * drift.length) / (to - trusted) - 0.5;
  const low = Math.min(drift.length - 2, Math.max(0, Math.floor(place)));
  return drift[low]! + (drift[low + 1]! - drift[low]!) * (place - low);
}

/** How late each row is against the grid and its drift, s; NaN for rows that share a stamp. */
export function latenessOf(groups: StampGroups, rows: CountedRows, fit: Fit): Float64Array {
  const lateS = new Float64Array(groups.row(groups.count - 1) + 1).fill(NaN);
  for (const piece of fit.pieces) {
    for (let j = piece.trusted; j < piece.to; j++) {
      lateS[groups.row(j)] = residualOf(groups, rows, fit.step, piece, j) - driftAt(piece, j);
    }
  }
  return lateS;
}

/** Scatter of the residuals about the drift: standard deviation, the same within 32 stamps, share beyond a limit. */
export function scatterOf(
  groups: StampGroups,
  rows: CountedRows,
  fit: Fit,
  limit: number,
): { sd: number; blockSd: number; outside: number } {
  const BLOCK = 32;
  let count = 0;
  let squares = 0;
  let outside = 0;
  let within = 0;
  let blocks = 0;
  for (const piece of fit.pieces) {
    let sum = 0;
    let square = 0;
    let inBlock = 0;
    for (let j = piece.trusted; j < piece.to; j++) {
      const rest = residualOf(groups, rows, fit.step, piece, j) - driftAt(piece, j);
      count++;
      squares += rest * rest;
      if (Math.abs(rest) > limit) outside++;
      sum += rest;
      square += rest * rest;
      if (++inBlock < BLOCK) continue;
      within += Math.max(0, square - (sum * sum) / BLOCK);
      blocks++;
      sum = square = inBlock = 0;
    }
  }
  const sd = Math.sqrt(squares / Math.max(1, count));
  const blockSd = blocks > 0 ? Math.sqrt(within / (blocks * (BLOCK - 1))) : sd;
  return { sd, blockSd, outside: outside / Math.max(1, count) };
}
