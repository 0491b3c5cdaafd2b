import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Book } from '../../src/app/book/book.ts';
import { SAVE_CONFLICT } from '../../src/app/book/book.ts';
import type { StoredJob } from '../../src/app/book/stored-job.ts';
import { contentOf, storedOf } from '../../src/app/book/stored-job.ts';
import { emptyDocument } from '../../src/app/form/document.ts';
import { Journal, recoverJournals } from '../../src/app/state/journal.ts';
import { failure, success } from '../../src/core/note.ts';

/** A store of strings, as the browser has two of: its keys are its own enumerable ones. */
function memory(): Storage {
  const store = {};
  const hide = (name: string, value: unknown): unknown => Object.defineProperty(store, name, { value });
  hide('getItem', (key: string) => (store as Record<string, string>)[key] ?? null);
  hide('setItem', (key: string, text: string) => Object.assign(store, { [key]: text }));
  hide('removeItem', (key: string) => Reflect.deleteProperty(store, key));
  return store as Storage;
}

/** Locks as the browser gives them out: one holder a name, the others wait in line or are told that it is taken. */
function lockManager() {
  const line = new Map<string, Promise<unknown>>();
  const request = (
    name: string,
    options: LockOptions | LockGrantedCallback<unknown>,
    then?: LockGrantedCallback<unknown>,
  ) => {
    const take = then ?? (options as LockGrantedCallback<unknown>);
    const { ifAvailable, signal } = then ? (options as LockOptions) : {};
    const before = line.get(name);
    if (ifAvailable && before) return Promise.resolve(take(null));
    const given = new Promise<void>((resolve, reject) => {
      signal?.addEventListener('abort', () => reject(signal.reason as Error));
      void (before ?? Promise.resolve()).then(() => resolve());
    });
    const held = given.then(() => take({ name, mode: 'exclusive' }));
    const over = held.then(
      () => void (line.get(name) === over && line.delete(name)),
      () => undefined,
    );
    line.set(name, over);
    return held;
  };
  return { request } as unknown as LockManager;
}

/** A book in memory that saves by the rule of the real one: only on the revision it holds. */
function memoryBook() {
  const kept = new Map<string, StoredJob>();
  const book = {
    load: (id: string) => Promise.resolve(kept.has(id) ? success(kept.get(id)!) : failure(missing)),
    save: (job: StoredJob, basedOn: number) => {
      const present = kept.get(job.id);
      if (present && present.revision !== basedOn) return Promise.resolve(failure(conflict));
      kept.set(job.id, { ...job, revision: basedOn + 1 });
      return Promise.resolve(success(kept.get(job.id)!));
    },
  };
  return { book: book as unknown as Book, kept };
}
const missing = { code: 'record-damaged', message: '', remedy: '' };
const conflict = { code: SAVE_CONFLICT, message: '', remedy: '' };

function record(title: string, typed: Record<string, string> = {}): StoredJob {
  const document = { ...emptyDocument(), typed, job: { ...emptyDocument().job, title } };
  return storedOf({ id: 'one', revision: 0, createdMs: 1, updatedMs: 2, events: [] }, document);
}

const later = (ms = 0): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const journals = (): string[] => Object.keys(localStorage).filter((key) => key.startsWith('perrev-journal-'));
const neverLate = (): void => expect.fail('nothing was late');

/** What a page leaves that wrote its last change and died: its journal, with nobody holding it. */
function leftBehind(job: StoredJob, basedOn: number, onItsWay: string | null): void {
  vi.stubGlobal('navigator', {});
  new Journal().write(job, basedOn, onItsWay);
  vi.stubGlobal('navigator', { locks: lockManager() });
}

