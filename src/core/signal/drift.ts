/** Taking out of a signal what moves too slowly to be vibration: gravity, grade, braking, sensor drift. */

/** Odd reflection about the ends, so that a ramp keeps its slope there. */
const reflected = (x: Float64Array, i: number): number => {
  const n = x.length;
  if (i < 0) return 2 * x[0]! - x[Math.min(n - 1, -i)]!;
  if (i >= n) return 2 * x[n - 1]! - x[Math.max(0, 2 * (n - 1) - i)]!;
  return x[i]!;
};

/** Mean over 2·half + 1 samples about each sample, by a running sum. */
const movingMean = (x: Float64Array, half: number): Float64Array => {
  const n = x.length;
  const out = new Float64Array(n);
  const width = 2 * half + 1;
  let sum = 0;
  for (let i = -half; i <= half; i++) sum += reflected(x, i);
  for (let i = 0; i < n; i++) {
    out[i] = sum / width;
    const enter = i + half + 1;
    const leave = i - half;
    sum += (enter < n ? x[enter]! : reflected(x, enter)) - (leave >= 0 ? x[leave]! : reflected(x, leave));
  }
  return out;
};

/** Width of the moving mean, s. Three passes leave 74 % at 0.33 Hz, 97 % at 0.5 Hz, and from 2 Hz on 99.8 … 100.2 %. */
const WIDTH_S = 1.5;

/**
 * The signal minus its slow part: minus a threefold moving mean (response 1 − sinc³(1.5 s · f)). The mean goes with it.
 * A piece shorter than the mean's width loses its mean and slope instead.
 */
export const withoutDrift = (samples: Float64Array, samplingRateHz: number): Float64Array => {
  const half = Math.round((WIDTH_S * samplingRateHz) / 2);
  if (samples.length < 2 * half + 2) return withoutLine(samples);
  let slow = movingMean(samples, half);
  slow = movingMean(slow, half);
  slow = movingMean(slow, half);
  const out = new Float64Array(samples.length);
  for (let i = 0; i < out.length; i++) out[i] = samples[i]! - slow[i]!;
  return out;
};

/** The signal minus its least-squares straight line. */
export const withoutLine = (samples: Float64Array): Float64Array => {
  const n = samples.length;
  const middle = (n - 1) / 2;
  let sum = 0;
  let slope = 0;
  for (let i = 0; i < n; i++) {
    sum += samples[i]!;
    slope += samples[i]! * (i - middle);
  }
  const perSample = n > 1 ? (slope * 12) / (n * (n * n - 1)) : 0;
  return samples.map((v, i) => v - sum / n - perSample * (i - middle));
};
