/** Values between samples: band-limited where samples are even, cubic spline where they are not. */

/** Taps to each side of the windowed-sinc kernel. With β below: 0.1 % up to 0.8 of half the rate. */
const REACH = 12;
const KAISER_BETA = 7;
/** Kernel table: steps between two samples; linear interpolation in it errs by less than 1e-6. */
const STEPS = 512;

/** Modified Bessel function of order zero by its power series (DLMF 10.25.2). */
export const besselI0 = (x: number): number => {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-16; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
};

/** Rows of 2·REACH weights for each fractional offset; each row adds up to 1, so that a constant stays constant. */
const kernelTable = ((): (() => Float64Array) => {
  let table: Float64Array | null = null;
  return () => {
    if (table) return table;
    const width = 2 * REACH;
    table = new Float64Array((STEPS + 1) * width);
    for (let s = 0; s <= STEPS; s++) {
      let sum = 0;
      for (let k = 0; k < width; k++) {
        const d = s / STEPS - (k - REACH + 1);
        const r = d / REACH;
        const sinc = d === 0 ? 1 : Math.sin(Math.PI * d) / (Math.PI * d);
        const w = Math.abs(r) >= 1 ? 0 : (sinc * besselI0(KAISER_BETA * Math.sqrt(1 - r * r))) / besselI0(KAISER_BETA);
        table[s * width + k] = w;
        sum += w;
      }
      for (let k = 0; k < width; k++) table[s * width + k]! /= sum;
    }
    return table;
  };
})();

/**
 * Band-limited interpolation of even samples (windowed sinc, Kaiser β 7, 12 samples to each side), of several axes at
 * the same places.
 * @param axes even samples, all of one length
 * @param positions where to evaluate, in samples from the first; outside 0 … n−1 the end values hold
 */
export const interpolateAxes = (axes: readonly Float64Array[], positions: Float64Array): Float64Array[] => {
  const table = kernelTable();
  const width = 2 * REACH;
  const n = axes[0]?.length ?? 0;
  const weights = new Float64Array(width);
  const outs = axes.map(() => new Float64Array(positions.length));
  for (let i = 0; i < positions.length; i++) {
    const p = Math.min(n - 1, Math.max(0, positions[i]!));
    const base = Math.min(n - 1, Math.floor(p));
    const s = (p - base) * STEPS;
    const row = Math.min(STEPS - 1, Math.floor(s));
    const share = s - row;
    const a = row * width;
    for (let k = 0; k < width; k++) {
      const w = table[a + k]!;
      weights[k] = w + share * (table[a + width + k]! - w);
    }
    const start = base - REACH + 1;
    const inside = start >= 0 && start + width <= n;
    for (let axis = 0; axis < axes.length; axis++) {
      const samples = axes[axis]!;
      let sum = 0;
      if (inside) for (let k = 0; k < width; k++) sum += samples[start + k]! * weights[k]!;
      else for (let k = 0; k < width; k++) sum += samples[Math.min(n - 1, Math.max(0, start + k))]! * weights[k]!;
      outs[axis]![i] = sum;
    }
  }
  return outs;
};

/** The same of a single axis. */
export const interpolateEven = (samples: Float64Array, positions: Float64Array): Float64Array =>
  interpolateAxes([samples], positions)[0]!;

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
