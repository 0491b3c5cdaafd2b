/** The job book: keeps jobs and their recordings in the browser. Every failure is told, none loses what is kept. */
import type { Problem, Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import { texts } from '../texts.ts';
import type { Database, StoredBytes } from './database.ts';
import { openDatabase } from './database.ts';
import type { StoredJob } from './stored-job.ts';
import { checkStored, RECORD_NEWER } from './stored-job.ts';

/** One line of the list: a job, or a record that cannot be used, with its raw content. */
export type BookEntry =
  | { readonly kind: 'job'; readonly job: StoredJob }
  | { readonly kind: 'unusable'; readonly id: string; readonly problem: Problem; readonly raw: unknown };

/** How long a deleted job can be had back. */
const KEEP_DELETED_MS = 7 * 24 * 3600 * 1000;

export const SAVE_CONFLICT = 'save-conflict';
const STORE_FULL = 'store-full';

export class Book {
  readonly #open: () => Promise<Database>;
  #database: Promise<Database> | null = null;

  constructor(open: () => Promise<Database> = openDatabase) {
    this.#open = open;
  }

  /** All records, newest first. */
  async list(): Promise<Result<readonly BookEntry[]>> {
    return this.#try(async (database) => {
      const entries = (await database.getAll('jobs')).map(entryOf);
      return entries.sort((a, b) => updatedOf(b) - updatedOf(a));
    });
  }

  async load(id: string): Promise<Result<StoredJob>> {
    const value = await this.#try((database) => database.get('jobs', id));
    return value.ok ? checkStored(value.value) : value;
  }

  /** Recordings by id; those no longer there are left out. */
  async recordings(ids: readonly string[]): Promise<Result<readonly StoredBytes[]>> {
    return this.#try(async (database) => {
      const found = await Promise.all(ids.map((id) => database.get('recordings', id)));
      return found.filter((bytes) => bytes !== undefined);
    });
  }

  /**
   * Saves a job as the revision after `basedOn`; 0 for a new one. Refused with 'save-conflict' where another tab has
   * saved since, or a newer program has, so that neither overwrites the other.
   */
  async save(job: StoredJob, basedOn: number): Promise<Result<StoredJob>> {
    const saved = { ...job, revision: basedOn + 1 };
    const done = await this.#try(async (database) => {
      const transaction = database.transaction('jobs', 'readwrite');
      const present = checkStored(await transaction.store.get(job.id));
      if (present.ok ? present.value.revision !== basedOn : present.problem.code === RECORD_NEWER) {
        await transaction.done;
        return false;
      }
      await Promise.all([transaction.store.put(saved), transaction.done]);
      return true;
    });
    if (!done.ok) return done;
    return done.value ? success(saved) : failure({ code: SAVE_CONFLICT, ...texts.book.conflict });
  }

  async keepRecording(bytes: StoredBytes): Promise<Result<null>> {
    return this.#try(async (database) => {
      if ((await database.getKey('recordings', bytes.id)) === undefined) await database.put('recordings', bytes);
      return null;
    });
  }

  /** Removes a record for good, whatever is in it. */
  async erase(id: string): Promise<Result<null>> {
    return this.#try(async (database) => {
      await database.delete('jobs', id);
      return null;
    });
  }

  /** Erases what was deleted long ago, and recordings no job names any more. */
  async tidy(nowMs: number): Promise<Result<null>> {
    return this.#try(async (database) => {
      const transaction = database.transaction(['jobs', 'recordings'], 'readwrite');
      const [jobs, recordings] = [transaction.objectStore('jobs'), transaction.objectStore('recordings')];
      const needed = new Set<string>();
      let isSure = true;
      for (const entry of (await jobs.getAll()).map(entryOf)) {
        if (entry.kind === 'unusable') isSure = false;
        else if ((entry.job.deletedMs ?? Infinity) < nowMs - KEEP_DELETED_MS) await jobs.delete(entry.job.id);
        else Object.values(entry.job.recordings).forEach((id) => needed.add(id));
      }
      // A record that cannot be read may need any of them.
      const spare = isSure ? (await recordings.getAllKeys()).filter((id) => !needed.has(id)) : [];
      await Promise.all([...spare.map((id) => recordings.delete(id)), transaction.done]);
      return null;
    });
  }

  async #try<T>(work: (database: Database) => Promise<T>): Promise<Result<T>> {
    try {
      this.#database ??= this.#open();
      return success(await work(await this.#database));
    } catch (error) {
      // The connection may have been closed under us; the next call opens it anew.
      this.#database = null;
      return failure(problemOf(error));
    }
  }
}

function entryOf(value: unknown): BookEntry {
  const checked = checkStored(value);
  if (checked.ok) return { kind: 'job', job: checked.value };
  return { kind: 'unusable', id: checked.problem.key ?? '?', problem: checked.problem, raw: value };
}

const updatedOf = (entry: BookEntry): number => (entry.kind === 'job' ? entry.job.updatedMs : 0);

function problemOf(error: unknown): Problem {
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  if (isFull) return { code: STORE_FULL, ...texts.book.full };
  const what = error instanceof Error ? error.message : String(error);
  return { code: 'store-failed', message: texts.book.failed(what), remedy: texts.book.failedRemedy };
}
