/** Taking out of a signal what moves too slowly to be vibration: gravity, grade, braking, sensor drift. */

/** A signal that goes on beyond its ends by odd reflection about where it stood there, so that a ramp keeps its slope. */
const reflecting = (x: Float64Array, half: number): ((i: number) => number) => {
  const n = x.length;
  // Where it stood, not what a vibration made of the last sample: that would lie over the ends as a step.
  const first = standAt(x, 0, half);
  const last = standAt(x, n - 1, half);
  return (i) => {
    if (i < 0) return 2 * first - x[Math.min(n - 1, -i)]!;
    if (i >= n) return 2 * last - x[Math.max(0, 2 * (n - 1) - i)]!;
    return x[i]!;
  };
};

/** Value at an end (index 0 or the last) of the straight line through the half + 1 samples next to it. */
const standAt = (x: Float64Array, end: number, half: number): number => {
  const count = Math.min(x.length, half + 1);
  const inward = end === 0 ? 1 : -1;
  let sum = 0;
  let slope = 0;
  for (let k = 0; k < count; k++) {
    const value = x[end + inward * k]!;
    sum += value;
    slope += value * (k - (count - 1) / 2);
  }
  const perSample = count > 1 ? (slope * 12) / (count * (count * count - 1)) : 0;
  return sum / count - (perSample * (count - 1)) / 2;
};

/** Mean over 2·half + 1 samples about each sample, by a running sum. */
const movingMean = (x: Float64Array, half: number): Float64Array => {
  const n = x.length;
  const reflected = reflecting(x, half);
  const out = new Float64Array(n);
  const width = 2 * half + 1;
  let sum = 0;
  for (let i = -half; i <= half; i++) sum += reflected(i);
  for (let i = 0; i < n; i++) {
    out[i] = sum / width;
    const enter = i + half + 1;
    const leave = i - half;
    sum += (enter < n ? x[enter]! : reflected(enter)) - (leave >= 0 ? x[leave]! : reflected(leave));
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
