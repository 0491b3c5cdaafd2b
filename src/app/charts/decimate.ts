/** Thins a long even series to what a row of pixels can show, and loses no extreme by it. */

export interface ThinnedPoint {
  /** Index into the series. */
  readonly index: number;
  readonly value: number;
}

/**
 * Keeps the first, least, greatest and last sample of each pixel column, in their order (after U. Jugel et al.,
 * "M4: a visualization-oriented time series data aggregation", VLDB 2014).
 *
 * @param values The series.
 * @param from First index, inclusive; @param to last index, inclusive. Both are clipped to the series.
 * @param columns Pixel columns to spread the range over.
 * @returns Every sample where there are no more than four a column, else at most four a column. Non-finite samples are left out.
 */
export function thin(values: ArrayLike<number>, from: number, to: number, columns: number): ThinnedPoint[] {
  const first = Math.max(0, Math.floor(from));
  const last = Math.min(values.length - 1, Math.ceil(to));
  const count = last - first + 1;
  if (count <= 0 || columns < 1) return [];
  if (count <= 4 * columns) return keepAll(values, first, last);
  const points: ThinnedPoint[] = [];
  for (let column = 0; column < columns; column++) {
    const start = first + Math.floor((column * count) / columns);
    const end = first + Math.floor(((column + 1) * count) / columns) - 1;
    keepExtremes(values, start, end, points);
  }
  return points;
}

function keepAll(values: ArrayLike<number>, first: number, last: number): ThinnedPoint[] {
  const points: ThinnedPoint[] = [];
  for (let index = first; index <= last; index++) {
    const value = values[index];
    if (value !== undefined && Number.isFinite(value)) points.push({ index, value });
  }
  return points;
}

function keepExtremes(values: ArrayLike<number>, start: number, end: number, points: ThinnedPoint[]): void {
  let first = -1;
  let last = -1;
  let least = -1;
  let greatest = -1;
  const at = (index: number): number => values[index] ?? NaN;
  for (let index = start; index <= end; index++) {
    if (!Number.isFinite(at(index))) continue;
    last = index;
    if (first < 0) first = least = greatest = index;
    if (at(index) < at(least)) least = index;
    if (at(index) > at(greatest)) greatest = index;
  }
  if (first < 0) return;
  const kept = new Set([first, least, greatest, last].sort((a, b) => a - b));
  for (const index of kept) points.push({ index, value: at(index) });
}
