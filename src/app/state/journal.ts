/**
 * The last change of each tab, written at once where the data base only promises to write soon. Read on the next
 * start: what a tab that died had not yet saved is put into the book.
 */
import type { Book } from '../book/book.ts';
import { SAVE_CONFLICT } from '../book/book.ts';
import type { StoredJob } from '../book/stored-job.ts';
import { checkStored, contentOf } from '../book/stored-job.ts';

const PREFIX = 'perrev-journal-';

/** Where this tab notes the name of its journal, so that after a reload it knows its own. */
const OWN = 'perrev-own-journal';
/** How long a reloaded tab waits for the page it replaced to let go of its journal, ms. */
const LET_GO_MS = 3000;

interface Entry {
  readonly job: StoredJob;
  readonly basedOn: number;
  /** Content of a save that was on its way when this was written, or null. */
  readonly onItsWay: string | null;
}

export class Journal {
  readonly #name = PREFIX + crypto.randomUUID();

  constructor() {
    // Held for the life of the page; a journal whose lock is free belongs to a page that is gone.
    void globalThis.navigator.locks?.request(this.#name, () => new Promise(() => undefined));
  }

  /** @param onItsWay content of a save begun and not yet known to be done; it would be the revision after basedOn */
  write(job: StoredJob, basedOn: number, onItsWay: string | null): void {
    try {
      localStorage.setItem(this.#name, JSON.stringify({ job, basedOn, onItsWay } satisfies Entry));
    } catch {
      // Full: the data base is the keeper, this is only its safety net.
    }
  }

  clear(): void {
    localStorage.removeItem(this.#name);
  }

  /** Takes the place of the journal of the page this one replaced, and tells its name. Call after recovery. */
  claim(): void {
    sessionStorage.setItem(OWN, this.#name);
  }
}

/**
 * Puts what dead tabs left into the book: in its place where nobody saved since, else as a job of its own. A page lets
 * go of its journal a moment after it is gone: this tab's own is waited for, those of others are taken when they are
 * free, however late that is.
 *
 * @param onLate called when a journal that was still held at the start has been put into the book
 */
export async function recoverJournals(book: Book, onLate: () => void): Promise<void> {
  const own = sessionStorage.getItem(OWN);
  const { locks } = globalThis.navigator;
  for (const name of Object.keys(localStorage).filter((key) => key.startsWith(PREFIX))) {
    const recover = (): Promise<void> => recoverOne(book, name);
    if (!locks) await recover();
    else if (name === own) await whenFree(locks, name, recover, AbortSignal.timeout(LET_GO_MS));
    else if (!(await ifFree(locks, name, recover))) void whenFree(locks, name, recover).then(onLate);
  }
}

const ifFree = (locks: LockManager, name: string, then: () => Promise<void>): Promise<boolean> =>
  locks.request(name, { ifAvailable: true }, async (lock) => {
    if (lock === null) return false;
    await then();
    return true;
  });

/** Ends quietly where the wait is given up: a tab that was duplicated has a living original. */
async function whenFree(
  locks: LockManager,
  name: string,
  then: () => Promise<void>,
  signal?: AbortSignal,
): Promise<void> {
  try {
    await locks.request(name, signal ? { signal } : {}, then);
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
}

async function recoverOne(book: Book, name: string): Promise<void> {
  const entry = read(name);
  if (entry) {
    const saved = await book.save(entry.job, entry.basedOn);
    if (!saved.ok && saved.problem.code === SAVE_CONFLICT) await saveLost(book, entry);
    else if (!saved.ok) return;
  }
  localStorage.removeItem(name);
}

/**
 * A conflict may only mean that the tab's own save had gone through: of the very same content, then there is nothing
 * to add; or of the content before the last change, then the change follows on it. Else another tab saved: both are kept.
 */
async function saveLost(book: Book, { job, basedOn, onItsWay }: Entry): Promise<void> {
  const present = await book.load(job.id);
  if (present.ok && contentOf(present.value) === contentOf(job)) return;
  const isOwn = present.ok && present.value.revision === basedOn + 1 && contentOf(present.value) === onItsWay;
  if (isOwn && (await book.save(job, basedOn + 1)).ok) return;
  await book.save({ ...job, id: crypto.randomUUID() }, 0);
}

function read(name: string): Entry | null {
  try {
    const entry = JSON.parse(localStorage.getItem(name) ?? 'null') as Partial<Entry> | null;
    const job = checkStored(entry?.job);
    return job.ok && typeof entry?.basedOn === 'number'
      ? { job: job.value, basedOn: entry.basedOn, onItsWay: entry.onItsWay ?? null }
      : null;
  } catch {
    return null;
  }
}
