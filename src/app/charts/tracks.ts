/** Paths of orders over time: a line's frequency times the speed history. */
import { line as linePath } from 'd3';
import type { ScaleLinear } from 'd3';
import type { RunPicture } from '../../core/report/analysis.ts';
import type { SpeedTrack } from '../../core/signal/speed/equal-angle.ts';
import { aliasOfHz } from '../../core/vehicle/alias.ts';
import type { Line } from '../../core/vehicle/line.ts';

/** Relative speed at a time, by straight lines between the points; level beyond the ends. */
export function relativeAt({ timeS, relative }: SpeedTrack, atS: number): number {
  const after = timeS.findIndex((time) => time >= atS);
  if (after < 0) return relative.at(-1) ?? 1;
  const [t1, r1] = [timeS[after] ?? 0, relative[after] ?? 1];
  if (after === 0) return r1;
  const [t0, r0] = [timeS[after - 1] ?? 0, relative[after - 1] ?? 1];
  return t1 > t0 ? r0 + ((r1 - r0) * (atS - t0)) / (t1 - t0) : r1;
}

/** SVG path of one line, or of its image, over the shown time. */
export function trackPath(
  line: Line,
  { histories, samplingRateHz }: RunPicture,
  x: ScaleLinear<number, number>,
  time: ScaleLinear<number, number>,
): string {
  const [from = 0, to = 0] = time.domain();
  const track = histories[line.group];
  const inside = [...track.timeS].filter((atS) => atS > from && atS < to);
  const points = [from, ...inside, to].map((atS): [number, number] => [
    x(aliasOfHz(line.frequencyHz * relativeAt(track, atS), samplingRateHz)),
    time(atS),
  ]);
  return linePath()(points) ?? '';
}
