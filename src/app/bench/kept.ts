/** Whether a measurement is already in the job. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { Job } from '../../core/job/job.ts';
import { subjectOf, withMeasurement } from './all-forms.ts';

/** Plain data in one order of keys: alike in text is alike. */
export const isSame = (one: Measurement, other: Measurement | null): boolean =>
  other !== null && JSON.stringify(one) === JSON.stringify(other);

/** The job without what was measured of a subject, and with it: what the measurement itself does is between the two. */
export function withoutAndWith(job: Job, measurement: Measurement): readonly [without: Job, with_: Job] {
  const others = job.measurements.filter((other) => subjectOf(other) !== subjectOf(measurement));
  return [
    { ...job, measurements: others },
    { ...job, measurements: withMeasurement(others, measurement) },
  ];
}
