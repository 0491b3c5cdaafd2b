/** A job together with what was recorded for it. */
import type { Recording } from '../reading/recording.ts';
import type { Job, Run } from './job.ts';

/** recordings[i] belongs to job.runs[i]. */
export interface RecordedJob {
  readonly job: Job;
  readonly recordings: readonly Recording[];
}

/** What a run is called in reports and sentences. */
export const runName = ({ name, file }: Run): string => name ?? file;

/** The runs that were made before the repair, or those that shall prove it, with their recordings. */
export const runsOfStage = ({ job, recordings }: RecordedJob, stage: 'complaint' | 'proof'): RecordedJob => {
  const kept = job.runs.flatMap((run, i) => {
    const recording = recordings[i];
    return recording && (run.stage ?? 'complaint') === stage ? [{ run, recording }] : [];
  });
  return { job: { ...job, runs: kept.map(({ run }) => run) }, recordings: kept.map(({ recording }) => recording) };
};
