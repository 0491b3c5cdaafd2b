/** What the page and the worker say to each other. Plain data only, so that it can be posted as it is. */
import type { Comparison } from '../core/diagnosis/compare/comparison.ts';
import type { FindingBasis } from '../core/diagnosis/evidence/case.ts';
import type { AngleGeometry } from '../core/driveline/angles/angle-change.ts';
import type { WhatIfAnswer } from '../core/driveline/angles/angle-what-if.ts';
import type { WorkingAnglesInput } from '../core/driveline/angles/working-angles.ts';
import type { Job } from '../core/job/job.ts';
import type { Problem } from '../core/note.ts';
import type { Given } from '../core/reading/given.ts';
import type { Analysis, Progress } from '../core/report/analysis.ts';
import type { Report } from '../core/report/report.ts';
import type { TrialLevels } from '../core/trials/trial-levels.ts';
import type { RecordingFacts } from './recording-facts.ts';

/** A file to read. The blob is read in the worker; a key already read is not read again. */
export interface RecordingSource extends Given {
  /** Stays the same for the same bytes, rate and unit, so that the worker can keep what it has read. */
  readonly key: string;
  readonly name: string;
  readonly blob: Blob;
}

/** A job with its recordings: sources[i] belongs to job.runs[i]. */
export interface SourcedJob {
  readonly job: Job;
  readonly sources: readonly RecordingSource[];
}

/** What can be asked. */
export type Task =
  /** Read recordings and say what is in them. */
  | { readonly kind: 'read'; readonly sources: readonly RecordingSource[] }
  /** Analyse a job. */
  | { readonly kind: 'analyse'; readonly of: SourcedJob }
  /** Weigh causes and checks anew after a measurement or work done; the recordings are not touched. */
  | {
      readonly kind: 'reweigh';
      readonly report: Report;
      readonly bases: readonly FindingBasis[];
      readonly job: Job;
    }
  /** Compare two jobs, or the two stages of one where `after` is absent. */
  | { readonly kind: 'compare'; readonly before: SourcedJob; readonly after?: SourcedJob }
  /** Amplitudes of one order in the runs of a balancing. */
  | { readonly kind: 'trial-levels'; readonly of: SourcedJob; readonly label: string }
  /** The least change that brings a driveline's joints to cancel; a search, so not for the page itself. */
  | {
      readonly kind: 'angle-what-if';
      readonly input: WorkingAnglesInput;
      readonly geometry: AngleGeometry;
      readonly splineTeeth?: number;
    };

/** What comes back for each kind of task. */
export interface AnswerOf {
  readonly read: readonly RecordingFacts[];
  readonly analyse: Analysis;
  readonly reweigh: Report;
  readonly compare: Comparison;
  readonly 'trial-levels': TrialLevels;
  readonly 'angle-what-if': WhatIfAnswer;
}

export type TaskKind = Task['kind'];

export interface ToWorker {
  readonly request: number;
  readonly task: Task;
}

export type FromWorker =
  | { readonly kind: 'progress'; readonly request: number; readonly progress: Progress }
  | { readonly kind: 'answer'; readonly request: number; readonly answer: AnswerOf[TaskKind] }
  | { readonly kind: 'problem'; readonly request: number; readonly problem: Problem };
