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

/** out = a·b, or a·bᵀ. */
const multiplyInto = (out: Matrix, a: Matrix, b: Matrix, transposeB: boolean): void => {
  const [row, column] = transposeB ? [1, SIZE] : [SIZE, 1];
  for (let i = 0; i < SIZE; i++) {
    for (let j = 0; j < SIZE; j++) {
      out[i * SIZE + j] =
        a[i * SIZE]! * b[j * column]! +
        a[i * SIZE + 1]! * b[row + j * column]! +
        a[i * SIZE + 2]! * b[2 * row + j * column]!;
    }
  }
};

const applyInto = (out: Vector, a: Matrix, v: Vector): void => {
  for (let i = 0; i < SIZE; i++) {
    out[i] = a[i * SIZE]! * v[0]! + a[i * SIZE + 1]! * v[1]! + a[i * SIZE + 2]! * v[2]!;
  }
};

const transitionInto = (f: Matrix, h: number): void => {
  f.fill(0);
  f[0] = f[4] = f[8] = 1;
  f[1] = f[5] = h;
  f[2] = (h * h) / 2;
};

/** Adds the covariance gathered over h from white steps of the rate. */
const addStepNoise = (p: Matrix, h: number, q: number): void => {
  p[0]! += (q * h ** 5) / 20;
  p[1]! += (q * h ** 4) / 8;
  p[2]! += (q * h ** 3) / 6;
  p[3]! += (q * h ** 4) / 8;
  p[4]! += (q * h ** 3) / 3;
  p[5]! += (q * h ** 2) / 2;
  p[6]! += (q * h ** 3) / 6;
  p[7]! += (q * h ** 2) / 2;
  p[8]! += q * h;
};

/** Inverse of a symmetric 3 × 3 matrix by cofactors. */
const inverse3Into = (out: Matrix, m: Matrix): void => {
  const a = m[0]!;
  const b = m[1]!;
  const c = m[2]!;
  const d = m[4]!;
  const e = m[5]!;
  const f = m[8]!;
  const A = d * f - e * e;
  const B = c * e - b * f;
  const C = b * e - c * d;
  const over = 1 / (a * A + b * B + c * C);
  out[0] = A * over;
  out[1] = out[3] = B * over;
  out[2] = out[6] = C * over;
  out[4] = (a * f - c * c) * over;
  out[5] = out[7] = (b * c - a * e) * over;
  out[8] = (a * d - b * b) * over;
};

/** Takes one reading into state x and covariance p, in place; gives its log-likelihood. */
const takeIn = (x: Vector, p: Matrix, { component, value, variance, period }: Reading): number => {
  if (!Number.isFinite(variance)) return 0;
  const row = component * SIZE;
  const r0 = p[row]!;
  const r1 = p[row + 1]!;
  const r2 = p[row + 2]!;
  const total = p[row + component]! + variance;
  let off = value - x[component]!;
  if (period) off -= period * Math.round(off / period);
  for (let i = 0; i < SIZE; i++) {
    const gain = p[i * SIZE + component]! / total;
    x[i]! += gain * off;
    p[i * SIZE]! -= gain * r0;
    p[i * SIZE + 1]! -= gain * r1;
    p[i * SIZE + 2]! -= gain * r2;
  }
  return -0.5 * (Math.log(total) + (off * off) / total);
};

/** States and covariances at each moment, one after the other. */
interface Kept {
  readonly predictedX: Float64Array;
  readonly predictedP: Float64Array;
  readonly filteredX: Float64Array;
  readonly filteredP: Float64Array;
}

