/** A recording as CSV: seconds from its first sample, three axes with gravity, road speed where it was fresh. */
import type { MotionSample, SpeedSample } from './recording-buffer.ts';

const AXES = ['time_s', 'accel_x_mps2', 'accel_y_mps2', 'accel_z_mps2'] as const;
const SPEED = 'road_speed_mps';

/**
 * Text that the recording reader reads back. The speed column is there only where a speed came; each speed stands in
 * the first row at or after its moment, the other cells are empty.
 */
export function recordingCsv(samples: readonly MotionSample[], speeds: readonly SpeedSample[]): string {
  const startMs = samples[0]?.timeMs ?? 0;
  const withSpeed = speeds.length > 0;
  const lines = [[...AXES, ...(withSpeed ? [SPEED] : [])].join(',')];
  let next = 0;
  for (const { timeMs, x, y, z } of samples) {
    const cells = [((timeMs - startMs) / 1000).toFixed(4), x.toFixed(5), y.toFixed(5), z.toFixed(5)];
    if (withSpeed) {
      let fresh = '';
      for (let speed = speeds[next]; speed && speed.timeMs <= timeMs; speed = speeds[++next]) {
        fresh = speed.speedMps.toFixed(2);
      }
      cells.push(fresh);
    }
    lines.push(cells.join(','));
  }
  return `${lines.join('\n')}\n`;
}

/** '2026-03-05-141502': a moment as file names can hold it, local time. */
export function stampOf(epochMs: number): string {
  const date = new Date(epochMs);
  const two = (value: number): string => String(value).padStart(2, '0');
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${day}-${two(date.getHours())}${two(date.getMinutes())}${two(date.getSeconds())}`;
}
