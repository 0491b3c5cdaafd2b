/** A job split into its stages. */
import type { Job } from '../../core/job/job.ts';

/** The job with the runs of one stage only; a run of no stage belongs to the complaint. */
export function stageOf(job: Job, stage: 'complaint' | 'proof'): Job {
  return { ...job, runs: job.runs.filter((run) => (run.stage ?? 'complaint') === stage) };
}
