/** The shafts of the joints lesson as lines in a picture, and the fork ears that show how they stand. */
import { radFromDeg } from '../../core/units.ts';
import type { JointSetting } from './joints.ts';

export interface DrawnShaft {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  /** Slope of the shaft, degrees, positive downward. */
  readonly slopeDeg: number;
}

/** Lengths of driving, middle and driven shaft, px. */
const LENGTHS = { one: [190, 210], two: [110, 180, 110] } as const;
const START_X = 20;

/**
 * Shafts front to rear. The second joint bends back what the first bent, so that the last shaft runs like the first
 * where the angles are equal.
 */
export function drawnShafts({ count, firstDeg, secondDeg }: JointSetting): DrawnShaft[] {
  const slopes = count === 1 ? [0, firstDeg] : [0, firstDeg, firstDeg - secondDeg];
  const lengths = count === 1 ? LENGTHS.one : LENGTHS.two;
  const drawn: DrawnShaft[] = [];
  let x = START_X;
  let y = 0;
  slopes.forEach((slopeDeg, index) => {
    const length = lengths[index] ?? 0;
    const toX = x + length * Math.cos(radFromDeg(slopeDeg));
    const toY = y + length * Math.sin(radFromDeg(slopeDeg));
    drawn.push({ fromX: x, fromY: y, toX, toY, slopeDeg });
    [x, y] = [toX, toY];
  });
  return drawn;
}

/** The picture's upper and lower end around the shafts, px. */
export function heightOf(shafts: readonly DrawnShaft[]): readonly [top: number, height: number] {
  const ys = shafts.flatMap(({ fromY, toY }) => [fromY, toY]);
  const top = Math.min(...ys) - 46;
  return [top, Math.max(...ys) + 46 - top];
}

/** How far from the middle line an ear of a fork is seen, as a share of its radius; 1 stands in the picture's plane. */
export const earShare = (angleDeg: number): number => Math.cos(radFromDeg(angleDeg));
