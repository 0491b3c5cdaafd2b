/** Jobs opened along with the one that is shown: each goes into the job book with its recordings. */
import type { Problem } from '../../core/note.ts';
import type { Book } from '../book/book.ts';
import { nameOf } from '../book/book-list.ts';
import { storedOf } from '../book/stored-job.ts';
import { eventsOfChange } from '../book/timeline.ts';
import { texts } from '../texts.ts';
import { KeptRecordings } from './kept-recordings.ts';
import type { OpenedJob } from './opened.ts';

/** @returns What to tell the reader: the jobs by name, or the problem of the first that could not be kept. */
export async function keepAside(
  book: Book,
  jobs: readonly OpenedJob[],
  nowMs: number,
): Promise<{ readonly told: string | null; readonly problem: Problem | null }> {
  const names: string[] = [];
  let problem: Problem | null = null;
  for (const job of jobs) {
    problem = await keepOne(book, job, nowMs);
    if (problem) break;
    names.push(nameOf(job.document.job, nowMs));
  }
  return { told: names.length > 0 ? texts.start.alsoOpened(names) : null, problem };
}

async function keepOne(
  book: Book,
  { document, recordings, events }: OpenedJob,
  nowMs: number,
): Promise<Problem | null> {
  const { job } = document;
  const begun = { ...job, runs: [], measurements: [] };
  const history =
    events.length > 0 ? events : [{ kind: 'begun' as const, atMs: nowMs }, ...eventsOfChange(begun, job, nowMs)];
  const base = { id: crypto.randomUUID(), revision: 0, createdMs: nowMs, updatedMs: nowMs, events: history };
  const saved = await book.save(storedOf(base, document), 0);
  if (!saved.ok) return saved.problem;
  return new KeptRecordings(book).save(Object.values(document.recordings), recordings);
}
