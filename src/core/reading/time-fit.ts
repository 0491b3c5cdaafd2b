/** The straight-line fit under the time base: groups of rows that share a stamp, one step for all pieces, drift. */

const DRIFT_BLOCK = 256;

export interface Groups {
  readonly row: Float64Array;
  readonly time: Float64Array;
}

export function groupsOf(times: Float64Array): Groups {
  let count = 0;
  const row = new Float64Array(times.length);
  const time = new Float64Array(times.length);
  for (let i = 0; i < times.length; i++) {
    if (i > 0 && times[i] === times[i - 1]) continue;
    row[count] = i;
    time[count++] = times[i]!;
  }
  return { row: row.subarray(0, count), time: time.subarray(0, count) };
}

/** Row numbers with the missing rows counted. */
export function countedRows(
  length: number,
  holes: readonly { readonly row: number; readonly missing: number }[],
): Float64Array {
  const index = new Float64Array(length);
  let next = 0;
  let added = 0;
  for (let i = 0; i < length; i++) {
    while (next < holes.length && holes[next]!.row === i) added += holes[next++]!.missing;
    index[i] = i + added;
  }
  return index;
}

export interface Fit {
  readonly step: number;
  /** Time of counted row 0 for each piece. */
  readonly starts: readonly number[];
  readonly residuals: Float64Array;
}

/** One step for all pieces, a start for each: least squares on the first rows of the groups. */
export function fitPieces(groups: Groups, index: Float64Array, breaks: readonly number[], coarse: boolean): Fit | null {
  const count = groups.row.length;
  let over = 0;
  let under = 0;
  const means: (readonly [number, number])[] = [];
  for (const [from, to] of pieceGroups(groups, breaks)) {
    // The first group of coarse stamps began before the recording did: its first row is late by an unknown time.
    const first = coarse && to - from > 2 ? from + 1 : from;
    let meanX = 0;
    let meanY = 0;
    for (let j = first; j < to; j++) {
      meanX += (index[groups.row[j]!]! - index[groups.row[first]!]!) / (to - first);
      meanY += (groups.time[j]! - groups.time[first]!) / (to - first);
    }
    for (let j = first; j < to; j++) {
      const x = index[groups.row[j]!]! - index[groups.row[first]!]! - meanX;
      over += x * (groups.time[j]! - groups.time[first]! - meanY);
      under += x * x;
    }
    means.push([index[groups.row[first]!]! + meanX, groups.time[first]! + meanY]);
  }
  if (!(under > 0) || !(over > 0)) return null;
  const step = over / under;
  const starts = means.map(([x, y]) => y - step * x);
  const residuals = new Float64Array(count);
  pieceGroups(groups, breaks).forEach(([from, to], piece) => {
    for (let j = from; j < to; j++) residuals[j] = groups.time[j]! - starts[piece]! - step * index[groups.row[j]!]!;
    if (coarse && to - from > 2) residuals[from] = 0;
  });
  return { step, starts, residuals };
}

/** Ranges of groups between the breaks. */
export function pieceGroups(groups: Groups, breaks: readonly number[]): (readonly [number, number])[] {
  const pieces: (readonly [number, number])[] = [];
  let from = 0;
  let next = 0;
  for (let j = 0; j <= groups.row.length; j++) {
    const end = j === groups.row.length || (next < breaks.length && groups.row[j]! >= breaks[next]!);
    if (!end) continue;
    if (j > from) pieces.push([from, j]);
    from = j;
    while (next < breaks.length && j < groups.row.length && breaks[next]! <= groups.row[j]!) next++;
  }
  return pieces;
}

/** Residuals split into slow drift (straight lines between block means) and the rest. */
export function withoutDrift(
  residuals: Float64Array,
  breaks: readonly number[],
  groups: Groups,
): { drift: Float64Array; rest: Float64Array } {
  const drift = new Float64Array(residuals.length);
  const rest = new Float64Array(residuals.length);
  for (const [from, to] of pieceGroups(groups, breaks)) {
    const blocks = Math.max(1, Math.round((to - from) / DRIFT_BLOCK));
    const size = (to - from) / blocks;
    const means = Array.from({ length: blocks }, (_, b) =>
      mean(residuals.subarray(from + Math.floor(b * size), from + Math.floor((b + 1) * size))),
    );
    for (let j = from; j < to; j++) {
      const place = Math.min(blocks - 1, Math.max(0, (j - from + 0.5) / size - 0.5));
      const low = Math.floor(place);
      const high = Math.min(blocks - 1, low + 1);
      drift[j] = means[low]! + (means[high]! - means[low]!) * (place - low);
      rest[j] = residuals[j]! - drift[j]!;
    }
  }
  return { drift, rest };
}

/** Scatter within short blocks: near the whole scatter for independent lateness, far below it for a wandering clock. */
export function blockScatter(values: Float64Array, size: number): number {
  let sum = 0;
  let count = 0;
  for (let from = 0; from + size <= values.length; from += size) {
    const block = values.subarray(from, from + size);
    const middle = mean(block);
    for (const value of block) sum += (value - middle) ** 2;
    count += size - 1;
  }
  return count > 0 ? Math.sqrt(sum / count) : rootMeanSquare(values);
}

export const mean = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
export const rootMeanSquare = (values: Float64Array): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));
export function quantile(values: Float64Array, share: number): number {
  const sorted = values.slice().sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}
