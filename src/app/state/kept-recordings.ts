/** Which recordings of the open job are in the book already: bytes never change, so that each is put there once. */
import type { Problem } from '../../core/note.ts';
import type { Book } from '../book/book.ts';
import type { StoredRecording } from './files.ts';
import { mutableSet } from './maps.ts';

export class KeptRecordings {
  readonly #book: Book;
  readonly #kept = mutableSet<string>();

  constructor(book: Book) {
    this.#book = book;
  }

  /** Another job: these of its recordings came from the book. */
  begin(ids: readonly string[]): void {
    this.#kept.clear();
    ids.forEach((id) => this.#kept.add(id));
  }

  /** Puts those into the book that are not there; the problem of the first that could not be kept. */
  async save(ids: readonly string[], files: readonly StoredRecording[]): Promise<Problem | null> {
    for (const id of ids) {
      const file = files.find((candidate) => candidate.id === id);
      if (!file || this.#kept.has(id)) continue;
      const kept = await this.#book.keepRecording({ ...file, addedMs: Date.now() });
      if (!kept.ok) return kept.problem;
      this.#kept.add(id);
    }
    return null;
  }
}
