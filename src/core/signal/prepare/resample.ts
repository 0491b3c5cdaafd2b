/** Even samples from uneven ones. */
import { interpolateEven } from '../numeric/band-limited.ts';
import { interpolateSpline } from '../numeric/interpolate.ts';

/** Corrections after the spline. Each shrinks the error in the band by the ratio of time error to sample spacing. */
const CORRECTIONS = 3;
/** Recordings this long come from fast loggers, sampled far above the band of interest: the spline alone serves. */
const MANY_SAMPLES = 400_000;

/**
 * Uneven samples brought to an even rate: a cubic spline, then corrected until the band-limited signal through the
 * even samples passes through the given ones (method of iterative reconstruction, F. Marvasti, Nonuniform Sampling,
 * 2001). Works while no gap exceeds about one mean spacing; longer gaps split a recording before it comes here.
 * @param timeS strictly ascending times, s
 * @param samplingRateHz wanted rate, Hz; the first even sample is at timeS[0]
 */
export const resampleEvenly = (timeS: Float64Array, values: Float64Array, samplingRateHz: number): Float64Array => {
  const n = timeS.length;
  const start = timeS[0]!;
  const count = Math.max(1, Math.floor((timeS[n - 1]! - start) * samplingRateHz + 1e-6) + 1);
  const grid = new Float64Array(count);
  for (let i = 0; i < count; i++) grid[i] = start + i / samplingRateHz;
  const even = interpolateSpline(timeS, values, grid);
  if (n > MANY_SAMPLES || count < 4) return even;
  const positions = timeS.map((t) => (t - start) * samplingRateHz);
  const residual = new Float64Array(n);
  for (let pass = 0; pass < CORRECTIONS; pass++) {
    const at = interpolateEven(even, positions);
    let worst = 0;
    for (let i = 0; i < n; i++) {
      residual[i] = values[i]! - at[i]!;
      worst = Math.max(worst, Math.abs(residual[i]!));
    }
    if (worst === 0) break;
    const correction = interpolateSpline(timeS, residual, grid);
    for (let i = 0; i < count; i++) even[i]! += correction[i]!;
  }
  return even;
};
