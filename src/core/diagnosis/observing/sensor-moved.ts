/** Gravity tells whether a sensor stayed as it lay: one that came loose or was turned reads two directions as one. */
import type { Note } from '../../note.ts';
import type { Recording } from '../../reading/recording.ts';
import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';

/** Share of the recording at either end over which gravity is read. */
const END_SHARE = 0.2;
/** Pulling or braking hard, at 0.4 g, is worth 22°; hills and a nodding seat less. */
const MOVED_FROM_DEG = 25;
/** A mean this far from gravity, as a share of it, is no gravity alone. */
const AS_GRAVITY = 0.15;

/** A warning where gravity points elsewhere at the end than at the beginning; null where it does not, or is not there. */
export function sensorMoved(recording: Recording): Note | null {
  if (recording.channels.length < 3) return null;
  const [begin, end] = [gravityOver(recording, false), gravityOver(recording, true)];
  if (!begin || !end) return null;
  const cosine =
    begin.reduce((sum, value, k) => sum + value * end[k]!, 0) / (Math.hypot(...begin) * Math.hypot(...end));
  const angleDeg = (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI;
  if (angleDeg < MOVED_FROM_DEG) return null;
  return {
    code: 'sensor-moved',
    severity: 'warning',
    text: `By gravity the sensor turned by ${angleDeg.toFixed(0)}° during the recording: levels may be read too small, and which way it shakes is not known. Fix the sensor so that it cannot move, and record again.`,
  };
}

/** Mean acceleration over the first or last fifth of the samples, m/s²; null where that is not about gravity. */
function gravityOver({ segments, channels }: Recording, last: boolean): readonly number[] | null {
  const total = segments.reduce((sum, { accelerationMps2 }) => sum + (accelerationMps2[0]?.length ?? 0), 0);
  const wanted = Math.floor(END_SHARE * total);
  if (wanted < 2) return null;
  const sums = channels.map(() => 0);
  let left = wanted;
  for (const { accelerationMps2 } of last ? [...segments].reverse() : segments) {
    const rows = Math.min(left, accelerationMps2[0]?.length ?? 0);
    accelerationMps2.forEach((axis, k) => {
      const part = last ? axis.subarray(axis.length - rows) : axis.subarray(0, rows);
      sums[k]! += part.reduce((sum, value) => sum + value, 0);
    });
    left -= rows;
    if (left <= 0) break;
  }
  const mean = sums.map((sum) => sum / wanted);
  return Math.abs(Math.hypot(...mean) / STANDARD_GRAVITY_MPS2 - 1) < AS_GRAVITY ? mean : null;
}