/** Runs forward through the readings; returns their log-likelihood. */
const filter = (readings: readonly Reading[], times: Float64Array, prior: PathPrior, keep: Kept | null): number => {
  const x: Vector = new Float64Array(SIZE);
  const p: Matrix = new Float64Array(SIZE * SIZE);
  const f: Matrix = new Float64Array(SIZE * SIZE);
  const moved: Matrix = new Float64Array(SIZE * SIZE);
  const movedX: Vector = new Float64Array(SIZE);
  prior.startSd.forEach((sd, i) => (p[i * SIZE + i] = sd * sd));
  let logLikelihood = 0;
  let next = 0;
  for (let i = 0; i < times.length; i++) {
    if (i > 0) {
      const h = times[i]! - times[i - 1]!;
      transitionInto(f, h);
      applyInto(movedX, f, x);
      x.set(movedX);
      multiplyInto(moved, f, p, false);
      multiplyInto(p, moved, f, true);
      addStepNoise(p, h, prior.roughness);
    }
    keep?.predictedX.set(x, i * SIZE);
    keep?.predictedP.set(p, i * SIZE * SIZE);
    while (next < readings.length && readings[next]!.timeS === times[i])
      logLikelihood += takeIn(x, p, readings[next++]!);
    keep?.filteredX.set(x, i * SIZE);
    keep?.filteredP.set(p, i * SIZE * SIZE);
  }
  return logLikelihood;
};

const momentsOf = (readings: readonly Reading[]): Float64Array =>
  Float64Array.from(new Set(readings.map((reading) => reading.timeS)));

/** Smooths readings in order of time with a given roughness. */
export const smoothWith = (readings: readonly Reading[], prior: PathPrior): SmoothPath => {
  const timeS = momentsOf(readings);
  const n = timeS.length;
  const kept: Kept = {
    predictedX: new Float64Array(n * SIZE),
    predictedP: new Float64Array(n * SIZE * SIZE),
    filteredX: new Float64Array(n * SIZE),
    filteredP: new Float64Array(n * SIZE * SIZE),
  };
  const logLikelihood = filter(readings, timeS, prior, kept);
  const integral = new Float64Array(n);
  const value = new Float64Array(n);
  const sd = new Float64Array(n);
  const laterX: Vector = new Float64Array(SIZE);
  const laterP: Matrix = new Float64Array(SIZE * SIZE);
  const [f, product, back, gain] = Array.from({ length: 4 }, () => new Float64Array(SIZE * SIZE)) as [
    Matrix,
    Matrix,
    Matrix,
    Matrix,
  ];
  const dx: Vector = new Float64Array(SIZE);
  for (let i = n - 1; i >= 0; i--) {
    const ownX = kept.filteredX.subarray(i * SIZE, (i + 1) * SIZE);
    const ownP = kept.filteredP.subarray(i * SIZE * SIZE, (i + 1) * SIZE * SIZE);
    if (i === n - 1) {
      laterX.set(ownX);
      laterP.set(ownP);
    } else {
      const aheadX = kept.predictedX.subarray((i + 1) * SIZE, (i + 2) * SIZE);
      const aheadP = kept.predictedP.subarray((i + 1) * SIZE * SIZE, (i + 2) * SIZE * SIZE);
      transitionInto(f, timeS[i + 1]! - timeS[i]!);
      multiplyInto(product, ownP, f, true);
      inverse3Into(back, aheadP);
      multiplyInto(gain, product, back, false);
      for (let k = 0; k < SIZE; k++) laterX[k]! -= aheadX[k]!;
      applyInto(dx, gain, laterX);
      for (let k = 0; k < SIZE; k++) laterX[k] = ownX[k]! + dx[k]!;
      for (let k = 0; k < SIZE * SIZE; k++) laterP[k]! -= aheadP[k]!;
      multiplyInto(product, gain, laterP, false);
      multiplyInto(back, product, gain, true);
      for (let k = 0; k < SIZE * SIZE; k++) laterP[k] = ownP[k]! + back[k]!;
    }
    integral[i] = laterX[0]!;
    value[i] = laterX[1]!;
    sd[i] = Math.sqrt(Math.max(0, laterP[4]!));
  }
  return { timeS, integral, value, sd, prior, logLikelihood };
};

/** Smooths with the likeliest of the given roughnesses. */
export const smoothPath = (
  readings: readonly Reading[],
  roughnesses: readonly number[],
  startSd: readonly [number, number, number],
): SmoothPath => {
  const timeS = momentsOf(readings);
  let best = { roughness: roughnesses[0]!, logLikelihood: -Infinity };
  for (const roughness of roughnesses) {
    const logLikelihood = filter(readings, timeS, { roughness, startSd }, null);
    if (logLikelihood > best.logLikelihood) best = { roughness, logLikelihood };
  }
  return smoothWith(readings, { roughness: best.roughness, startSd });
};
