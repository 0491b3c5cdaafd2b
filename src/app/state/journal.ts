/**
 * The last change of each tab, written at once where the data base only promises to write soon. Read on the next
 * start: what a tab that died had not yet saved is put into the book.
 */
import type { Book } from '../book/book.ts';
import { SAVE_CONFLICT } from '../book/book.ts';
import type { StoredJob } from '../book/stored-job.ts';
import { checkStored } from '../book/stored-job.ts';

const PREFIX = 'perrev-journal-';

interface Entry {
  readonly job: StoredJob;
  readonly basedOn: number;
}

export class Journal {
  readonly #name = PREFIX + crypto.randomUUID();

  constructor() {
    // Held for the life of the page; a journal whose lock is free belongs to a page that is gone.
    void globalThis.navigator.locks?.request(this.#name, () => new Promise(() => undefined));
  }

  write(job: StoredJob, basedOn: number): void {
    try {
      localStorage.setItem(this.#name, JSON.stringify({ job, basedOn } satisfies Entry));
    } catch {
      // Full: the data base is the keeper, this is only its safety net.
    }
  }

  clear(): void {
    localStorage.removeItem(this.#name);
  }
}

/** Puts what dead tabs left into the book: in its place where nobody saved since, else as a job of its own. */
export async function recoverJournals(book: Book): Promise<void> {
  const names = Object.keys(localStorage).filter((name) => name.startsWith(PREFIX));
  for (const name of names) {
    if (await isAlive(name)) continue;
    const entry = read(name);
    if (entry) {
      const saved = await book.save(entry.job, entry.basedOn);
      if (!saved.ok && saved.problem.code === SAVE_CONFLICT) await saveLost(book, entry);
      else if (!saved.ok) continue;
    }
    localStorage.removeItem(name);
  }
}

/** A conflict may only mean that the save had just gone through: then there is nothing to add. */
async function saveLost(book: Book, { job }: Entry): Promise<void> {
  const present = await book.load(job.id);
  if (present.ok && present.value.jobText === job.jobText) return;
  await book.save({ ...job, id: crypto.randomUUID() }, 0);
}

async function isAlive(name: string): Promise<boolean> {
  const { locks } = globalThis.navigator;
  if (!locks) return false;
  return locks.request(name, { ifAvailable: true }, (lock) => lock === null);
}

function read(name: string): Entry | null {
  try {
    const entry = JSON.parse(localStorage.getItem(name) ?? 'null') as Partial<Entry> | null;
    const job = checkStored(entry?.job);
    return job.ok && typeof entry?.basedOn === 'number' ? { job: job.value, basedOn: entry.basedOn } : null;
  } catch {
    return null;
  }
}
