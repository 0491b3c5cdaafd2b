/** The line of what is just felt: level in the felt picture, a curve where the axis is acceleration or velocity. */
import { feltLevel } from '../../core/signal/felt.ts';
import type { SpectrumGeometry } from './geometry.ts';
import type { LevelKind } from './level.ts';
import { levelOf } from './level.ts';

/** Px between points of the curve. */
const STEP_PX = 6;

export function justFeltPath(
  { x, y, left, right }: SpectrumGeometry,
  kind: LevelKind,
  share: number | null,
): { readonly path: string; readonly labelY: number } {
  const [low = 0, high = 0] = y.domain();
  let path = '';
  let labelY = 0;
  for (let px = left; px <= right; px += STEP_PX) {
    const hz = Math.max(0.5, x.invert(px));
    // The amplitude whose felt level is 1 follows from the level being proportional to it.
    const level = levelOf(kind, hz, 1 / feltLevel(hz, 1, share), share);
    if (level < low || level > high) continue;
    labelY = y(level);
    path += `${path === '' ? 'M' : 'L'}${px.toFixed(1)} ${labelY.toFixed(1)}`;
  }
  return { path, labelY };
}
