/** Order statistics and the mean of plain and typed arrays. Tail probabilities stand in distributions.ts. */

type Numbers = readonly number[] | Float64Array | Float32Array;

/**
 * Quantile by linear interpolation between order statistics (method 7 of R. J. Hyndman & Y. Fan, The American
 * Statistician 50(4), 1996: h = (n − 1)p). NaN for an empty input.
 */
export const quantile = (values: Numbers, p: number): number => quantileOfSorted(Float64Array.from(values).sort(), p);

/** As `quantile`, of values already in ascending order. */
export const quantileOfSorted = (sorted: Float64Array, p: number): number => {
  const n = sorted.length;
  if (n === 0) return Number.NaN;
  const h = (n - 1) * Math.min(1, Math.max(0, p));
  const i = Math.min(n - 2, Math.floor(h));
  if (n === 1) return sorted[0]!;
  return sorted[i]! + (h - i) * (sorted[i + 1]! - sorted[i]!);
};

/**
 * The k-th smallest value (k from 0) without sorting (C. A. R. Hoare, Comm. ACM 4(7), 1961, algorithm 65). The values
 * are put into another order.
 */
export const nthSmallest = (values: Float64Array, k: number): number => {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const middle = (low + high) >>> 1;
    // The middle one of three keeps ordered input from being the worst case.
    const [a, b, c] = [values[low]!, values[middle]!, values[high]!];
    const pivot = a < b ? (b < c ? b : Math.max(a, c)) : a < c ? a : Math.max(b, c);
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const swapped = values[i]!;
        values[i++] = values[j]!;
        values[j--] = swapped;
      }
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return values[k] ?? Number.NaN;
};

/** Median; NaN for an empty input. */
export const median = (values: Numbers): number => quantile(values, 0.5);

export const mean = (values: Numbers): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
};

/**
 * Running median over 2·half + 1 neighbours, shorter at the ends (the window keeps to the array). A sorted window is
 * kept by insertion, so the cost is n·half moves of adjacent numbers.
 */
export const runningMedian = (values: Float64Array, half: number): Float64Array => {
  const n = values.length;
  const out = new Float64Array(n);
  const sorted = new Float64Array(2 * half + 2);
  let count = 0;
  const position = (v: number): number => {
    let low = 0;
    let high = count;
    while (low < high) {
      const mid = (low + high) >>> 1;
      if (sorted[mid]! < v) low = mid + 1;
      else high = mid;
    }
    return low;
  };
  const insert = (v: number): void => {
    const at = position(v);
    sorted.copyWithin(at + 1, at, count);
    sorted[at] = v;
    count++;
  };
  for (let i = 0; i < Math.min(half, n); i++) insert(values[i]!);
  for (let i = 0; i < n; i++) {
    if (i + half < n) insert(values[i + half]!);
    if (i - half - 1 >= 0) {
      const at = position(values[i - half - 1]!);
      sorted.copyWithin(at, at + 1, count);
      count--;
    }
    const middle = count >> 1;
    out[i] = count % 2 === 1 ? sorted[middle]! : 0.5 * (sorted[middle - 1]! + sorted[middle]!);
  }
  return out;
};
