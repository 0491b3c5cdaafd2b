/** Values between uneven points: cubic spline, and straight lines. Even samples: see band-limited.ts. */

/** Second derivatives at the knots of the natural cubic spline through (x, y); x ascending. */
const splineCurvature = (x: Float64Array, y: Float64Array): Float64Array => {
  const n = x.length;
  const m = new Float64Array(n);
  const upper = new Float64Array(n);
  // Thomas's elimination of the tridiagonal system.
  for (let i = 1; i < n - 1; i++) {
    const before = x[i]! - x[i - 1]!;
    const after = x[i + 1]! - x[i]!;
    const right = 6 * ((y[i + 1]! - y[i]!) / after - (y[i]! - y[i - 1]!) / before);
    const pivot = 2 * (before + after) - before * upper[i - 1]!;
    upper[i] = after / pivot;
    m[i] = (right - before * m[i - 1]!) / pivot;
  }
  for (let i = n - 2; i >= 1; i--) m[i]! -= upper[i]! * m[i + 1]!;
  m[0] = 0;
  m[n - 1] = 0;
  return m;
};

/**
 * Natural cubic spline through uneven points, evaluated at ascending places.
 * @param x knots, strictly ascending; @param y values; @param at places in ascending order; ends are held constant
 */
export const interpolateSpline = (x: Float64Array, y: Float64Array, at: Float64Array): Float64Array => {
  const n = x.length;
  const out = new Float64Array(at.length);
  if (n < 3) {
    for (let i = 0; i < at.length; i++) out[i] = interpolateLinear(x, y, at[i]!);
    return out;
  }
  const m = splineCurvature(x, y);
  let k = 0;
  for (let i = 0; i < at.length; i++) {
    const t = Math.min(x[n - 1]!, Math.max(x[0]!, at[i]!));
    while (k < n - 2 && x[k + 1]! < t) k++;
    const h = x[k + 1]! - x[k]!;
    const b = (t - x[k]!) / h;
    const a = 1 - b;
    out[i] = a * y[k]! + b * y[k + 1]! + ((a * a * a - a) * m[k]! + (b * b * b - b) * m[k + 1]!) * ((h * h) / 6);
  }
  return out;
};

/** Straight line between the neighbours of a place; ends held. Knots ascending. */
export const interpolateLinear = (x: Float64Array, y: Float64Array, at: number): number => {
  const n = x.length;
  if (n === 0) return Number.NaN;
  if (at <= x[0]!) return y[0]!;
  if (at >= x[n - 1]!) return y[n - 1]!;
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const mid = (low + high) >>> 1;
    if (x[mid]! <= at) low = mid;
    else high = mid;
  }
  const share = (at - x[low]!) / (x[high]! - x[low]!);
  return y[low]! + share * (y[high]! - y[low]!);
};
