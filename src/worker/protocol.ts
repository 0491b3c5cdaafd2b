/** What the page and the worker say to each other. Plain data only, so that it can be posted as it is. */
import type { Problem } from '../core/note.ts';
import type { Job } from '../core/job/job.ts';
import type { Analysis, Progress } from '../core/report/analysis.ts';
import type { RecordingFacts } from './recording-facts.ts';

/** A file to read. The blob is read in the worker; a key already read is not read again. */
export interface RecordingSource {
  /** Stays the same for the same bytes and rate, so that the worker can keep what it has read. */
  readonly key: string;
  readonly name: string;
  readonly blob: Blob;
  readonly samplingRateHz?: number;
}

/** Asks to read recordings and to say what is in them. */
export interface ReadRequest {
  readonly kind: 'read';
  readonly request: number;
  readonly sources: readonly RecordingSource[];
}

/** Asks for the analysis of a job; sources[i] belongs to job.runs[i]. */
export interface AnalyseRequest {
  readonly kind: 'analyse';
  readonly request: number;
  readonly job: Job;
  readonly sources: readonly RecordingSource[];
}

export type ToWorker = ReadRequest | AnalyseRequest;

export type FromWorker =
  | { readonly kind: 'progress'; readonly request: number; readonly progress: Progress }
  | { readonly kind: 'facts'; readonly request: number; readonly facts: readonly RecordingFacts[] }
  | { readonly kind: 'analysis'; readonly request: number; readonly analysis: Analysis }
  | { readonly kind: 'problem'; readonly request: number; readonly problem: Problem };
