/** Whether an answer still belongs to the job as it is now. */
import type { Job } from '../../core/job/job.ts';

/** Plain data in one order of its keys: an entry that was taken out and written again is the same. */
const text = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([one], [other]) => (one < other ? -1 : 1)))
      : inner,
  );
const same = (a: unknown, b: unknown): boolean => a === b || text(a) === text(b);

/** Vehicle and runs, those after the repair too, are those of the answer; only then can it be weighed anew without the recordings. */
export const isSameDrive = (one: Job, other: Job): boolean =>
  same(one.vehicle, other.vehicle) && same(one.runs, other.runs);

/** What was measured, done or held as a limit has changed, and nothing else that matters. */
export const needsReweighing = (analysed: Job, job: Job): boolean =>
  isSameDrive(analysed, job) &&
  !(
    same(analysed.measurements, job.measurements) &&
    same(analysed.work, job.work) &&
    same(analysed.repaired, job.repaired) &&
    same(analysed.limits, job.limits)
  );
