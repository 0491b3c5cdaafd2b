/** Path of a spectrum in the picture: thinned to the pixels, straight segments between. */
import type { LevelKind } from './level.ts';
import { levelOf } from './level.ts';
import type { SpectrumGeometry } from './geometry.ts';
import { thin } from './decimate.ts';

export interface TraceInput {
  /** m/s² at bin k·stepHz. */
  readonly amplitudes: Float64Array;
  readonly stepHz: number;
  readonly kind: LevelKind;
  readonly verticalShare: number | null;
}

/** SVG path data of the stretch that is shown, and one bin to each side of it. */
export function tracePath(
  { amplitudes, stepHz, kind, verticalShare }: TraceInput,
  geometry: Pick<SpectrumGeometry, 'x' | 'y' | 'left' | 'right'>,
): string {
  const { x, y, left, right } = geometry;
  const [fromHz = 0, toHz = 1] = x.domain();
  const points = thin(amplitudes, Math.max(1, fromHz / stepHz - 1), toHz / stepHz + 1, Math.ceil(right - left));
  let path = '';
  for (const { index, value } of points) {
    const hz = index * stepHz;
    path += `${path === '' ? 'M' : 'L'}${x(hz).toFixed(1)} ${y(levelOf(kind, hz, value, verticalShare)).toFixed(1)}`;
  }
  return path;
}

/** Levels of all bins, for the extent of the axis. */
export function levelsOf({ amplitudes, stepHz, kind, verticalShare }: TraceInput): Float64Array {
  return amplitudes.map((value, index) => levelOf(kind, index * stepHz, value, verticalShare));
}

/** A level low among all: the tenth part from below, to seat the axis on the floor and not on its deepest dip. */
export function lowLevel(levels: Float64Array): number {
  const sorted = levels.filter((level) => level > 0).sort();
  return sorted[Math.floor(sorted.length / 50)] ?? 1e-3;
}
