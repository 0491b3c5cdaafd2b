/**
 * A smooth path through uncertain readings: Kalman filter and smoother (H. E. Rauch, F. Tung & C. T. Striebel, AIAA
 * Journal 3(8), 1965, 1445–1450) of a speed error δ whose rate takes random steps, and of its integral ψ. How smooth
 * the path is the readings decide themselves, by the likelihood of the step size.
 */

/** State: ψ = ∫δ dt, δ, dδ/dt. */
const SIZE = 3;
type Vector = Float64Array;
type Matrix = Float64Array;

/** What was read at a moment, of one component of the state. */
export interface Reading {
  readonly timeS: number;
  /** 0: the integral, 1: the speed error itself. */
  readonly component: 0 | 1;
  readonly value: number;
  readonly variance: number;
  /** A reading known only up to multiples of this is taken at the multiple nearest to what is expected. */
  readonly period?: number;
}

export interface PathPrior {
  /** Step density of the rate, per s³. */
  readonly roughness: number;
  /** Spread at the start of ψ, δ and the rate. */
  readonly startSd: readonly [number, number, number];
}

export interface SmoothPath {
  readonly timeS: Float64Array;
  readonly integral: Float64Array;
  readonly value: Float64Array;
  /** Standard uncertainty of `value`. */
  readonly sd: Float64Array;
  readonly prior: PathPrior;
  readonly logLikelihood: number;
}

const multiply = (a: Matrix, b: Matrix, transposeB = false): Matrix => {
  const out = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < SIZE; i++) {
    for (let j = 0; j < SIZE; j++) {
      let sum = 0;
      for (let k = 0; k < SIZE; k++) sum += a[i * SIZE + k]! * (transposeB ? b[j * SIZE + k]! : b[k * SIZE + j]!);
      out[i * SIZE + j] = sum;
    }
  }
  return out;
};

const apply = (a: Matrix, v: Vector): Vector =>
  Float64Array.from(
    { length: SIZE },
    (_, i) => a[i * SIZE]! * v[0]! + a[i * SIZE + 1]! * v[1]! + a[i * SIZE + 2]! * v[2]!,
  );

const transition = (h: number): Matrix => Float64Array.of(1, h, (h * h) / 2, 0, 1, h, 0, 0, 1);

/** Covariance gathered over h from white steps of the rate. */
const stepNoise = (h: number, q: number): Matrix =>
  Float64Array.of(
    h ** 5 / 20,
    h ** 4 / 8,
    h ** 3 / 6,
    h ** 4 / 8,
    h ** 3 / 3,
    h ** 2 / 2,
    h ** 3 / 6,
    h ** 2 / 2,
    h,
  ).map((v) => q * v);

/** Inverse of a symmetric 3 × 3 matrix by cofactors. */
const inverse3 = (m: Matrix): Matrix => {
  const [a, b, c, , d, e, , , f] = m as unknown as number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const A = d * f - e * e;
  const B = c * e - b * f;
  const C = b * e - c * d;
  const det = a * A + b * B + c * C;
  const D = a * f - c * c;
  const E = b * c - a * e;
  const F = a * d - b * b;
  return Float64Array.of(A, B, C, B, D, E, C, E, F).map((v) => v / det);
};

/** Takes one reading into state x and covariance p, in place; gives its log-likelihood. */
const takeIn = (x: Vector, p: Matrix, { component, value, variance, period }: Reading): number => {
  if (!Number.isFinite(variance)) return 0;
  const total = p[component * SIZE + component]! + variance;
  let off = value - x[component]!;
  if (period) off -= period * Math.round(off / period);
  const gain = Float64Array.from({ length: SIZE }, (_, i) => p[i * SIZE + component]! / total);
  const row = p.slice(component * SIZE, component * SIZE + SIZE);
  for (let i = 0; i < SIZE; i++) {
    x[i]! += gain[i]! * off;
    for (let j = 0; j < SIZE; j++) p[i * SIZE + j]! -= gain[i]! * row[j]!;
  }
  return -0.5 * (Math.log(total) + (off * off) / total);
};

/** Smooths readings in order of time with a given roughness. */
export const smoothWith = (readings: readonly Reading[], prior: PathPrior): SmoothPath => {
  const times = [...new Set(readings.map((reading) => reading.timeS))];
  const n = times.length;
  const predicted: { x: Vector; p: Matrix }[] = [];
  const filtered: { x: Vector; p: Matrix }[] = [];
  let x: Vector = new Float64Array(SIZE);
  let p: Matrix = new Float64Array(SIZE * SIZE);
  prior.startSd.forEach((sd, i) => (p[i * SIZE + i] = sd * sd));
  let logLikelihood = 0;
  let next = 0;
  for (let i = 0; i < n; i++) {
    if (i > 0) {
      const h = times[i]! - times[i - 1]!;
      const f = transition(h);
      x = apply(f, x);
      const moved = multiply(multiply(f, p), f, true);
      const noise = stepNoise(h, prior.roughness);
      p = moved.map((v, q) => v + noise[q]!);
    }
    predicted.push({ x: x.slice(), p: p.slice() });
    x = x.slice();
    p = p.slice();
    while (next < readings.length && readings[next]!.timeS === times[i])
      logLikelihood += takeIn(x, p, readings[next++]!);
    filtered.push({ x: x.slice(), p: p.slice() });
  }
  const integral = new Float64Array(n);
  const value = new Float64Array(n);
  const sd = new Float64Array(n);
  let laterX: Vector = x;
  let laterP: Matrix = p;
  for (let i = n - 1; i >= 0; i--) {
    if (i < n - 1) {
      const f = transition(times[i + 1]! - times[i]!);
      const ahead = predicted[i + 1]!;
      const own = filtered[i]!;
      const gain = multiply(multiply(own.p, f, true), inverse3(ahead.p));
      const dx = apply(
        gain,
        laterX.map((v, k) => v - ahead.x[k]!),
      );
      const dp = multiply(
        multiply(
          gain,
          laterP.map((v, k) => v - ahead.p[k]!),
        ),
        gain,
        true,
      );
      laterX = own.x.map((v, k) => v + dx[k]!);
      laterP = own.p.map((v, k) => v + dp[k]!);
    }
    integral[i] = laterX[0]!;
    value[i] = laterX[1]!;
    sd[i] = Math.sqrt(Math.max(0, laterP[4]!));
  }
  return { timeS: Float64Array.from(times), integral, value, sd, prior, logLikelihood };
};

/** Smooths with the likeliest of the given roughnesses. */
export const smoothPath = (
  readings: readonly Reading[],
  roughnesses: readonly number[],
  startSd: readonly [number, number, number],
): SmoothPath => {
  const paths = roughnesses.map((roughness) => smoothWith(readings, { roughness, startSd }));
  return paths.reduce((best, path) => (path.logLikelihood > best.logLikelihood ? path : best));
};
