/** Samples at the sensor's end stop. */
import type { RowRange } from './repair-values.ts';

/** Fewer samples at one extreme prove nothing. */
const LEAST = 5;

/**
 * Share of rows in which an axis stands at its end stop, 0..1. Values thin out toward an extreme; at an end stop they
 * pile up: there are at least LEAST at the very largest (or smallest) value, more than twice as many as at the next
 * value, and the extreme lies at or beyond the usual scatter. The limits are judgment.
 */
export function clippedShare(axes: readonly Float64Array[], ranges: readonly RowRange[]): number {
  const stops = axes.map((axis) => endStops(axis, ranges));
  if (stops.every(([low, high]) => Number.isNaN(low) && Number.isNaN(high))) return 0;
  let clipped = 0;
  let rows = 0;
  for (const [from, to] of ranges) {
    rows += to - from;
    for (let i = from; i < to; i++)
      if (axes.some((axis, k) => axis[i] === stops[k]![0] || axis[i] === stops[k]![1])) clipped++;
  }
  return rows > 0 ? clipped / rows : 0;
}

/** Lower and upper end stop of an axis; NaN where it has none. */
function endStops(axis: Float64Array, ranges: readonly RowRange[]): readonly [low: number, high: number] {
  const high = { value: -Infinity, count: 0, next: -Infinity, nextCount: 0 };
  const low = { value: Infinity, count: 0, next: Infinity, nextCount: 0 };
  let sum = 0;
  let squares = 0;
  let rows = 0;
  for (const [from, to] of ranges) {
    rows += to - from;
    for (let i = from; i < to; i++) {
      const value = axis[i]!;
      sum += value;
      squares += value * value;
      if (value >= high.next) {
        if (value > high.value) {
          high.next = high.value;
          high.nextCount = high.count;
          high.value = value;
          high.count = 1;
        } else if (value === high.value) high.count++;
        else if (value > high.next) {
          high.next = value;
          high.nextCount = 1;
        } else high.nextCount++;
      }
      if (value <= low.next) {
        if (value < low.value) {
          low.next = low.value;
          low.nextCount = low.count;
          low.value = value;
          low.count = 1;
        } else if (value === low.value) low.count++;
        else if (value < low.next) {
          low.next = value;
          low.nextCount = 1;
        } else low.nextCount++;
      }
    }
  }
  const mean = sum / rows;
  const sd = Math.sqrt(Math.max(0, squares / rows - mean * mean));
  const isStop = (side: typeof high): boolean =>
    side.count >= LEAST && side.count > 2 * side.nextCount && sd > 0 && Math.abs(side.value - mean) >= 0.99 * sd;
  return [isStop(low) ? low.value : NaN, isStop(high) ? high.value : NaN];
}
