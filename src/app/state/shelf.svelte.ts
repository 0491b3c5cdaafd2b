/** The job book as a list on the screen, kept up to date with what this and other tabs save. */
import type { Problem } from '../../core/note.ts';
import { packJob } from '../book/archive.ts';
import type { Book, BookEntry } from '../book/book.ts';
import { rowsOf, unusableOf } from '../book/book-list.ts';
import type { StoredJob } from '../book/stored-job.ts';
import { documentOf } from '../book/stored-job.ts';
import { download, downloadText } from '../files/download.ts';

export class Shelf {
  readonly #book: Book;
  readonly #onMarked: (job: StoredJob) => void;
  #entries = $state.raw<readonly BookEntry[]>([]);
  isLoaded = $state(false);
  problem = $state.raw<Problem | null>(null);
  /** The job deleted last, so that it can be had back. */
  deleted = $state.raw<StoredJob | null>(null);
  readonly rows = $derived(rowsOf(this.#entries));
  readonly unusable = $derived(unusableOf(this.#entries));

  /** @param onMarked told of each job that was deleted or taken back, as it is in the book now */
  constructor(book: Book, onMarked: (job: StoredJob) => void = () => undefined) {
    this.#book = book;
    this.#onMarked = onMarked;
  }

  async load(): Promise<void> {
    const entries = await this.#book.list();
    if (entries.ok) this.#entries = entries.value;
    // A change to the open job brings it back by itself.
    if (this.deleted && this.rows.some(({ id }) => id === this.deleted?.id)) this.deleted = null;
    this.problem = entries.ok ? null : entries.problem;
    this.isLoaded = true;
  }

  async remove(job: StoredJob): Promise<void> {
    if (await this.#mark({ ...job, deletedMs: Date.now() })) this.deleted = job;
  }

  async takeBack(): Promise<void> {
    if (!this.deleted) return;
    await this.#mark({ ...this.deleted, revision: this.deleted.revision + 1 });
    this.deleted = null;
  }

  async erase(id: string): Promise<void> {
    await this.#book.erase(id);
    await this.load();
  }

  /** Saves a job and its recordings as one file. */
  async export(stored: StoredJob): Promise<void> {
    const document = documentOf(stored);
    const bytes = await this.#book.recordings(Object.values(stored.recordings));
    if (!document.ok || !bytes.ok) {
      this.problem = document.ok ? (bytes.ok ? null : bytes.problem) : document.problem;
      return;
    }
    const archive = await packJob(document.value.job, bytes.value, stored.events);
    download(archive.blob, archive.name);
  }

  exportRaw(id: string, raw: unknown): void {
    downloadText(JSON.stringify(raw, null, 2), `${id}.json`, 'application/json');
  }

  async #mark(job: StoredJob): Promise<boolean> {
    const saved = await this.#book.save(job, job.revision);
    if (saved.ok) this.#onMarked(saved.value);
    await this.load();
    if (!saved.ok) this.problem = saved.problem;
    return saved.ok;
  }
}
