/** The speed's history relative to its mean: a curve through rows with their slopes, and what it does to time. */

/** ln of relative speed at knots, with slopes; the mean of the relative speed over the recording is 1. */
export interface SpeedTrack {
  readonly timeS: Float64Array;
  readonly logSpeed: Float64Array;
  readonly slopePerS: Float64Array;
}

export const STEADY_TRACK: SpeedTrack = {
  timeS: Float64Array.of(0),
  logSpeed: Float64Array.of(0),
  slopePerS: Float64Array.of(0),
};

/** Beyond the first and last row the slope is trusted for this long, s. */
const RUN_ON_S = 6;

/** ln of relative speed at a time: cubic Hermite between knots, run on by the slope at the ends. */
export const logSpeedAt = ({ timeS, logSpeed, slopePerS }: SpeedTrack, t: number): number => {
  const n = timeS.length;
  if (t <= timeS[0]!) return logSpeed[0]! + slopePerS[0]! * Math.max(-RUN_ON_S, t - timeS[0]!);
  if (t >= timeS[n - 1]!) return logSpeed[n - 1]! + slopePerS[n - 1]! * Math.min(RUN_ON_S, t - timeS[n - 1]!);
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const middle = (low + high) >>> 1;
    if (timeS[middle]! <= t) low = middle;
    else high = middle;
  }
  const h = timeS[high]! - timeS[low]!;
  const u = (t - timeS[low]!) / h;
  const a = logSpeed[low]!;
  const b = logSpeed[high]!;
  const da = slopePerS[low]! * h;
  const db = slopePerS[high]! * h;
  return a + u * (da + u * (3 * (b - a) - 2 * da - db + u * (2 * (a - b) + da + db)));
};

/** The track at even steps over the given stretches of time. */
export interface Sampled {
  readonly timeS: Float64Array;
  readonly relative: Float64Array;
}

export const relativeSpeeds = (track: SpeedTrack, timeS: Float64Array): Float64Array =>
  timeS.map((t) => Math.exp(logSpeedAt(track, t)));

/** The same track with the mean of its relative speed over the given times made 1; returns also by how much it moved. */
export const normalized = (
  track: SpeedTrack,
  timeS: Float64Array,
): { readonly track: SpeedTrack; readonly logMean: number } => {
  const relative = relativeSpeeds(track, timeS);
  const logMean = Math.log(relative.reduce((a, b) => a + b, 0) / relative.length);
  return { track: { ...track, logSpeed: track.logSpeed.map((s) => s - logMean) }, logMean };
};

/** Two histories one on top of the other (their logs added), at the knots of the second. */
export const combined = (first: SpeedTrack, second: SpeedTrack): SpeedTrack => {
  const step = 0.05;
  return {
    timeS: second.timeS,
    logSpeed: second.logSpeed.map((s, i) => s + logSpeedAt(first, second.timeS[i]!)),
    slopePerS: second.slopePerS.map((slope, i) => {
      const t = second.timeS[i]!;
      return slope + (logSpeedAt(first, t + step) - logSpeedAt(first, t - step)) / (2 * step);
    }),
  };
};
