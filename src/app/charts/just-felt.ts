/** The line of what is just felt: level in the felt picture, a curve where the axis is acceleration or velocity. */
import { feltLevel } from '../../core/signal/felt.ts';
import type { SpectrumGeometry } from './geometry.ts';
import type { LevelKind } from './level.ts';
import { levelOf } from './level.ts';

/** Place and size of a word in the picture, px. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Height of a word above the line, and the room it keeps to others, px. */
const WORD_HEIGHT = 18;

/**
 * Where the word on the line ends: as far right as it meets none of the boxes. Where all places are taken it stays
 * at the right end.
 *
 * @param word Width of the word, px.
 * @param lineYAt Height of the line at a place, px; null where the line is outside the picture.
 */
export function wordEnd(
  { left, right }: Pick<SpectrumGeometry, 'left' | 'right'>,
  word: number,
  lineYAt: (px: number) => number | null,
  taken: readonly Box[],
): number {
  for (let end = right - 2; end - word > left; end -= STEP_PX) {
    const lineY = lineYAt(end - word / 2);
    if (lineY === null) continue;
    const meets = taken.some(
      (box) => box.left < end && box.right > end - word && box.top < lineY && box.bottom > lineY - WORD_HEIGHT,
    );
    if (!meets) return end;
  }
  return right - 2;
}

/** Px between points of the curve. */
const STEP_PX = 6;

/** Height of the line at a place, px; null where it is outside the levels shown. */
export function justFeltY(
  { x, y }: Pick<SpectrumGeometry, 'x' | 'y'>,
  kind: LevelKind,
  share: number | null,
  px: number,
): number | null {
  const [low = 0, high = 0] = y.domain();
  const hz = Math.max(0.5, x.invert(px));
  // The amplitude whose felt level is 1 follows from the level being proportional to it.
  const level = levelOf(kind, hz, 1 / feltLevel(hz, 1, share), share);
  return level < low || level > high ? null : y(level);
}

/** @param fromPx Where the line begins, px: it says nothing of what stands below all turning parts. */
export function justFeltPath(
  geometry: SpectrumGeometry,
  kind: LevelKind,
  share: number | null,
  fromPx = geometry.left,
): string {
  let path = '';
  for (let px = Math.max(fromPx, geometry.left); px <= geometry.right; px += STEP_PX) {
    const lineY = justFeltY(geometry, kind, share, px);
    if (lineY !== null) path += `${path === '' ? 'M' : 'L'}${px.toFixed(1)} ${lineY.toFixed(1)}`;
  }
  return path;
}
