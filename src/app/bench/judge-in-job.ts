/** Judges a measurement at the speed of the job's complaint. */
import type { JudgedMeasurement } from '../../core/driveline/judged-measurement.ts';
import { judgeMeasurement } from '../../core/driveline/judge-measurement.ts';
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { Job } from '../../core/job/job.ts';
import type { Result } from '../../core/note.ts';

/** The first complaint run with a speed stands for the complaint. */
export function judgeInJob(measurement: Measurement, job: Job): Result<JudgedMeasurement> {
  const complaint = job.runs.find((run) => run.stage !== 'proof' && run.speedMps !== undefined) ?? job.runs[0] ?? {};
  return judgeMeasurement(measurement, job.vehicle, complaint, job.limits ?? {});
}
