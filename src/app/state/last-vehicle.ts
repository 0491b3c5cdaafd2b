/** The vehicle of the last answer, so that the next job need not ask for it again. */
import type { Vehicle } from '../../core/vehicle/vehicle.ts';
import { readJob, writeJob } from '../../core/job/job-file.ts';
import { emptyJob } from '../form/document.ts';

const KEY = 'perrev-last-vehicle';

export function rememberVehicle(vehicle: Vehicle): void {
  try {
    localStorage.setItem(KEY, writeJob(emptyJob(vehicle)));
  } catch {
    // A full or forbidden store costs only this convenience.
  }
}

/** Read like any job file, so that an old or damaged entry does no harm. */
export function lastVehicle(): Vehicle | undefined {
  const text = localStorage.getItem(KEY);
  const job = text === null ? null : readJob(text, KEY);
  return job?.ok ? job.value.vehicle : undefined;
}
