/** The browser's data base: two stores, opened once. */
import type { DBSchema, IDBPDatabase } from 'idb';
import { openDB } from 'idb';

/** A recording as the reader gave it. */
export interface StoredBytes {
  readonly id: string;
  readonly name: string;
  readonly blob: Blob;
  readonly addedMs: number;
}

interface Schema extends DBSchema {
  /** Values are checked on reading, hence unknown. */
  jobs: { key: string; value: unknown };
  recordings: { key: string; value: StoredBytes };
}

export type Database = IDBPDatabase<Schema>;

const NAME = 'perrev';
const VERSION = 1;

/** Opens the data base. Rejects where the browser keeps nothing (some private windows). */
export function openDatabase(): Promise<Database> {
  return openDB<Schema>(NAME, VERSION, {
    upgrade(database) {
      database.createObjectStore('jobs', { keyPath: 'id' });
      database.createObjectStore('recordings', { keyPath: 'id' });
    },
    // Another tab wants a newer version: let it, and open again when needed.
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });
}
