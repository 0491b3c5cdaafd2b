/** Keeps the open job in the job book while it is worked on, and brings it back after a reload. */
import { untrack } from 'svelte';
import type { Problem } from '../../core/note.ts';
import type { Job } from '../../core/job/job.ts';
import type { Comparison } from '../../core/diagnosis/compare/comparison.ts';
import type { Book } from '../book/book.ts';
import { SAVE_CONFLICT } from '../book/book.ts';
import { nameOf } from '../book/book-list.ts';
import type { StoredJob } from '../book/stored-job.ts';
import type { JobDocument } from '../form/document.ts';
import { contentOf, documentOf } from '../book/stored-job.ts';
import type { JobEvent } from '../book/timeline.ts';
import { addEvents, eventOfAnswer } from '../book/timeline.ts';
import { texts } from '../texts.ts';
import { keepAside } from './aside.ts';
import { lookIntoRecordings } from './open-files.ts';
import { keptJob } from './kept-job.ts';
import { KeptRecordings } from './kept-recordings.ts';
import { Journal, recoverJournals } from './journal.ts';
import type { OpenedJob } from './opened.ts';
import { eventsNow, recordOf } from './record-of.ts';
import type { Session } from './session.svelte.ts';
import { TabTalk } from './tab-talk.ts';

export type KeepStatus = 'none' | 'saving' | 'saved' | 'unsaved' | 'deleted' | 'off';

export class Keeper {
  readonly #session: Session;
  readonly #book: Book;
  readonly #talk = new TabTalk((id, revision) => void this.#otherTabSaved(id, revision));
  /** The record as it was last saved or loaded; null for a job not yet saved. */
  current = $state.raw<StoredJob | null>(null);
  events = $state.raw<readonly JobEvent[]>([]);
  status = $state.raw<KeepStatus>('none');
  problem = $state.raw<Problem | null>(null);
  /** Something happened elsewhere that the reader should know. */
  told = $state.raw<string | null>(null);
  /** Raised whenever the book changed, here or in another tab, for lists that show it. */
  changes = $state(0);
  #key: object | null = null;
  #job: Job | null = null;
  /** What is in the book already: needs no saving. */
  #saved: { readonly document: JobDocument; readonly analysed: Job | null } | null = null;
  /** The latest revision of the open job any tab has told of. */
  #newest = 0;
  /** Id of the open job, also before it was saved for the first time. */
  #id = '';
  readonly #journal = new Journal();
  #isDirty = false;
  #isSaving = false;
  /** Content of the save that has begun and is not yet known to be done. */
  #onItsWay: string | null = null;
  readonly #recordings: KeptRecordings;

  constructor(session: Session, book: Book) {
    this.#session = session;
    this.#book = book;
    this.#recordings = new KeptRecordings(book);
  }

