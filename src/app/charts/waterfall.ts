/** A run with changing speed as spectra at each speed: one averaged spectrum for each slice of the speed range. */
import type { RunPicture } from '../../core/report/analysis.ts';
import { levelOf } from './level.ts';
import { relativeAt } from './tracks.ts';

export interface SpeedSlice {
  /** Middle of the slice, relative to the reference speed. */
  readonly relative: number;
  /** Root mean square amplitude at bin k·stepHz over the columns in the slice, m/s². */
  readonly amplitudesMps2: Float64Array;
}

/** Below this share of the speed there is nothing to see in slices. */
const LEAST_RANGE = 0.06;
const MOST_SLICES = 14;
/** Slices narrower than this would split one order into two, as a share of the speed. */
const LEAST_WIDTH = 0.015;

/** Slowest first; none where the speed hardly changed. Slices that no time was spent in are left out. */
export function speedSlices({ timeFrequency: map, histories }: RunPicture): SpeedSlice[] {
  const speeds = Array.from(map.timeS, (atS) => relativeAt(histories.road, atS));
  const low = Math.min(...speeds);
  const high = Math.max(...speeds);
  if (!(high - low >= LEAST_RANGE)) return [];
  const count = Math.min(MOST_SLICES, Math.floor((high - low) / LEAST_WIDTH));
  const sums = Array.from({ length: count }, () => ({ columns: 0, power: new Float64Array(map.bins) }));
  speeds.forEach((speed, column) => {
    const slice = sums[Math.min(count - 1, Math.floor(((speed - low) / (high - low)) * count))];
    if (!slice) return;
    slice.columns++;
    for (let bin = 0; bin < map.bins; bin++) {
      slice.power[bin] = (slice.power[bin] ?? 0) + (map.amplitudeMps2[column * map.bins + bin] ?? 0) ** 2;
    }
  });
  return sums.flatMap(({ columns, power }, index) => {
    if (columns === 0) return [];
    const relative = low + ((index + 0.5) / count) * (high - low);
    return [{ relative, amplitudesMps2: power.map((sum) => Math.sqrt(sum / columns)) }];
  });
}

/** Felt levels from the middle of all that is shown to a little above the greatest: the axis of each trace. */
export function waterfallLevels(
  slices: readonly SpeedSlice[],
  stepHz: number,
  verticalShare: number | null,
  topHz: number,
): [low: number, high: number] {
  const levels = slices.flatMap(({ amplitudesMps2 }) =>
    Array.from(amplitudesMps2.subarray(Math.ceil(2 / stepHz), Math.ceil(topHz / stepHz)), (amplitude, index) =>
      levelOf('felt', 2 + index * stepHz, amplitude, verticalShare),
    ),
  );
  levels.sort((a, b) => a - b);
  const low = levels[Math.floor(levels.length / 3)] ?? 0.01;
  return [Math.max(low, 1e-4), Math.max((levels.at(-1) ?? 1) * 1.1, low * 10)];
}
