/** Even samples from uneven ones. */
import { interpolateSpline } from '../numeric/interpolate.ts';
import { besselI0 } from '../numeric/special-functions.ts';

/** Steps of the search at the most, and the misfit, of squares, at which it ends: 0.05 % of amplitude. */
const MOST_STEPS = 15;
const FITS = 2.5e-7;
/**
 * Taps to each side of the kernel that reads between even samples, and β of its Kaiser window (60 dB). By Kaiser's rule
 * 128 taps in all fall from 0.97 to 1.03 of half the rate: nearer, a line and its mirror image are fitted alike, and the
 * line comes out too strong. Long recordings, of fast loggers, make do with less.
 */
const REACH = 64;
const REACH_OF_MANY = 16;
const MANY_SAMPLES = 100_000;
const BETA = 5.65;
/** Even samples beyond each end, left free, so that those within need not make up for what is not there. */
const BEYOND = 32;
/** Longer still, a spline alone serves. */
const TOO_MANY_SAMPLES = 400_000;

const kernelAt = (distance: number, reach: number): number => {
  const r = distance / reach;
  if (Math.abs(r) >= 1) return 0;
  const sinc = Math.abs(distance) < 1e-9 ? 1 : Math.sin(Math.PI * distance) / (Math.PI * distance);
  return (sinc * besselI0(BETA * Math.sqrt(1 - r * r))) / besselI0(BETA);
};

/** Places between two samples at which the kernel is worked out; a straight line between them errs by π²/(8·512²) at most. */
const STEPS = 512;

/** Row s: the kernel's 2·reach weights for a place s/STEPS beyond a sample, from reach − 1 samples before that one on. */
const kernelRows = (reach: number): Float64Array => {
  const width = 2 * reach;
  return Float64Array.from({ length: (STEPS + 1) * width }, (_, i) =>
    kernelAt(Math.floor(i / width) / STEPS - ((i % width) - reach + 1), reach),
  );
};

/** The rows of a reach, made once: every piece between gaps asks for them. */
const madeRows = new Map<number, Float64Array>();
const rowsFor = (reach: number): Float64Array => {
  const rows = madeRows.get(reach) ?? kernelRows(reach);
  madeRows.set(reach, rows);
  return rows;
};

/** What even samples give at uneven places, and the transpose of that; beyond the ends there is nothing. */
interface Reader {
  readonly read: (even: Float64Array) => Float64Array;
  readonly spread: (values: Float64Array) => Float64Array;
}

const readerAt = (positions: Float64Array, count: number, reach: number): Reader => {
  const width = 2 * reach;
  const n = positions.length;
  const rows = rowsFor(reach);
  const first = new Int32Array(n);
  const weights = new Float32Array(n * width);
  for (let i = 0; i < n; i++) {
    const before = Math.floor(positions[i]!);
    const place = (positions[i]! - before) * STEPS;
    const row = Math.min(STEPS - 1, Math.floor(place));
    const share = place - row;
    first[i] = before - reach + 1;
    for (let k = 0, at = row * width, to = i * width; k < width; k++, at++, to++) {
      weights[to] = rows[at]! + share * (rows[at + width]! - rows[at]!);
    }
  }
  const read = (even: Float64Array): Float64Array => {
    const out = new Float64Array(n);
    for (let i = 0; i < n; i++) out[i] = weightedSum(weights, i * width, even, first[i]!, width);
    return out;
  };
  const spread = (values: Float64Array): Float64Array => {
    const out = new Float64Array(count);
    for (let i = 0; i < n; i++) {
      const start = first[i]!;
      const from = Math.max(0, -start);
      const to = Math.min(width, count - start);
      const value = values[i]!;
      for (let k = from; k < to; k++) out[start + k]! += weights[i * width + k]! * value;
    }
    return out;
  };
  return { read, spread };
};

/** Σ weights·values over a row, what lies beyond the ends left out. Four sums at once: each waits for its own additions only. */
const weightedSum = (
  weights: Float32Array,
  row: number,
  values: Float64Array,
  start: number,
  width: number,
): number => {
  let [a, b, c, d] = [0, 0, 0, 0];
  if (start < 0 || start + width > values.length) {
    for (let k = Math.max(0, -start); k < Math.min(width, values.length - start); k++)
      a += weights[row + k]! * values[start + k]!;
    return a;
  }
  for (let k = 0; k < width; k += 4) {
    a += weights[row + k]! * values[start + k]!;
    b += weights[row + k + 1]! * values[start + k + 1]!;
    c += weights[row + k + 2]! * values[start + k + 2]!;
    d += weights[row + k + 3]! * values[start + k + 3]!;
  }
  return a + b + (c + d);
};

const energy = (values: Float64Array): number => values.reduce((sum, v) => sum + v * v, 0);

/**
 * Even samples whose band-limited signal passes nearest the given ones: conjugate gradients on the normal equations
 * (M. R. Hestenes & E. Stiefel, J. Res. NBS 49, 1952), begun at nothing, so that what the samples hardly tell, where they
 * stand far apart, stays small.
 */
const nearest = (values: Float64Array, { read, spread }: Reader, count: number): Float64Array => {
  const even = new Float64Array(count);
  const rest = values.slice();
  const enough = FITS * energy(values);
  let gradient = spread(rest);
  const along = gradient.slice();
  let size = energy(gradient);
  for (let step = 0; step < MOST_STEPS && size > 0 && energy(rest) > enough; step++) {
    const seen = read(along);
    const far = size / energy(seen);
    for (let k = 0; k < count; k++) even[k]! += far * along[k]!;
    for (let i = 0; i < rest.length; i++) rest[i]! -= far * seen[i]!;
    gradient = spread(rest);
    const next = energy(gradient);
    for (let k = 0; k < count; k++) along[k] = gradient[k]! + (next / size) * along[k]!;
    size = next;
  }
  return even;
};

/**
 * Brings uneven samples to an even rate. Works while no gap exceeds about one mean spacing; longer gaps split a recording
 * before it comes here.
 * @param timeS ascending times, s
 * @param samplingRateHz wanted rate, Hz; the first even sample is at timeS[0]
 * @returns what does so with values taken at these times
 */
export const evenerOf = (timeS: Float64Array, samplingRateHz: number): ((values: Float64Array) => Float64Array) => {
  const n = timeS.length;
  const start = timeS[0]!;
  const count = Math.max(1, Math.floor((timeS[n - 1]! - start) * samplingRateHz + 1e-6) + 1);
  if (n > TOO_MANY_SAMPLES || count < 4) {
    const grid = Float64Array.from({ length: count }, (_, i) => start + i / samplingRateHz);
    return (values) => interpolateSpline(timeS, values, grid);
  }
  const reader = readerAt(
    timeS.map((t) => (t - start) * samplingRateHz + BEYOND),
    count + 2 * BEYOND,
    n > MANY_SAMPLES ? REACH_OF_MANY : REACH,
  );
  return (values) => {
    // Far beyond the ends there is nothing: what stands there all the time would leave a step.
    const mean = values.reduce((sum, v) => sum + v, 0) / n;
    const even = nearest(
      values.map((v) => v - mean),
      reader,
      count + 2 * BEYOND,
    );
    return even.subarray(BEYOND, BEYOND + count).map((v) => v + mean);
  };
};

/** The same for several axes at once. */
export const resampleEvenly = (
  timeS: Float64Array,
  axes: readonly Float64Array[],
  samplingRateHz: number,
): Float64Array[] => {
  const evened = evenerOf(timeS, samplingRateHz);
  return axes.map((axis) => evened(axis));
};
