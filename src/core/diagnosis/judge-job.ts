/** From a job's recordings to what they show: the one way, whether the diagnosis, a comparison or a balance asks. */
import type { Job } from '../job/job.ts';
import { runName, type RecordedJob } from '../job/recorded-job.ts';
import { success, type Result } from '../note.ts';
import { splitDrives } from './drives/split-drives.ts';
import { findingsOf } from './findings/findings-of.ts';
import type { Finding } from './findings/finding.ts';
import { partsToLookAt, tellsMore } from './findings/parts-to-look-at.ts';
import { inferWithKnocks } from './matching/knocks.ts';
import { doubted, doubtOf, type Misstated } from './matching/misstated.ts';
import type { RunInference } from './matching/infer-run.ts';
import { observeParts, partLike, type Part } from './observing/closer-look.ts';
import { observeRun } from './observing/observe-run.ts';
import type { RunEvidence } from './observing/run-evidence.ts';

/** What the runs say together, and what of it a person would notice. */
export interface JudgedJob {
  /** With the runs as they were judged: inferences[i] belongs to job.runs[i]. */
  readonly job: Job;
  readonly inferences: readonly RunInference[];
  readonly found: readonly Finding[];
  /** The runs in whole, and the part of each that was judged; null for all of it. */
  readonly asDriven: readonly RunEvidence[];
  readonly parts: readonly (Part | null)[];
  /** A slip of the statement that may be; where it was taken for true, `job` and all else is so. */
  readonly misstated: (Misstated & { readonly taken: boolean }) | null;
}

/** Called before a run is worked on, with the share of the work that is done, 0..1. */
export type OnRun = (step: 'spectra' | 'matching', share: number, run: string) => void;

/** Shares of the work at which the spectra are done, and the first weighing. */
const SPECTRA_DONE = 0.67;
const WEIGHED = 0.9;

/** From this probability on a slip is taken for true; from the next on it is told; above the last nothing is doubted. */
const TAKEN_FROM = 0.95;
const TOLD_FROM = 0.2;
const SURE = 0.995;

/**
 * Drives are cut into the runs that are judged, observed and weighed together; where nothing is found, or not for certain
 * whose it is, those that shook in some part only are looked at there. Where a usual slip explains all far better than
 * what was stated, all is judged again as it then was.
 * @returns the problem of the first run that cannot be judged at all
 */
export const judgeJob = (recorded: RecordedJob, onRun: OnRun = () => undefined): Result<JudgedJob> => {
  const split = splitDrives(recorded);
  if (!split.ok) return split;
  const judged = judgeRuns(split.value, onRun);
  const { belief, likeliest } = doubtOf(judged.job.vehicle, judged.inferences);
  if (likeliest !== null && likeliest.probability >= TAKEN_FROM) {
    return success({ ...judgeRuns(restated(split.value, likeliest), onRun), misstated: { ...likeliest, taken: true } });
  }
  const inferences = doubted(judged.inferences, belief);
  const misstated = likeliest !== null && likeliest.probability >= TOLD_FROM ? { ...likeliest, taken: false } : null;
  return success(belief > SURE ? judged : { ...judged, inferences, found: findingsOf(inferences), misstated });
};

const restated = ({ job, recordings }: RecordedJob, { vehicle, conditions }: Misstated): RecordedJob => ({
  job: {
    ...job,
    vehicle,
    runs: job.runs.map((run, i) => {
      const speedMps = conditions[i]?.speedMps;
      return run.speedMps === undefined || speedMps === undefined ? run : { ...run, speedMps };
    }),
  },
  recordings,
});

const judgeRuns = ({ job, recordings }: RecordedJob, onRun: OnRun): JudgedJob => {
  const { vehicle } = job;
  const asDriven = job.runs.map((run, i) => {
    onRun('spectra', (SPECTRA_DONE * i) / recordings.length, runName(run));
    return observeRun(vehicle, run, recordings[i]!, runName(run));
  });
  const weigh = (parts: readonly (Part | null)[], from: number, to: number): JudgedJob => {
    const inferences = inferWithKnocks(vehicle, observeParts(vehicle, asDriven, job.runs, parts), (i) =>
      onRun('matching', from + ((to - from) * i) / asDriven.length, asDriven[i]!.name),
    );
    return { job, inferences, found: findingsOf(inferences), asDriven, parts, misstated: null };
  };
  const inWhole = weigh(
    asDriven.map(() => null),
    SPECTRA_DONE,
    WEIGHED,
  );
  const parts = partsToLookAt(inWhole.inferences, inWhole.found);
  const inParts = isCut(parts) ? weigh(parts, WEIGHED, 1) : inWhole;
  return tellsMore(inParts.found, inWhole.found) ? inParts : inWhole;
};

const isCut = (parts: readonly (Part | null)[]): boolean => parts.some((part) => part !== null);

/**
 * A job judged where its runs were as fast as those of another were in the parts that these were judged in: what a
 * launch shows in the part in which it shook is held against the same part of the next one. What the job showed before
 * is still found.
 * @returns the job as it is where the other was judged in whole, or no run was as fast
 */
export const judgedLike = (judged: JudgedJob, other: JudgedJob): JudgedJob => {
  const { job, asDriven } = judged;
  const likeAny = (run: RunEvidence): Part | null =>
    other.parts.reduce<Part | null>(
      (found, part, i) => found ?? (part && partLike(run, other.asDriven[i]!, part)),
      null,
    );
  const parts = asDriven.map(likeAny);
  if (!isCut(parts)) return judged;
  const inferences = inferWithKnocks(job.vehicle, observeParts(job.vehicle, asDriven, job.runs, parts));
  return { ...judged, inferences, found: [...findingsOf(inferences), ...judged.found], parts };
};
