/** Where things stand in a lesson's picture, px, and the numbers behind it. */
import { line, scaleLinear } from 'd3';
import type { ScaleLinear } from 'd3';

export type Point = readonly [x: number, y: number];

export interface PlotAxis {
  readonly label: string;
  readonly domain: readonly [from: number, to: number];
  /** Places of the tick words; else chosen by room. */
  readonly ticks?: readonly number[];
}

export interface PlotSeries {
  readonly name: string;
  readonly points: readonly Point[];
  /** How it is drawn; the first two are told apart by their pattern as well as their color. */
  readonly look: 'main' | 'second' | 'faint' | 'dots' | 'stems';
}

/** A place on the frequency or angle axis with a word on it. */
export interface PlotMark {
  readonly at: number;
  readonly text: string;
}

export interface PlotGeometry {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly height: number;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
}

/** @param fontPx Size of one rem: room for words grows with it. */
export function plotGeometry(width: number, plotHeight: number, x: PlotAxis, y: PlotAxis, fontPx = 16): PlotGeometry {
  const left = 3 * fontPx;
  const right = Math.max(left + 40, width - 14);
  const top = 1.6 * fontPx;
  const bottom = top + plotHeight;
  return {
    left,
    right,
    top,
    bottom,
    height: bottom + 2.6 * fontPx,
    x: scaleLinear([...x.domain], [left, right]),
    y: scaleLinear([...y.domain], [bottom, top]),
  };
}

/** Path through the points; what is above or below the picture is drawn along its edge. */
export function seriesPath({ points, look }: PlotSeries, { x, y, top, bottom }: PlotGeometry): string {
  const edge = (value: number): number => Math.min(bottom, Math.max(top, y(value)));
  if (look === 'stems') {
    return points
      .map((p) => `M${x(p[0]).toFixed(1)} ${bottom}L${x(p[0]).toFixed(1)} ${edge(p[1]).toFixed(1)}`)
      .join('');
  }
  const path = line<Point>()
    .defined((p) => Number.isFinite(p[1]))
    .x((p) => x(p[0]))
    .y((p) => edge(p[1]))
    .digits(1);
  return path([...points]) ?? '';
}

export const ticksOf = (axis: PlotAxis, scale: ScaleLinear<number, number>, spacePx: number): readonly number[] => {
  const [from = 0, to = 0] = scale.range();
  return axis.ticks ?? scale.ticks(Math.max(2, Math.floor(Math.abs(to - from) / spacePx)));
};

/** Most rows a reader is asked to go through. */
const MOST_ROWS = 25;

/** The numbers behind the lines: shared places, and the value of each series there. Thinned evenly to 25 rows. */
export function tableRows(series: readonly PlotSeries[]): readonly (readonly [number, ...(number | null)[]])[] {
  const [longest] = [...series].sort((a, b) => b.points.length - a.points.length);
  const places = longest?.points.map(([x]) => x) ?? [];
  const every = Math.max(1, Math.ceil(places.length / MOST_ROWS));
  return places
    .filter((_, index) => index % every === 0)
    .map((place) => [place, ...series.map(({ points }) => points.find(([x]) => x === place)?.[1] ?? null)]);
}

const STEPS = [1, 1.5, 2, 3, 4, 5, 6, 8, 10];

/** The next of 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 15 … at or above a value: an axis that grows in steps, so that growth is seen. */
export function roundUp(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  return (STEPS.find((step) => step * power >= value * (1 - 1e-9)) ?? 10) * power;
}
