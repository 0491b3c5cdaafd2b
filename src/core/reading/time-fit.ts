/** The straight lines under the time base: one step for all pieces of a recording, a start for each, slow drift. */
import type { StampGroups } from './stamp-groups.ts';

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
      over += dx * (groups.time(j) - y0 - y);
      under += dx * dx;
    }
    return { x: x0 + x, y: y0 + y };
  });
  if (!(under > 0) || !(over > 0)) return null;
  const step = roundStep(over / under, rows.of(groups.row(groups.count - 1)));
  pieces.forEach((piece, p) => (piece.start = means[p]!.y - step * means[p]!.x));
  for (const piece of pieces) piece.drift = driftOf(groups, rows, step, piece);
  return { step, pieces };
}

/**
 * A rate of 99.99998 Hz is 100 Hz where the difference adds up to less than a twentieth of a step over the whole
 * recording, and so cannot be told from rounding.
 */
export function roundStep(step: number, rows: number): number {
  for (let digits = 1; digits <= 5; digits++) {
    const rate = Number((1 / step).toPrecision(digits));
    if (Math.abs(rate * step - 1) * rows < 0.05) return 1 / rate;
  }
  return step;
}

export const residualOf = (groups: StampGroups, rows: CountedRows, step: number, piece: Piece, group: number): number =>
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

/** Drift at a group: straight lines between the middles of the blocks. */
export function driftAt({ drift, from, to }: Piece, group: number): number {
  const place = Math.min(drift.length - 1, Math.max(0, ((group - from + 0.5) * drift.length) / (to - from) - 0.5));
  const low = Math.floor(place);
  const high = Math.min(drift.length - 1, low + 1);
  return drift[low]! + (drift[high]! - drift[low]!) * (place - low);
}
