/** A job of made-up runs of a made-up vehicle, of which nothing else is known. */
import type { Job, Run } from '../../src/core/job/job.ts';
import { JOB_SCHEMA_VERSION } from '../../src/core/job/job.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';

/** @param runs how each was driven; 'made.csv' where no file is named */
export const madeJob = (vehicle: Vehicle, ...runs: readonly Partial<Run>[]): Job => ({
  schemaVersion: JOB_SCHEMA_VERSION,
  vehicle,
  work: [],
  runs: runs.map((run) => ({ file: 'made.csv', ...run })),
  measurements: [],
});
