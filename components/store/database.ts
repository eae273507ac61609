import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type {
  AsideRecord,
  DamagedRecord,
  HandleRecord,
  HeadRecord,
  LogRecord,
  SnapshotRecord,
} from './records.js';

export interface StoreSchema extends DBSchema {
  heads: { key: string; value: HeadRecord };
  /** Key: plan, seq, copy. */
  log: { key: [string, number, number]; value: LogRecord };
  snapshots: { key: [string, number, number]; value: SnapshotRecord };
  /** Key: plan, id of the edit. */
  aside: { key: [string, string]; value: AsideRecord };
  damaged: { key: number; value: DamagedRecord; indexes: { plan: string } };
  handles: { key: string; value: HandleRecord };
}

export type Database = IDBPDatabase<StoreSchema>;

/**
 * `storeSteps[n]` brings a store of version n to n + 1; their count is the version of the store. (The plans in it carry
 * a schema of their own.) To change the store: add a step, never alter one.
 */
export const storeSteps: readonly ((store: Database) => void)[] = [
  (store) => {
    store.createObjectStore('heads', { keyPath: 'plan' });
    store.createObjectStore('log', { keyPath: ['plan', 'seq', 'copy'] });
    store.createObjectStore('snapshots', { keyPath: ['plan', 'seq', 'copy'] });
    store.createObjectStore('aside', { keyPath: ['plan', 'id'] });
    store.createObjectStore('damaged', { autoIncrement: true }).createIndex('plan', 'plan');
    store.createObjectStore('handles', { keyPath: 'plan' });
  },
  // Records from here on may hold updates and states (`kind`), which an earlier page would take for damage. What is there
  // stays as it is until its plan is opened.
  () => undefined,
];
export const storeName = 'possession-fit/plans';

/** Milliseconds after which an opening that is not answered counts as failed. */
const longestOpening = 5_000;

/** All records of a plan whose `seq` lies in [from, to]. */
export function records(plan: string, from = 0, to = Number.MAX_SAFE_INTEGER): IDBKeyRange {
  return IDBKeyRange.bound([plan, from, 0], [plan, to, 9]);
}

/** The one connection of a page. After any failure it is dropped, and opened anew at the next need. */
export class Connection {
  readonly #name: string;
  readonly #steps: readonly ((store: Database) => void)[];
  #opening: Promise<Database> | undefined;

  constructor(name = storeName, steps = storeSteps) {
    this.#name = name;
    this.#steps = steps;
  }

  /** Rejects with the browser's own error where the store cannot be opened. */
  open(): Promise<Database> {
    const opening = (this.#opening ??= this.#open());
    opening.catch(() => {
      if (this.#opening === opening) this.#opening = undefined;
    });
    return opening;
  }

  /**
   * The store as it is, at whatever version, for reading only; `undefined` where it is not of a later version than
   * this page knows.
   */
  async openNewer(): Promise<Database | undefined> {
    // Without a version the browser opens what is there, and makes an empty store where there is none.
    const db = await openDB<StoreSchema>(this.#name);
    if (db.version > this.#steps.length) return db;
    db.close();
    return undefined;
  }

  /** Lets the connection go: a browser's store can stay broken until it is opened again. */
  drop(): void {
    const opening = this.#opening;
    this.#opening = undefined;
    opening?.then(
      (db) => db.close(),
      () => undefined,
    );
  }

  /** A browser may leave an opening unanswered for ever: then it counts as failed. */
  #open(): Promise<Database> {
    const opening = this.#opened();
    const late = new Promise<never>((_done, reject) => {
      const timer = setTimeout(
        () => reject(new DOMException('The storage does not answer.', 'TimeoutError')),
        longestOpening,
      );
      opening.catch(() => undefined).finally(() => clearTimeout(timer));
    });
    // Where it opens after all, nobody waits for it any more.
    late.catch(() => opening.then((db) => db.close()).catch(() => undefined));
    return Promise.race([opening, late]);
  }

  async #opened(): Promise<Database> {
    if (typeof indexedDB === 'undefined')
      throw new DOMException('This browser offers no storage.', 'NotSupportedError');
    const db: Database = await openDB<StoreSchema>(this.#name, this.#steps.length, {
      upgrade: (store, oldVersion) => {
        for (const step of this.#steps.slice(oldVersion)) step(store);
      },
      // Another tab with a newer page waits for us to let go; the next write then says so.
      blocking: () => {
        db.close();
        this.#opening = undefined;
      },
      terminated: () => {
        this.#opening = undefined;
      },
    });
    return db;
  }
}
