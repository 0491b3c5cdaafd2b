/** The lines of a made-up truck as speed, gear, axle ratio and tire are changed. */
import { expectedLines } from '../../core/vehicle/expected-lines.ts';
import type { Collision } from '../../core/vehicle/collisions.ts';
import { collisions } from '../../core/vehicle/collisions.ts';
import type { ExpectedLines, Line } from '../../core/vehicle/line.ts';

export const GEARS = [4.17, 2.34, 1.52, 1.14, 0.87, 0.69] as const;
export const TIRES = ['215/60R16', '225/65R17', '245/75R16', '265/70R17', '275/60R20', '285/75R16'] as const;

export interface Drive {
  readonly speedMps: number;
  /** Index into GEARS. */
  readonly gear: number;
  readonly axleRatio: number;
  readonly tire: string;
}

/** Frequencies shown, Hz. */
export const SHOWN_HZ = [0, 150] as const;

/** Lines of an eight-cylinder truck with rear drive. Every tire and ratio offered can be computed. */
export function linesOf({ speedMps, gear, axleRatio, tire }: Drive): ExpectedLines {
  const gearRatio = GEARS[gear] ?? 1;
  const lines = expectedLines(
    { layout: 'rear-drive', tire: { kind: 'size', size: tire }, axleRatio, gearRatios: GEARS, cylinders: 8 },
    { speedMps, speedSource: 'gps', gearRatio },
  );
  if (!lines.ok) throw new Error(lines.problem.message);
  return lines.value;
}

/** The run a class could record, s. */
const RUN_S = 40;
/** Orders worth a warning: beyond them hardly anything is felt. */
const LOW_ORDER = 4;

/** Pairs of low orders of different parts that a run of 40 s cannot part. */
export const closePairs = (lines: readonly Line[]): readonly Collision[] =>
  collisions(
    lines.filter((line) => line.order <= LOW_ORDER && line.frequencyHz <= SHOWN_HZ[1]),
    RUN_S,
  ).filter(({ first, second }) => first.part !== second.part);
