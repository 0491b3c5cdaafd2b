/**
 * Resampling from equal time to equal angle along a speed track, so that what turns with the speed becomes steady
 * (computed order tracking: K. R. Fyfe & E. D. S. Munck, Mech. Systems and Signal Processing 11(2), 1997, 187–205).
 */
import { interpolateAxes, type FlatTo } from '../numeric/band-limited.ts';
import { interpolateLinear } from '../numeric/interpolate.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** Speed relative to a reference speed, on the recording's clock, joined by straight lines and held at the ends. */
export interface SpeedTrack {
  readonly timeS: Float64Array;
  readonly relative: Float64Array;
}

export const STEADY: SpeedTrack = { timeS: Float64Array.of(0), relative: Float64Array.of(1) };

/** Relative speed at a time. */
export const relativeSpeedAt = (track: SpeedTrack, timeS: number): number =>
  interpolateLinear(track.timeS, track.relative, timeS);

/**
 * ∫ (relative − 1) dt at even steps, s of reference time: how far what turns with the speed is ahead of what keeps to
 * the clock. Trapezes.
 */
export const timeAhead = (track: SpeedTrack, startS: number, stepS: number, count: number): Float64Array => {
  const out = new Float64Array(count);
  let before = relativeSpeedAt(track, startS) - 1;
  for (let i = 1; i < count; i++) {
    const now = relativeSpeedAt(track, startS + i * stepS) - 1;
    out[i] = out[i - 1]! + 0.5 * (before + now) * stepS;
    before = now;
  }
  return out;
};

/** ∫ relative dt from the track's first time to each of its times, s of reference time. */
const turnedAtKnots = ({ timeS, relative }: SpeedTrack): Float64Array => {
  const out = new Float64Array(timeS.length);
  for (let i = 1; i < out.length; i++) {
    out[i] = out[i - 1]! + 0.5 * (relative[i]! + relative[i - 1]!) * (timeS[i]! - timeS[i - 1]!);
  }
  return out;
};

/** Maps clock time to reference time (how long the turning so far would have taken at the reference speed) and back. */
export interface ReferenceClock {
  readonly fromClock: (timeS: number) => number;
  readonly toClock: (referenceS: number) => number;
}

/** Exact for the straight-line track: the turning is a parabola between two knots. */
export const referenceClock = (track: SpeedTrack): ReferenceClock => {
  const { timeS, relative } = track;
  const turned = turnedAtKnots(track);
  const n = timeS.length;
  const start = timeS[0]!;
  // Times are mostly asked for in order: the stretch that held the last one, or the next, holds this one too.
  let last = 0;
  const search = (values: Float64Array, at: number): number => {
    for (let k = last; k < Math.min(last + 2, n - 1); k++)
      if (values[k]! <= at && at < values[k + 1]!) return (last = k);
    return (last = bisect(values, at));
  };
  const bisect = (values: Float64Array, at: number): number => {
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const mid = (low + high) >>> 1;
      if (values[mid]! <= at) low = mid;
      else high = mid;
    }
    return low;
  };
  // Reference time agrees with the clock where the track begins.
  const fromClock = (t: number): number => {
    if (n < 2 || t <= start) return start + (t - start) * relative[0]!;
    if (t >= timeS[n - 1]!) return start + turned[n - 1]! + (t - timeS[n - 1]!) * relative[n - 1]!;
    const k = search(timeS, t);
    const d = t - timeS[k]!;
    const slope = (relative[k + 1]! - relative[k]!) / (timeS[k + 1]! - timeS[k]!);
    return start + turned[k]! + d * (relative[k]! + 0.5 * slope * d);
  };
  const toClock = (u: number): number => {
    const at = u - start;
    if (n < 2 || at <= 0) return start + at / relative[0]!;
    if (at >= turned[n - 1]!) return timeS[n - 1]! + (at - turned[n - 1]!) / relative[n - 1]!;
    const k = search(turned, at);
    const need = at - turned[k]!;
    const r = relative[k]!;
    const slope = (relative[k + 1]! - r) / (timeS[k + 1]! - timeS[k]!);
    // Root of ½·slope·d² + r·d = need, written so that it does not cancel for small slopes.
    return timeS[k]! + (2 * need) / (r + Math.sqrt(Math.max(0, r * r + 2 * slope * need)));
  };
  return { fromClock, toClock };
};

/**
 * The recording on equal angle. "Time" in the result is reference time: a part that turns at f·relative(t) shows at f.
 * The rate is raised by the slowest relative speed so that no content is lost where the vehicle was slow; pieces keep
 * their order and gaps.
 * @param flatTo 0.92 of half the rate is enough, and quicker, to judge a track by what lies lower
 */
export const resampleToEqualAngle = (prepared: Prepared, track: SpeedTrack, flatTo: FlatTo = 0.99): Prepared => {
  const clock = referenceClock(track);
  const rate = prepared.samplingRateHz;
  const slowest = Math.max(
    0.1,
    track.relative.reduce((least, r) => Math.min(least, r), 1),
  );
  const angleRate = rate / slowest;
  const pieces = prepared.pieces.map(({ startS, axes }) => {
    const n = axes[0]?.length ?? 0;
    const first = clock.fromClock(startS);
    const last = clock.fromClock(startS + (n - 1) / rate);
    const count = Math.max(1, Math.floor((last - first) * angleRate) + 1);
    const positions = new Float64Array(count);
    for (let i = 0; i < count; i++) positions[i] = (clock.toClock(first + i / angleRate) - startS) * rate;
    return { startS: first, axes: interpolateAxes(axes, positions, flatTo) };
  });
  const samples = pieces.reduce((sum, piece) => sum + (piece.axes[0]?.length ?? 0), 0);
  return { samplingRateHz: angleRate, durationS: samples / angleRate, pieces, up: prepared.up };
};
