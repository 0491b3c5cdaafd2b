/** A logged speed as a history to start the search from. */
import type { Track } from '../../reading/recording.ts';
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';

/** Values are averaged over this long to each side: a logger writes whole km/h once a second. */
const SMOOTH_S = 3;
const KNOT_S = 1;
/** A speed this near standstill is not divided by. */
const LEAST_MPS = 0.5;

/**
 * Weighted means (triangle of ±3 s) at a knot a second.
 * @param log road or wheel speed, m/s
 * @returns null where there are too few values to follow
 */
export const trackFromLog = ({ timeS, value }: Track): SpeedTrack | null => {
  const n = timeS.length;
  if (n < 4) return null;
  const start = timeS[0]!;
  const knots = Math.max(2, Math.floor((timeS[n - 1]! - start) / KNOT_S) + 1);
  const times = Float64Array.from({ length: knots }, (_, i) => start + i * KNOT_S);
  let from = 0;
  const speed = times.map((t) => {
    let sum = 0;
    let weights = 0;
    while (from < n - 1 && timeS[from]! < t - SMOOTH_S) from++;
    for (let i = from; i < n && timeS[i]! <= t + SMOOTH_S; i++) {
      const weight = Math.max(1e-6, 1 - Math.abs(timeS[i]! - t) / SMOOTH_S);
      sum += weight * value[i]!;
      weights += weight;
    }
    return Math.max(LEAST_MPS, weights > 0 ? sum / weights : value[from]!);
  });
  const mean = speed.reduce((a, b) => a + b, 0) / knots;
  return { timeS: times, relative: speed.map((v) => v / mean) };
};
