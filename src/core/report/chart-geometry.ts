/** Numbers of a chart: scales, ticks and a trace reduced to pixels without losing a peak. No drawing. */

/** A linear or logarithmic map from a value to a place. */
export interface Scale {
  readonly kind: 'linear' | 'logarithmic';
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly place: (value: number) => number;
}

export function linearScale(from: readonly [number, number], to: readonly [number, number]): Scale {
  const slope = (to[1] - to[0]) / (from[1] - from[0]);
  return { kind: 'linear', from, to, place: (value) => to[0] + (value - from[0]) * slope };
}

/** Values at or under the lower end are placed on it. */
export function logScale(from: readonly [number, number], to: readonly [number, number]): Scale {
  const low = Math.log10(from[0]);
  const slope = (to[1] - to[0]) / (Math.log10(from[1]) - low);
  return {
    kind: 'logarithmic',
    from,
    to,
    place: (value) => to[0] + (Math.log10(Math.max(value, from[0])) - low) * slope,
  };
}

/** Round tick values (1, 2, 5 × 10ⁿ apart) inside a range, about `count` of them. */
export function linearTicks(low: number, high: number, count: number): number[] {
  const step = niceStep((high - low) / Math.max(1, count));
  const ticks: number[] = [];
  for (let k = Math.ceil(low / step - 1e-9); k * step <= high * (1 + 1e-12); k += 1)
    ticks.push(Number((k * step).toPrecision(12)));
  return ticks;
}

function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const ratio = rough / power;
  return power * (ratio <= 1 ? 1 : ratio <= 2 ? 2 : ratio <= 5 ? 5 : 10);
}

/** Powers of ten inside a range. */
export function decadeTicks(low: number, high: number): number[] {
  const ticks: number[] = [];
  for (let n = Math.ceil(Math.log10(low) - 1e-9); 10 ** n <= high * (1 + 1e-9); n += 1) ticks.push(10 ** n);
  return ticks;
}

/**
 * Reduces a trace to at most two points a pixel column: the least and the greatest value in it, in the order they
 * come. No extreme is lost, so a one-bin peak still reaches its full height.
 * @param values evenly spaced; value i lies at `i * step`.
 * @returns pairs [abscissa, value], ascending.
 */
export function decimate(
  values: ArrayLike<number>,
  step: number,
  range: readonly [number, number],
  columns: number,
): [number, number][] {
  const first = Math.max(0, Math.ceil(range[0] / step));
  const last = Math.min(values.length - 1, Math.floor(range[1] / step));
  const points: [number, number][] = [];
  if (last - first < 2 * columns) {
    for (let i = first; i <= last; i += 1) points.push([i * step, values[i] ?? 0]);
    return points;
  }
  const perColumn = (last - first + 1) / columns;
  for (let column = 0; column < columns; column += 1) {
    const from = first + Math.floor(column * perColumn);
    const to = Math.min(last, first + Math.floor((column + 1) * perColumn) - 1);
    let low = from;
    let high = from;
    for (let i = from + 1; i <= to; i += 1) {
      if ((values[i] ?? 0) < (values[low] ?? 0)) low = i;
      if ((values[i] ?? 0) > (values[high] ?? 0)) high = i;
    }
    const pair = low < high ? [low, high] : [high, low];
    for (const i of low === high ? [low] : pair) points.push([i * step, values[i] ?? 0]);
  }
  return points;
}
