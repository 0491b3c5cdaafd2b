/** Where each order's before and after stand in the picture. */
import { scaleLog } from 'd3';
import type { ScaleLogarithmic } from 'd3';
import type { OrderChange } from '../../core/diagnosis/compare/comparison.ts';

export interface ChangeGeometry {
  readonly x: ScaleLogarithmic<number, number>;
  readonly left: number;
  readonly right: number;
  readonly height: number;
  readonly rowY: readonly number[];
  readonly ticks: readonly number[];
}

const ROW_HEIGHT = 34;
const TOP = 18;
const AXIS = 26;

/** Room for the longest label of an order. */
const leftOf = (width: number): number => (width < 480 ? 96 : 140);

export function changeGeometry(changes: readonly OrderChange[], width: number): ChangeGeometry {
  const levels = changes
    .flatMap(({ before, after }) => [before.feltLevel, after.feltLevel])
    .filter((level) => level > 0);
  const low = 10 ** Math.floor(Math.log10(Math.min(0.5, ...levels)));
  const high = 10 ** Math.ceil(Math.log10(Math.max(2, ...levels)));
  const left = leftOf(width);
  const right = Math.max(left + 60, width - 16);
  const decades = Math.round(Math.log10(high / low));
  return {
    x: scaleLog([low, high], [left, right]).clamp(true),
    left,
    right,
    height: TOP + changes.length * ROW_HEIGHT + AXIS,
    rowY: changes.map((_, index) => TOP + (index + 0.5) * ROW_HEIGHT),
    ticks: Array.from({ length: decades + 1 }, (_, power) => +(low * 10 ** power).toPrecision(1)),
  };
}
