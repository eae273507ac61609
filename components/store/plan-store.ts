import { applyEdit, type Edit, type Pending } from '../../src/edits/index.js';
import { planFrom, type PlanDocument } from '../../src/model/index.js';
import { Connection, records, type Database } from './database.js';
import { Journal, journalRoom, plansBegun, type JournalRoom } from './journal.js';
import { KeptPlan, type KeepOptions } from './kept-plan.js';
import { editIn, isSound, sealed, sound, type HandleRecord } from './records.js';
import { Requests } from './requests.js';
import { salvage, type Salvage, type Stored } from './salvage.js';

export interface StoreOptions extends KeepOptions {
  /** Name of the browser's database; another name is another store. */
  readonly name?: string;
  /** Where edits are written at once; absent: the browser's local storage. */
  readonly journal?: JournalRoom | null;
}

/** A plan of the list. */
export interface PlanLine {
  readonly id: string;
  /** Absent where the line of the list is damaged: open the plan to mend it. */
  readonly name?: string;
  /** When it was last written, epoch ms. */
  readonly at?: number;
}

/** An opened plan with what was found on the way; without `plan`, `found` says why. */
export interface Opened {
  readonly plan?: KeptPlan;
  readonly found: Salvage;
}

/** An edit that waits for a person. */
export interface AsideEdit {
  readonly id: string;
  readonly at: number;
  readonly edit: Edit;
}

/** All plans that this browser keeps for this page. Methods that read reject with the browser's error where it cannot. */
export class PlanStore {
  readonly #connection: Connection;
  readonly #options: KeepOptions;
  readonly #now: () => number;
  readonly #room: JournalRoom | null;

  constructor({ name, journal = journalRoom(), ...options }: StoreOptions = {}) {
    this.#room = journal;
    this.#connection = new Connection(name);
    this.#options = options;
    this.#now = options.now ?? (() => Date.now());
  }

