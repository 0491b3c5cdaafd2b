/** A logged speed as a history to start the search from. */
import type { Track } from '../../reading/recording.ts';
import { normalized, type SpeedTrack } from './speed-track.ts';

/** Values are averaged over this long: a logger writes whole km/h once a second. */
const SMOOTH_S = 3;
const KNOT_S = 1;
/** A speed this near standstill has no logarithm worth following. */
const LEAST_MPS = 0.5;

/**
 * Weighted means (triangle of ±3 s) at a knot a second, with slopes from the neighbours.
 * @param log road or wheel speed, m/s
 */
export const trackFromLog = ({ timeS, value }: Track): SpeedTrack | null => {
  const n = timeS.length;
  if (n < 4) return null;
  const start = timeS[0]!;
  const knots = Math.max(2, Math.floor((timeS[n - 1]! - start) / KNOT_S) + 1);
  const times = Float64Array.from({ length: knots }, (_, i) => start + i * KNOT_S);
  let from = 0;
  const logSpeed = times.map((t) => {
    let sum = 0;
    let weights = 0;
    while (from < n - 1 && timeS[from]! < t - SMOOTH_S) from++;
    for (let i = from; i < n && timeS[i]! <= t + SMOOTH_S; i++) {
      const weight = Math.max(1e-6, 1 - Math.abs(timeS[i]! - t) / SMOOTH_S);
      sum += weight * value[i]!;
      weights += weight;
    }
    return Math.log(Math.max(LEAST_MPS, weights > 0 ? sum / weights : value[from]!));
  });
  const slopePerS = logSpeed.map((_, i) => {
    const a = Math.max(0, i - 1);
    const b = Math.min(knots - 1, i + 1);
    return (logSpeed[b]! - logSpeed[a]!) / ((b - a) * KNOT_S);
  });
  return normalized({ timeS: times, logSpeed, slopePerS }, times).track;
};
