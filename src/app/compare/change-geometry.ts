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
  /** Whether names stand above their rows instead of beside them. */
  readonly namesAbove: boolean;
  readonly ticks: readonly number[];
}

const ROW_HEIGHT = 34;
/** On a narrow screen the name of an order stands above its row. */
const NARROW = 480;
const NARROW_ROW_HEIGHT = 50;
const NARROW_LEFT = 10;
const TOP = 24;
const AXIS = 26;
/** Width of a letter of a name, on the generous side, and what is left free about the name. */
const LETTER = 7.6;
const FREE = 20;

/** @param typeScale Size of the letters against the usual one. */
export function changeGeometry(changes: readonly OrderChange[], width: number, typeScale = 1): ChangeGeometry {
  const levels = changes
    .flatMap(({ before, after }) => [before.feltLevel, after.feltLevel])
    .filter((level) => level > 0);
  const low = 10 ** Math.floor(Math.log10(Math.min(0.5, ...levels)));
  const high = 10 ** Math.ceil(Math.log10(Math.max(2, ...levels)));
  const namesAbove = width < NARROW * typeScale;
  const longest = Math.max(0, ...changes.map(({ label }) => label.length));
  const left = namesAbove ? NARROW_LEFT : LETTER * typeScale * longest + FREE;
  const rowHeight = namesAbove ? NARROW_ROW_HEIGHT : ROW_HEIGHT;
  const right = Math.max(left + 60, width - 16);
  const decades = Math.round(Math.log10(high / low));
  return {
    x: scaleLog([low, high], [left, right]).clamp(true),
    left,
    right,
    height: TOP + changes.length * rowHeight + AXIS,
    rowY: changes.map((_, index) => TOP + (index + (namesAbove ? 0.75 : 0.5)) * rowHeight),
    namesAbove,
    ticks: Array.from({ length: decades + 1 }, (_, power) => +(low * 10 ** power).toPrecision(1)),
  };
}
