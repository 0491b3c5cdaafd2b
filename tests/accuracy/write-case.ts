/** Writes a case's first run for the comparison in Python: plain seconds and m/s², and what the job says. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvLayout } from '../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../src/core/simulate/csv-write.ts';
import { simulate } from '../../src/core/simulate/simulate.ts';
import type { AccuracyCase } from './case.ts';

export const writeCase = (folder: string, one: AccuracyCase, index: number): void => {
  mkdirSync(folder, { recursive: true });
  const name = `${one.family}-${String(index).padStart(3, '0')}`;
  const run = one.runs[0]!;
  const size = one.job.vehicle.tire?.kind === 'size' ? one.job.vehicle.tire.size : '';
  writeFileSync(join(folder, `${name}.csv`), csvText(simulate(run.scenario), csvLayout('plain'), one.seed));
  writeFileSync(
    join(folder, `${name}.json`),
    JSON.stringify({
      family: one.family,
      rule: one.rule,
      tire: size,
      vehicle: one.job.vehicle,
      run: one.job.runs[0],
      faults: one.faults,
    }),
  );
};