  /** Watches the session. Called once, from an effect; saving is a side effect by nature. */
  watch(): void {
    const { key, document, analysed, isUntouchedDemo, aside } = this.#session;
    untrack(() => {
      if (key !== this.#key) this.#begin(key);
      if (aside.length > 0) void this.#keepAside(aside);
      if ((document.job.runs.length === 0 || isUntouchedDemo) && this.current === null) return;
      if (this.#saved?.document === document && this.#saved.analysed === analysed) return;
      this.#saved = { document, analysed };
      this.events = eventsNow(this.#session, this.events, this.#job, Date.now());
      this.#job = document.job;
      this.#isDirty = true;
      this.#journal.write(this.#record(), this.current?.revision ?? 0, this.#onItsWay);
      void this.#saveAll();
    });
  }

  async #keepAside(jobs: readonly OpenedJob[]): Promise<void> {
    this.#session.aside = [];
    const { told, problem } = await keepAside(this.#book, jobs, Date.now());
    this.told = told;
    this.problem = problem ?? this.problem;
    this.changes++;
  }

  /** Opens the job this tab had open before it was loaded again. */
  async resume(): Promise<void> {
    // Asked before the first wait: watching the empty session forgets it.
    const id = this.#talk.openId;
    await recoverJournals(this.#book, () => this.changes++);
    // A list that was read meanwhile does not know of what has just been put into the book.
    this.changes++;
    this.#journal.claim();
    if (id !== null) await this.open(id);
    await this.#book.tidy(Date.now());
  }

  /** Opens a job of the book; its answer is made anew where it had one, unless that would be of half an edit. */
  async open(id: string): Promise<boolean> {
    const stored = await this.#book.load(id);
    const kept = stored.ok ? keptJob(stored.value) : stored;
    if (!stored.ok || !kept.ok) {
      this.problem = kept.ok ? null : kept.problem;
      return false;
    }
    const { document, ...rest } = kept.value;
    const bytes = await this.#book.recordings(Object.values(stored.value.recordings));
    this.#session.load(document, bytes.ok ? bytes.value : [], rest);
    this.#begin(this.#session.key, stored.value);
    await lookIntoRecordings(this.#session);
    const isDue = stored.value.answer && !rest.before && this.#session.needs.blocker === null;
    if (isDue) void this.#session.analyse();
    return true;
  }

  addNote(text: string): void {
    this.#enter({ kind: 'noted', atMs: Date.now(), text });
  }

  /** Enters what before and after said of the open job, unless it said so last time. */
  addComparison(comparison: Comparison): void {
    const event = eventOfAnswer(this.events, comparison, Date.now(), 'compared');
    if (event) this.#enter(event);
  }

  #enter(event: JobEvent): void {
    this.events = addEvents(this.events, [event]);
    // A demo nobody changed is not kept, whatever was seen in it.
    if (this.current === null && this.#session.isUntouchedDemo) return;
    this.#isDirty = true;
    void this.#saveAll();
  }

  /** The job book has deleted a job or taken it back. */
  jobMarked(job: StoredJob): void {
    this.#talk.saved(job.id, job.revision);
    if (this.current?.id === job.id) this.#goOnFrom(job);
  }

  /** Goes on from a record that was deleted or taken back: a change to what is open brings it back under its own name. */
  #goOnFrom(job: StoredJob): void {
    this.current = job;
    this.#newest = Math.max(this.#newest, job.revision);
    this.status = statusOf(job);
    // A page loaded again begins without what was deleted.
    this.#talk.openId = job.deletedMs === undefined ? job.id : null;
  }

  #begin(key: object, stored: StoredJob | null = null): void {
    this.#key = key;
    this.#saved = stored ? { document: this.#session.document, analysed: null } : null;
    this.#newest = stored?.revision ?? 0;
    this.#id = stored?.id ?? crypto.randomUUID();
    const { pastEvents, job } = this.#session;
    // Where the past is known, only what changes from here on is new.
    this.#job = stored || pastEvents.length > 0 ? job : null;
    this.current = stored;
    this.events = stored?.events ?? (pastEvents.length > 0 ? pastEvents : [{ kind: 'begun', atMs: Date.now() }]);
    this.status = stored ? statusOf(stored) : 'none';
    this.told = null;
    this.problem = null;
    this.#talk.openId = stored?.id ?? null;
    this.#recordings.begin(Object.values(stored?.recordings ?? {}));
  }

  /** One save after the other; what changes meanwhile is saved next. */
  async #saveAll(): Promise<void> {
    if (this.#isSaving || this.status === 'off') return;
    this.#isSaving = true;
    while (this.#isDirty) {
      this.#isDirty = false;
      this.status = 'saving';
      const { document, files } = this.#session;
      const problem =
        (await this.#saveJob()) ??
        (await this.#recordings.save(Object.values(document.recordings), [...files.values()]));
      this.problem = problem;
      this.status = problem === null ? 'saved' : problem.code === 'store-failed' ? 'off' : 'unsaved';
    }
    this.#isSaving = false;
    if (this.status === 'saved') this.#journal.clear();
    this.changes++;
  }

  async #saveJob(): Promise<Problem | null> {
    const record = this.#record();
    this.#onItsWay = contentOf(record);
    const saved = await this.#book.save(record, this.current?.revision ?? 0);
    this.#onItsWay = null;
    if (saved.ok) {
      if (this.#key === this.#session.key) this.current = saved.value;
      this.#talk.openId = saved.value.id;
      this.#talk.saved(saved.value.id, saved.value.revision);
      return null;
    }
    if (saved.problem.code !== SAVE_CONFLICT) return saved.problem;
    const present = await this.#book.load(record.id);
    if (present.ok && present.value.deletedMs !== undefined && this.current?.id === record.id) {
      this.#goOnFrom(present.value);
      return this.#saveJob();
    }
    this.told = `${saved.problem.message} ${saved.problem.remedy}`;
    this.current = null;
    this.#id = crypto.randomUUID();
    this.#session.editJob('copy', (job) => ({
      ...job,
      title: texts.book.copyOf(nameOf(job, record.createdMs)),
    }));
    return this.#saveJob();
  }

  #record(): StoredJob {
    return recordOf(this.#session, { id: this.#id, events: this.events, before: this.current, nowMs: Date.now() });
  }

  async #otherTabSaved(id: string, revision: number): Promise<void> {
    this.changes++;
    if (this.current?.id !== id) return;
    this.#newest = Math.max(this.#newest, revision);
    while (this.current?.id === id && this.#newest > this.current.revision && !this.#isSaving) {
      if (!(await this.#takeOver(this.current))) return;
    }
  }

  /** @returns False where it cannot be taken over, or something was changed here meanwhile: then the next save tells. */
  async #takeOver(current: StoredJob): Promise<boolean> {
    const stored = await this.#book.load(current.id);
    const document = stored.ok ? documentOf(stored.value) : stored;
    const bytes = stored.ok ? await this.#book.recordings(Object.values(stored.value.recordings)) : stored;
    if (!stored.ok || !document.ok || this.current !== current || this.#isDirty) return false;
    if (stored.value.revision <= current.revision) return false;
    if (stored.value.deletedMs !== undefined) {
      this.#goOnFrom(stored.value);
      return true;
    }
    this.events = stored.value.events;
    this.#job = document.value.job;
    this.#saved = { document: document.value, analysed: this.#session.analysed };
    this.#session.adopt(document.value, bytes.ok ? bytes.value : []);
    this.#goOnFrom(stored.value);
    this.told = texts.book.otherTab;
    return true;
  }
}

const statusOf = ({ deletedMs }: StoredJob): KeepStatus => (deletedMs === undefined ? 'saved' : 'deleted');
