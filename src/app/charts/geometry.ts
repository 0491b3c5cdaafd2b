/** Where things stand in the spectrum picture, px. Scales come from d3; drawing is the components' work. */
import { scaleLinear, scaleLog } from 'd3';
import type { ScaleLinear, ScaleLogarithmic } from 'd3';
import { LETTER_PX, wordWidth } from './lanes.ts';
import type { Domain } from './viewport.ts';

export interface SpectrumGeometry {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Lower edge of the level plot. */
  readonly bottom: number;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLogarithmic<number, number>;
  /** Middle of each lane. */
  readonly laneY: readonly number[];
  readonly laneHeight: number;
  /** Whether the lanes' names fit left of the plot; on a narrow screen they stand above the lane. */
  readonly namesInGutter: boolean;
  /** Base line of the frequency axis. */
  readonly axisY: number;
  /** Width of a letter, px. */
  readonly letterPx: number;
  /** From the middle of a lane down to the base line of its marks' words. */
  readonly wordDrop: number;
}

export interface GeometryInput {
  readonly width: number;
  /** See `leftMargin`. */
  readonly left: number;
  /** Type size against the normal one: greater on a projector. */
  readonly typeScale?: number;
  readonly shown: Domain;
  readonly levels: readonly [low: number, high: number];
  readonly lanes: number;
  /** Height of the level plot. */
  readonly plotHeight: number;
}

export const MARGIN = { right: 14, top: 22, axis: 26 } as const;
const LANE_HEIGHT = 36;
const NARROW_LANE_HEIGHT = 46;
/** From this width the lanes' names stand left of the plot. */
const WIDE_PX = 600;

/** The names are bold, and their letters wider than most. */
const NAME_LETTER_PX = 8.2;
/** Beside a name in the gutter, and what is left free about it, px. */
const NAME_FREE = 20;
/** Room for the levels' figures, px. */
const FIGURES = 46;

/**
 * Room left of the plot, the same in all pictures so that their frequencies stand above each other: for the longest
 * of the lanes' names where they stand beside the plot.
 */
export function leftMargin(width: number, laneNames: readonly string[], typeScale = 1): number {
  const figures = FIGURES * typeScale;
  if (width < WIDE_PX) return figures;
  return Math.max(figures, ...laneNames.map((name) => wordWidth(name, NAME_LETTER_PX * typeScale) + NAME_FREE));
}

export function spectrumGeometry(input: GeometryInput): SpectrumGeometry {
  const { width, left, typeScale = 1, shown, levels, lanes, plotHeight } = input;
  const namesInGutter = width >= WIDE_PX;
  // The words of a lane's marks stand under them.
  const taller = 12 * (typeScale - 1);
  const laneHeight = (namesInGutter ? LANE_HEIGHT : NARROW_LANE_HEIGHT) + taller;
  const right = Math.max(left + 40, width - MARGIN.right);
  const top = MARGIN.top;
  const bottom = top + plotHeight;
  const laneY = Array.from({ length: lanes }, (_, index) => bottom + 12 + (index + 0.5) * laneHeight);
  const axisY = bottom + 12 + lanes * laneHeight + 6;
  return {
    width,
    height: axisY + MARGIN.axis,
    left,
    right,
    top,
    bottom,
    x: scaleLinear([...shown], [left, right]),
    y: scaleLog([...levels], [bottom, top]).clamp(true),
    laneY,
    laneHeight,
    namesInGutter,
    axisY,
    letterPx: LETTER_PX * typeScale,
    wordDrop: 8 + 13 * typeScale,
  };
}

/** Tick places for a width: about one every 90 px. */
export function frequencyTicks(x: ScaleLinear<number, number>): number[] {
  const [from = 0, to = 0] = x.range();
  return x.ticks(Math.max(3, Math.floor((to - from) / 90)));
}

/** Whole decades, and 2 and 5 between them where there are few. */
export function levelTicks(y: ScaleLogarithmic<number, number>): number[] {
  const [low = 1, high = 10] = y.domain();
  const decades = Math.log10(high / low);
  const steps = decades > 2.2 ? [1] : [1, 2, 5];
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
    for (const step of steps) {
      const value = step * 10 ** power;
      if (value >= low * 0.999 && value <= high * 1.001) ticks.push(+value.toPrecision(2));
    }
  }
  return ticks;
}

/** '0.05', '1', '200': a level on the axis. */
export const levelTickText = (value: number): string =>
  value >= 1 ? value.toFixed(0) : value.toFixed(Math.ceil(-Math.log10(value) - 1e-9));
