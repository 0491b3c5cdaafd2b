/** Places in a round picture of 240 px: 0° at the top, angles clockwise, as seen looking at the end of the shaft. */
import type { Complex } from '../../core/complex.ts';

export const MIDDLE = 120;
/** Radius there is for what is drawn, px; words stand outside. */
export const ROOM = 96;

export type Pixel = readonly [x: number, y: number];

/** @param full Size that reaches the rim. */
export const pixelOf = ({ re, im }: Complex, full: number): Pixel => [
  MIDDLE + (ROOM * im) / full,
  MIDDLE - (ROOM * re) / full,
];

/** Length in px of a size. */
export const pixels = (size: number, full: number): number => (ROOM * size) / full;

/** An arrow with its head; only a line where it is too short for a head. */
export function arrowPath([fromX, fromY]: Pixel, [toX, toY]: Pixel): string {
  const length = Math.hypot(toX - fromX, toY - fromY);
  const shaft = `M${fromX.toFixed(1)} ${fromY.toFixed(1)}L${toX.toFixed(1)} ${toY.toFixed(1)}`;
  if (length < 12) return shaft;
  const [ux, uy] = [(toX - fromX) / length, (toY - fromY) / length];
  const barb = (side: number): string =>
    `L${(toX - 10 * ux + side * 5 * uy).toFixed(1)} ${(toY - 10 * uy - side * 5 * ux).toFixed(1)}`;
  return `${shaft}${barb(1)}M${toX.toFixed(1)} ${toY.toFixed(1)}${barb(-1)}`;
}

/** The view that shows all circles whole, with a margin of a twentieth: left, top, width, height. */
export function boxAround(
  circles: readonly { readonly at: Pixel; readonly radius: number }[],
): readonly [left: number, top: number, width: number, height: number] {
  const edge = (axis: 0 | 1, side: 1 | -1): number =>
    side * Math.max(...circles.map(({ at, radius }) => side * at[axis] + radius));
  const [left, top] = [edge(0, -1), edge(1, -1)];
  const [width, height] = [edge(0, 1) - left, edge(1, 1) - top];
  const margin = Math.max(width, height) / 20;
  return [left - margin, top - margin, width + 2 * margin, height + 2 * margin];
}