describe('what a page that died had not yet saved', () => {
  beforeEach(() => {
    vi.stubGlobal('localStorage', memory());
    vi.stubGlobal('sessionStorage', memory());
    vi.stubGlobal('navigator', { locks: lockManager() });
  });
  afterEach(() => void vi.unstubAllGlobals());

  it('is put in its place, once', async () => {
    const { book, kept } = memoryBook();
    await book.save(record('before'), 0);
    leftBehind(record('after'), 1, null);
    await recoverJournals(book, neverLate);
    expect([...kept.values()]).toEqual([{ ...record('after'), revision: 2 }]);
    expect(journals()).toEqual([]);
    await recoverJournals(book, neverLate);
    expect(kept.get('one')?.revision).toBe(2);
  });

  it('is kept also where only half-typed text tells it from the save that was on its way', async () => {
    const { book, kept } = memoryBook();
    const onItsWay = record('same', { axle: '3.' });
    const last = record('same', { axle: '3.7 or so' });
    expect(last.jobText).toBe(onItsWay.jobText);
    await book.save(onItsWay, 0);
    leftBehind(last, 0, contentOf(onItsWay));
    await recoverJournals(book, neverLate);
    expect([...kept.values()].map(({ typed }) => typed)).toEqual([{ axle: '3.7 or so' }]);
  });

  it('follows on its own save that went through, without a copy', async () => {
    const { book, kept } = memoryBook();
    await book.save(record('first'), 0);
    await book.save(record('second'), 1);
    leftBehind(record('third'), 1, contentOf(record('second')));
    await recoverJournals(book, neverLate);
    expect([...kept.values()]).toEqual([{ ...record('third'), revision: 3 }]);
  });

  it('adds nothing where the very same had been saved', async () => {
    const { book, kept } = memoryBook();
    await book.save(record('first'), 0);
    await book.save(record('second'), 1);
    leftBehind(record('second'), 1, contentOf(record('second')));
    await recoverJournals(book, neverLate);
    expect([...kept.values()]).toEqual([{ ...record('second'), revision: 2 }]);
  });

  it('becomes a job of its own where another page saved since: both are kept', async () => {
    const { book, kept } = memoryBook();
    await book.save(record('first'), 0);
    await book.save(record('from another'), 1);
    leftBehind(record('mine'), 1, contentOf(record('on its way')));
    await recoverJournals(book, neverLate);
    expect([...kept.values()].map(({ jobText }) => (JSON.parse(jobText) as { title: string }).title)).toEqual([
      'from another',
      'mine',
    ]);
  });

  it('stays in the journal where the book cannot be written', async () => {
    const { book } = memoryBook();
    const full: Book['save'] = () => Promise.resolve(failure({ code: 'store-full', message: '', remedy: '' }));
    leftBehind(record('mine'), 0, null);
    await recoverJournals({ ...book, save: full } as unknown as Book, neverLate);
    expect(journals()).toHaveLength(1);
  });

  it('is left alone where it is damaged, and the damaged journal is thrown away', async () => {
    const { book, kept } = memoryBook();
    localStorage.setItem('perrev-journal-torn', '{"job": {"id": "one"');
    localStorage.setItem('perrev-journal-odd', '{"job": {"id": 3}, "basedOn": 0}');
    await recoverJournals(book, neverLate);
    expect(kept.size + journals().length).toBe(0);
  });

  it('is taken late, and told of, where the page lets go of its journal late', async () => {
    const { book, kept } = memoryBook();
    let die: () => void = () => undefined;
    vi.stubGlobal('navigator', {});
    new Journal().write(record('late'), 0, null);
    const locks = lockManager();
    vi.stubGlobal('navigator', { locks });
    void locks.request(journals()[0]!, () => new Promise<void>((resolve) => (die = resolve)));
    await later();
    const told = vi.fn();
    await recoverJournals(book, told);
    expect(kept.size).toBe(0);
    expect(told).not.toHaveBeenCalled();
    die();
    await vi.waitFor(() => expect(told).toHaveBeenCalledOnce());
    expect(kept.get('one')).toEqual({ ...record('late'), revision: 1 });
    expect(journals()).toEqual([]);
  });

  it('is waited for where it is this tab’s own, so that a reload shows it at once', async () => {
    const { book, kept } = memoryBook();
    vi.stubGlobal('navigator', {});
    const journal = new Journal();
    journal.write(record('own'), 0, null);
    journal.claim();
    const locks = lockManager();
    vi.stubGlobal('navigator', { locks });
    void locks.request(journals()[0]!, () => later(50));
    await recoverJournals(book, neverLate);
    expect(kept.get('one')?.revision).toBe(1);
  });

  it('is not taken from a page that is alive', async () => {
    const { book, kept } = memoryBook();
    new Journal().write(record('alive'), 0, null);
    await later();
    await recoverJournals(book, neverLate);
    expect(kept.size).toBe(0);
    expect(journals()).toHaveLength(1);
  });
});
