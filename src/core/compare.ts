/** The pipeline of before and after: two jobs (or the two stages of one) and their recordings → a Comparison. */
import { compareRuns } from './diagnosis/compare/compare.ts';
import type { Comparison } from './diagnosis/compare/comparison.ts';
import { judgedLike, judgeJob, type JudgedJob } from './diagnosis/judge-job.ts';
import { runsOfStage, type RecordedJob } from './job/recorded-job.ts';
import { failure, success } from './note.ts';
import type { Result } from './note.ts';
import { misstatedNote } from './report/build/misstated-words.ts';

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
  const ofBefore = judgeJob(before);
  if (!ofBefore.ok) return ofBefore;
  const ofAfter = judgeJob(after);
  if (!ofAfter.ok) return ofAfter;
  return success(compareJudged(ofBefore.value, ofAfter.value));
}

/** Compares two jobs that are judged already. */
export function compareJudged(before: JudgedJob, after: JudgedJob): Comparison {
  const first = judgedLike(before, after);
  const complaint = before.found.length > 0 ? before : first;
  const comparison = compareRuns(complaint, judgedLike(after, complaint));
  const doubts = [before, after].flatMap(({ misstated }) => misstated ?? []).map(misstatedNote);
  const told = doubts.filter(({ text }, i) => doubts.findIndex((one) => one.text === text) === i);
  return { ...comparison, notes: [...told, ...comparison.notes] };
}

/** Splits a job that holds both stages: the runs of the complaint, and those marked as proof. */
export const stagesOf = (recorded: RecordedJob): { before: RecordedJob; after: RecordedJob } => ({
  before: runsOfStage(recorded, 'complaint'),
  after: runsOfStage(recorded, 'proof'),
});
