/** Small files in every logger layout, of a shake whose samples are known. */
import { csvText } from '../../src/core/simulate/csv-write.ts';
import type { CsvLayout } from '../../src/core/simulate/csv-layout.ts';
import { CSV_LAYOUTS } from '../../src/core/simulate/csv-layouts.ts';
import type { Simulation } from '../../src/core/simulate/simulate.ts';

const SEED_RATE_HZ = 200;

export interface Seed {
  readonly layout: CsvLayout;
  readonly rows: number;
  readonly text: string;
}

const at = (row: number, axis: number): number =>
  [0.4 * Math.sin(1.1 * row), 0.6 * Math.cos(0.7 * row), 9.80665 + 0.9 * Math.sin(0.43 * row + 1)][axis]!;

/** As much of a simulated run as a file is written from. */
function shake(rows: number): Simulation {
  const timeS = Float64Array.from({ length: rows }, (_, i) => i / SEED_RATE_HZ);
  const axis = (k: number): Float64Array => Float64Array.from({ length: rows }, (_, i) => at(i, k));
  const log = (unit: string, first: number) => ({
    timeS: Float64Array.of(0, rows / 2 / SEED_RATE_HZ),
    value: Float64Array.of(first, first + 1),
    unit,
  });
  return {
    rateHz: SEED_RATE_HZ,
    timeS,
    stampS: timeS,
    accelerationMps2: [axis(0), axis(1), axis(2)],
    speedLog: log('km/h', 90),
    engineLog: log('rpm', 1800),
  } as unknown as Simulation;
}

export const seedFile = (layout: CsvLayout, rows: number): Seed => ({
  layout,
  rows,
  text: csvText(shake(rows), layout),
});

/** One of each layout. */
export const seedFiles = (rows: number): readonly Seed[] => CSV_LAYOUTS.map((layout) => seedFile(layout, rows));
