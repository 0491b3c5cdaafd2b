/** The stretch below all turning parts: what stands there is road and body, not a line of any part. */
import type { Line } from '../../core/vehicle/line.ts';

/** Free below the slowest line for the error of its speed and the foot of its peak, as a share of it. */
const CLEAR = 0.7;

/** Upper end of that stretch, Hz; 0 where no line is expected. */
export function belowLinesHz(lines: readonly Line[]): number {
  if (lines.length === 0) return 0;
  return CLEAR * Math.min(...lines.map(({ frequencyHz, aliasHz }) => aliasHz ?? frequencyHz));
}
