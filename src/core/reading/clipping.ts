/** Samples at the sensor's end stop. */

/** Fewer samples at one extreme prove nothing. */
const LEAST = 5;

/**
 * Rows in which an axis stands at its end stop. Values thin out toward an extreme; at an end stop they pile up: there
 * are at least LEAST at the very largest (or smallest) value, more than twice as many as at the next value, and the
 * extreme lies at or beyond the usual scatter. The limits are judgement.
 *
 * @returns share of rows, 0..1
 */
export function clippedShare(axes: readonly Float64Array[], ranges: readonly (readonly [number, number])[]): number {
  const stops = axes.map((axis) => [endStop(axis, ranges, 1), endStop(axis, ranges, -1)] as const);
  if (stops.every(([high, low]) => high === null && low === null)) return 0;
  let clipped = 0;
  let rows = 0;
  for (const [from, to] of ranges) {
    rows += to - from;
    for (let i = from; i < to; i++)
      if (axes.some((axis, k) => axis[i] === stops[k]![0] || axis[i] === stops[k]![1])) clipped++;
  }
  return rows > 0 ? clipped / rows : 0;
}

function endStop(axis: Float64Array, ranges: readonly (readonly [number, number])[], sign: 1 | -1): number | null {
  let extreme = -Infinity;
  let next = -Infinity;
  let atExtreme = 0;
  let atNext = 0;
  let sum = 0;
  let squares = 0;
  let rows = 0;
  for (const [from, to] of ranges) {
    for (let i = from; i < to; i++) {
      const value = sign * axis[i]!;
      rows++;
      sum += value;
      squares += value * value;
      if (value > extreme) {
        next = extreme;
        atNext = atExtreme;
        extreme = value;
        atExtreme = 1;
      } else if (value === extreme) atExtreme++;
      else if (value > next) {
        next = value;
        atNext = 1;
      } else if (value === next) atNext++;
    }
  }
  const mean = sum / rows;
  const sd = Math.sqrt(Math.max(0, squares / rows - mean * mean));
  const piled = atExtreme >= LEAST && atExtreme > 2 * atNext;
  return piled && sd > 0 && extreme - mean >= 0.99 * sd ? sign * extreme : null;
}
