/** Judges a measurement at the speed of the job's complaint, or at another one that was typed beside it. */
import type { JudgedMeasurement } from '../../core/driveline/judging/judged-measurement.ts';
import { benchSpeeds, judgeAt } from '../../core/driveline/judging/judge-measurement.ts';
import type { Measurement, ShaftPlace } from '../../core/driveline/measurement.ts';
import type { Job, Run } from '../../core/job/job.ts';
import type { Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';

export interface TurningSpeeds {
  readonly driveshaftRpm: number | null;
  readonly wheelRpm: number | null;
}

/** The first complaint run with a speed stands for the complaint. */
export const complaintOf = (job: Job): Partial<Run> =>
  job.runs.find((run) => run.stage !== 'proof' && run.speedMps !== undefined) ?? job.runs[0] ?? {};

/** @param ownRpm driveshaft speed typed at the bench; it wins */
export function speedsInJob(job: Job, shaft?: ShaftPlace, ownRpm?: number): Result<TurningSpeeds> {
  const speeds = benchSpeeds(job.vehicle, complaintOf(job), shaft);
  if (!speeds.ok) return ownRpm === undefined ? speeds : success({ driveshaftRpm: ownRpm, wheelRpm: null });
  return success({ ...speeds.value, ...(ownRpm !== undefined && { driveshaftRpm: ownRpm }) });
}

export function judgeInJob(measurement: Measurement, job: Job, ownRpm?: number): Result<JudgedMeasurement> {
  const shaft = 'driveshaft' in measurement ? measurement.driveshaft : undefined;
  const speeds = speedsInJob(job, shaft, ownRpm);
  return speeds.ok ? judgeAt(measurement, job.vehicle, { ...speeds.value, limits: job.limits ?? {} }) : speeds;
}
