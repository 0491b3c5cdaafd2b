/** What the job book keeps of a job, and how a kept record is read again: nothing is taken on trust. */
import type { Problem, Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import type { Job } from '../../core/job/job.ts';
import type { Verdict } from '../../core/report/report.ts';
import { readJob, writeJob } from '../../core/job/job-file.ts';
import type { JobDocument } from '../form/document.ts';
import { texts } from '../texts.ts';
import type { JobEvent } from './timeline.ts';

/** Raised when the record's own shape changes; the job inside has its own version and migration. */
export const RECORD_SCHEMA = 1;

/** Code of the problem with a record of a newer program: read-only here. */
export const RECORD_NEWER = 'record-newer';

/** The last answer in brief, for the list. */
export interface AnswerSummary {
  readonly verdict: Verdict;
  readonly sentence: string;
  readonly atMs: number;
  /** The job it was made of, as a job file; absent in records of before it was kept. */
  readonly of?: string;
}

export interface StoredJob {
  readonly schema: number;
  readonly id: string;
  /** Counts the saves; a tab that saves on an older one has missed a change of another tab. */
  readonly revision: number;
  readonly createdMs: number;
  readonly updatedMs: number;
  /** Set where the job was deleted; it is kept for a while, so that this can be taken back. */
  readonly deletedMs?: number;
  /** The job as a job file. */
  readonly jobText: string;
  readonly typed: Readonly<Record<string, string>>;
  /** File name of a run → id of its recording. */
  readonly recordings: Readonly<Record<string, string>>;
  readonly answer?: AnswerSummary;
  readonly events: readonly JobEvent[];
}

/** A job as it is put into the book. */
export function storedOf(
  base: Omit<StoredJob, 'schema' | 'jobText' | 'typed' | 'recordings'>,
  { job, typed, recordings }: JobDocument,
): StoredJob {
  return { ...base, schema: RECORD_SCHEMA, jobText: writeJob(job), typed, recordings };
}

/** What a person put into a record, half-typed text included; two records with the same content hold the same work. */
export const contentOf = ({ jobText, typed, recordings }: StoredJob): string =>
  JSON.stringify([jobText, typed, recordings]);

/** The document of a record, or why it cannot be had. */
export function documentOf({ jobText, typed, recordings, id }: StoredJob): Result<JobDocument> {
  const job = readJob(jobText, id);
  return job.ok ? success({ job: job.value, typed, recordings }) : job;
}

/** The job the last answer of a record was made of; null where there is none or it is not known. */
export function answeredJobOf({ answer, id }: StoredJob): Job | null {
  const job = answer?.of === undefined ? null : readJob(answer.of, id);
  return job?.ok ? job.value : null;
}

/** Judges a record from the data base: ours, one of a newer program, or damaged. */
export function checkStored(value: unknown): Result<StoredJob> {
  if (!isRecord(value) || typeof value.id !== 'string') return failure(damaged('?'));
  if (typeof value.schema === 'number' && value.schema > RECORD_SCHEMA) return failure(newer(value.id));
  const { schema, revision, createdMs, updatedMs, jobText, typed, recordings, events } = value;
  const numbers = [schema, revision, createdMs, updatedMs].every((item) => typeof item === 'number');
  const isWhole =
    numbers && typeof jobText === 'string' && isTexts(typed) && isTexts(recordings) && Array.isArray(events);
  return isWhole ? success(value as unknown as StoredJob) : failure(damaged(value.id));
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
const isTexts = (value: unknown): boolean =>
  isRecord(value) && Object.values(value).every((item) => typeof item === 'string');

const damaged = (id: string): Problem => ({ code: 'record-damaged', key: id, ...texts.book.damaged });
const newer = (id: string): Problem => ({ code: RECORD_NEWER, key: id, ...texts.book.newer });
