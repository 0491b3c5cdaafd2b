/** A path through rows, with its slopes, as a speed track. */
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { withUnitMean } from '../../signal/speed/combine-tracks.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import type { ChirpPath } from './chirp-path.ts';

/** Knots between two rows: the cubic through them is cut into this many straight lines. */
const KNOTS = 4;
/** Before the first and after the last row the slope is trusted for this long, s. */
const RUN_ON_S = 4;

/** Cubic Hermite between rows, run on by the slope at the ends; the mean over the recording is made 1. */
export const trackOfPath = ({ timeS, logSpeed, slopePerS }: ChirpPath, prepared: Prepared): SpeedTrack => {
  const n = timeS.length;
  const times: number[] = [timeS[0]! - RUN_ON_S];
  const logs: number[] = [logSpeed[0]! - RUN_ON_S * slopePerS[0]!];
  for (let r = 0; r + 1 < n; r++) {
    const h = timeS[r + 1]! - timeS[r]!;
    const a = logSpeed[r]!;
    const b = logSpeed[r + 1]!;
    const da = slopePerS[r]! * h;
    const db = slopePerS[r + 1]! * h;
    for (let k = 0; k < KNOTS; k++) {
      const u = k / KNOTS;
      times.push(timeS[r]! + u * h);
      logs.push(a + u * (da + u * (3 * (b - a) - 2 * da - db + u * (2 * (a - b) + da + db))));
    }
  }
  times.push(timeS[n - 1]!, timeS[n - 1]! + RUN_ON_S);
  logs.push(logSpeed[n - 1]!, logSpeed[n - 1]! + RUN_ON_S * slopePerS[n - 1]!);
  return withUnitMean({ timeS: Float64Array.from(times), relative: Float64Array.from(logs, Math.exp) }, prepared);
};
