/** A job of the book as it is opened again. */
import type { Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import type { StoredJob } from '../book/stored-job.ts';
import { answeredJobOf, documentOf } from '../book/stored-job.ts';
import type { JobDocument } from '../form/document.ts';
import { withDriveOf } from '../form/document.ts';
import { isSameDrive } from './staleness.ts';

export interface KeptJob {
  readonly document: JobDocument;
  /** What the answer was made of, where vehicle or runs were changed since: an edit that was not finished. */
  readonly before?: JobDocument;
}

export function keptJob(stored: StoredJob): Result<KeptJob> {
  const document = documentOf(stored);
  if (!document.ok) return document;
  const answered = answeredJobOf(stored);
  return success(
    answered && !isSameDrive(answered, document.value.job)
      ? { document: document.value, before: withDriveOf(document.value, answered) }
      : { document: document.value },
  );
}