  /** The plans, the last changed first. A plan whose line is damaged is listed too. */
  async list(): Promise<PlanLine[]> {
    const db = await this.#connection.open();
    const heads = await db.getAll('heads');
    const keys = await db.getAllKeys('snapshots');
    const ids = new Set([...heads.map((head) => head.plan), ...keys.map(([plan]) => plan)]);
    const begun = plansBegun(this.#room).filter((id) => !ids.has(id));
    const lines = [...ids].map((id): PlanLine => {
      const head = sound(heads.find((one) => one.plan === id));
      return head === undefined ? { id } : { id, name: head.name, at: head.at };
    });
    for (const id of begun) {
      const name = this.#journalOf(id).base()?.name;
      if (name !== undefined) lines.push({ id, name });
    }
    return lines.sort((a, b) => (b.at ?? Infinity) - (a.at ?? Infinity));
  }

  /** A new plan, open at once; it is written in the background like any change. */
  create(document: PlanDocument): KeptPlan {
    const plan = this.#keep(newId(), document, -1);
    void plan.flush();
    return plan;
  }

  /**
   * Opens a plan. What is damaged is told in `found`, kept for `damaged()`, and the plan is written afresh.
   *
   * Resolves with `undefined` where there is no such plan.
   */
  async open(id: string): Promise<Opened | undefined> {
    // Before the store is read: what leaves the journal meanwhile is in the store by then.
    const entries = this.#journalOf(id).entries();
    let db: Database;
    try {
      db = await this.#connection.open();
    } catch (error) {
      const newer = error instanceof DOMException && error.name === 'VersionError';
      if (!newer) throw error;
      return this.#openNewer(id);
    }
    const stored = await storedPlan(db, id);
    if (stored === undefined) return this.#openBegun(id, entries);
    const found = salvage(stored);
    if (found.document === undefined) return { found };
    if (found.damaged.length > 0 || found.lost > 0 || found.unplaced.length > 0 || found.thin) {
      // Where there is no room to mend, the plan opens as it is, and the same is found the next time.
      await this.#mend(db, id, found).catch(() => this.#connection.drop());
    }
    if (found.saved === undefined) {
      const written = new Set(stored.log.map((record) => record.id));
      const left = this.#left(id, found.document, entries, written);
      return { plan: this.#keep(id, found.document, found.seq, left), found };
    }
    const plan = this.#keep(id, found.saved, found.seq);
    void plan.change(found.document, 'Bring the plan up to date');
    return { plan, found };
  }

  /** Rejects where the plan cannot be opened. */
  async rename(id: string, name: string): Promise<void> {
    const plan = await this.#opened(id);
    void plan.change({ ...plan.document, name }, 'Rename the plan');
    if (!(await plan.close())) throw new Error('The new name could not be written.');
  }

  /** A second plan with the same content under the name given. Rejects where the first cannot be opened. */
  async duplicate(id: string, name: string): Promise<KeptPlan> {
    const plan = await this.#opened(id);
    const { document } = plan;
    await plan.close();
    return this.create({ ...document, name });
  }

  /** Removes a plan with all its snapshots. Ask first: it cannot be had back. */
  async delete(id: string): Promise<void> {
    const db = await this.#connection.open();
    const transaction = db.transaction(
      ['heads', 'log', 'snapshots', 'aside', 'damaged', 'handles'],
      'readwrite',
      { durability: 'strict' },
    );
    transaction.done.catch(() => undefined);
    this.#journalOf(id).clear();
    const damaged = await transaction.objectStore('damaged').index('plan').getAllKeys(id);
    await Promise.all([
      transaction.objectStore('heads').delete(id),
      transaction.objectStore('log').delete(records(id)),
      transaction.objectStore('snapshots').delete(records(id)),
      transaction.objectStore('aside').delete(IDBKeyRange.bound([id, ''], [id, '\uffff'])),
      transaction.objectStore('handles').delete(id),
      ...damaged.map((key) => transaction.objectStore('damaged').delete(key)),
      transaction.done,
    ]);
  }

  /** Full copies of earlier states, the newest first: the last five, and one a day of the last fourteen. */
  async earlier(id: string): Promise<{ readonly seq: number; readonly at: number }[]> {
    const db = await this.#connection.open();
    const kept = (await db.getAll('snapshots', records(id))).filter((one) => isSound(one));
    const bySeq = new Map(kept.map(({ seq, at }) => [seq, { seq, at }]));
    return [...bySeq.values()].sort((a, b) => b.seq - a.seq);
  }

  /** The document of an earlier state; `undefined` where it is gone or damaged. Take it in by `plan.change`. */
  async readEarlier(id: string, seq: number): Promise<PlanDocument | undefined> {
    const db = await this.#connection.open();
    const snapshots = await db.getAll('snapshots', records(id, seq, seq));
    return salvage({ head: undefined, snapshots, log: [] }).document;
  }

  /** Edits that met another tab's and wait for a person, the oldest first. */
  async aside(id: string): Promise<AsideEdit[]> {
    const db = await this.#connection.open();
    const kept = await db.getAll('aside', IDBKeyRange.bound([id, ''], [id, '\uffff']));
    const edits = kept.flatMap((record) => {
      const edit = isSound(record) ? editIn(record) : undefined;
      return edit === undefined ? [] : [{ id: record.id, at: record.at, edit }];
    });
    return edits.sort((a, b) => a.at - b.at);
  }

  /** Makes a set-aside edit again, where it fits the document as it now is. Returns whether it did. */
  async putBack(plan: KeptPlan, aside: AsideEdit): Promise<boolean> {
    let document: PlanDocument;
    try {
      document = applyEdit(plan.document, aside.edit);
    } catch (error) {
      if (error instanceof RangeError) return false;
      throw error;
    }
    await plan.change(document, aside.edit.label);
    await this.drop(plan.id, aside.id);
    return true;
  }

  /** Lets a set-aside edit go: a person has looked at it. */
  async drop(id: string, edit: string): Promise<void> {
    const db = await this.#connection.open();
    await db.delete('aside', [id, edit]);
  }

  /** Damaged records as text to be saved as a file; `undefined` where there are none. */
  async damaged(id: string): Promise<string | undefined> {
    const db = await this.#connection.open();
    const kept = await db.getAllFromIndex('damaged', 'plan', id);
    const inPlace = await storedPlan(db, id);
    const broken = inPlace === undefined ? [] : salvage(inPlace).damaged;
    if (kept.length === 0 && broken.length === 0) return undefined;
    return [...kept.map((one) => one.text), ...broken.map((one) => JSON.stringify(one))].join('\n');
  }

  /** The file a person last saved the plan to. */
  async fileOf(id: string): Promise<HandleRecord | undefined> {
    const db = await this.#connection.open();
    return db.get('handles', id);
  }

  async rememberFile(record: HandleRecord): Promise<void> {
    const db = await this.#connection.open();
    await db.put('handles', record);
  }

  #keep(id: string, document: PlanDocument, seq: number, more: Partial<Left> = {}): KeptPlan {
    const [connection, journal] = [this.#connection, this.#journalOf(id)];
    return new KeptPlan({ id, document, seq, connection, journal, ...more, ...this.#options });
  }

  #journalOf(id: string): Journal {
    return new Journal(id, this.#room);
  }

  /** A plan that was made and left before the database had it. */
  #openBegun(id: string, entries: readonly Pending[]): Opened | undefined {
    const base = this.#journalOf(id).base();
    if (!base) return undefined;
    const found = { seq: -1, document: base, lost: 0, unplaced: [], damaged: [], thin: false };
    return { plan: this.#keep(id, base, -1, this.#left(id, base, entries)), found };
  }

  /** What the journal has of a plan and the database has not: edits that fit, in order, and those that do not. */
  #left(
    id: string,
    document: PlanDocument,
    entries: readonly Pending[],
    written: ReadonlySet<string> = new Set(),
  ): Left {
    this.#journalOf(id).done(entries.flatMap((entry) => (written.has(entry.id) ? [entry.id] : [])));
    const left = { pending: [] as Pending[], aside: [] as Pending[] };
    let shown = document;
    for (const entry of entries) {
      if (written.has(entry.id)) continue;
      const next = ifFits(shown, entry.edit);
      if (next) {
        shown = next;
        left.pending.push(entry);
      } else left.aside.push(entry);
    }
    return left;
  }

  async #opened(id: string): Promise<KeptPlan> {
    const opened = await this.open(id);
    if (opened?.plan === undefined) throw new Error('The plan cannot be opened.');
    return opened.plan;
  }

  async #openNewer(id: string): Promise<Opened | undefined> {
    const db = await this.#connection.openNewer();
    try {
      const stored = db && (await storedPlan(db, id));
      if (stored === undefined) return undefined;
      const found = salvage(stored);
      if (found.document === undefined) return { found };
      return { plan: this.#keep(id, found.document, found.seq, { readOnly: true }), found };
    } finally {
      db?.close();
    }
  }

  /** Moves what is damaged out of the way and writes a sound snapshot, so that the next opening finds nothing. */
  async #mend(db: Database, plan: string, found: Salvage): Promise<void> {
    const now = this.#now();
    const { seq } = found;
    const document = found.saved ?? found.document!;
    const transaction = db.transaction(
      ['heads', 'log', 'snapshots', 'aside', 'damaged'],
      'readwrite',
      { durability: 'strict' },
    );
    transaction.done.catch(() => undefined);
    const snapshots = transaction.objectStore('snapshots');
    const puts = new Requests();
    puts.add(transaction.done);
    if (found.damaged.length > 0) {
      const text = found.damaged.map((one) => JSON.stringify(one)).join('\n');
      puts.add(transaction.objectStore('damaged').add({ plan, at: now, text }));
    }
    for (const one of found.damaged) {
      if ('snapshotAt' in one || !('copy' in one)) continue;
      const store = 'id' in one ? transaction.objectStore('log') : snapshots;
      puts.add(store.delete([plan, one.seq, one.copy]));
    }
    for (const { id, at, edit } of found.unplaced) {
      const record = sealed({ plan, id, at, text: JSON.stringify(edit) });
      puts.add(transaction.objectStore('aside').put(record));
    }
    const text = JSON.stringify(document);
    for (const copy of [0, 1]) puts.add(snapshots.put(sealed({ plan, seq, copy, at: now, text })));
    const { name } = document;
    const head = { plan, name, seq, snapshot: seq, snapshotAt: now, at: now };
    puts.add(transaction.objectStore('heads').put(sealed(head)));
    await puts.done();
  }
}

interface Left {
  readonly pending: readonly Pending[];
  readonly aside: readonly Pending[];
  readonly readOnly?: boolean;
}

/** The document with an edit made; `undefined` where it does not fit or makes no plan. */
function ifFits(document: PlanDocument, edit: Edit): PlanDocument | undefined {
  try {
    return planFrom(applyEdit(document, edit)).document;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

async function storedPlan(db: Database, id: string): Promise<Stored | undefined> {
  const transaction = db.transaction(['heads', 'log', 'snapshots'], 'readonly');
  transaction.done.catch(() => undefined);
  const head = await transaction.objectStore('heads').get(id);
  const snapshots = await transaction.objectStore('snapshots').getAll(records(id));
  const log = await transaction.objectStore('log').getAll(records(id));
  return head === undefined && snapshots.length === 0 && log.length === 0
    ? undefined
    : { head, snapshots, log };
}

function newId(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((one) => one.toString(36)).join('');
}

/** A name for the file of a plan: letters, figures and dashes. */
export function fileNameOf(document: PlanDocument): string {
  const name = document.name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  return `${name === '' ? 'plan' : name}.plan.json`;
}
