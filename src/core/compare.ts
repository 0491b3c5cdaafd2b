/** The pipeline of before and after: two jobs (or the two stages of one) and their recordings → a Comparison. */
import { compareRuns } from './diagnosis/compare/compare.ts';
import type { Comparison } from './diagnosis/compare/comparison.ts';
import { inferJob } from './diagnosis/matching/infer-job.ts';
import type { RunInference } from './diagnosis/matching/infer-run.ts';
import { splitDrives, type RecordedJob } from './diagnosis/drives/split-drives.ts';
import { observeRun } from './diagnosis/observing/observe-run.ts';
import { failure, success } from './note.ts';
import type { Result } from './note.ts';

/** Compares the runs of `before` with those of `after`. */
export function compare(before: RecordedJob, after: RecordedJob): Result<Comparison> {
  for (const [side, { recordings }] of [['before', before] as const, ['after', after] as const]) {
    if (recordings.length > 0) continue;
    return failure({
      code: 'nothing-to-compare',
      message: `There is no recording from ${side} the repair; a comparison needs one from before and one from after.`,
      remedy:
        'Record the complaint run again after the repair. Give both, or mark the run in the job with the stage "proof".',
    });
  }
  const ofBefore = inferencesOf(before);
  if (!ofBefore.ok) return ofBefore;
  const ofAfter = inferencesOf(after);
  return ofAfter.ok ? success(compareRuns(ofBefore.value, ofAfter.value)) : ofAfter;
}

/** Splits a job that holds both stages: the runs of the complaint, and those marked as proof. */
export function stagesOf({ job, recordings }: RecordedJob): { before: RecordedJob; after: RecordedJob } {
  const stage = (proof: boolean): RecordedJob => {
    const kept = job.runs.map((run, index) => ({ run, index })).filter(({ run }) => (run.stage === 'proof') === proof);
    return {
      job: { ...job, runs: kept.map(({ run }) => run) },
      recordings: kept.flatMap(({ index }) => recordings[index] ?? []),
    };
  };
  return { before: stage(false), after: stage(true) };
}

/** What the runs of a job show, weighed together; the problem of the first that cannot be judged. */
export const inferencesOf = (recorded: RecordedJob): Result<readonly RunInference[]> => {
  const judged = splitDrives(recorded);
  if (!judged.ok) return judged;
  const { job, recordings } = judged.value;
  const evidence = recordings.map((recording, i) => {
    const run = job.runs[i];
    return observeRun(job.vehicle, run ?? {}, recording, run?.name ?? run?.file ?? recording.name);
  });
  return success(inferJob(job.vehicle, evidence));
};
