import { applyEdit, type Edit } from '../../src/edits/index.js';
import { planFrom, type PlanDocument } from '../../src/model/index.js';
import { loadOpen, type OpenPlan, type OpenPlanOptions } from '../../src/plan/index.js';
import { toBase64 } from './base64.js';
import { Connection, records, type Database } from './database.js';
import { editIn } from './earlier-edit.js';
import { Journal, journalRoom, plansBegun, type Journalled, type JournalRoom } from './journal.js';
import { KeptPlan, type KeepOptions, type Pending } from './kept-plan.js';
import { keptSteps } from './kept-steps.js';
import { isSound, sealed, sound, type HandleRecord } from './records.js';
import { Requests } from './requests.js';
import type * as Salvaging from './salvage.js';

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
  readonly found: Salvaging.Salvage;
}

/** An edit of the version before that met another tab's and waits for a person. */
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
      const head = sound(heads.find((record) => record.plan === id));
      return head === undefined ? { id } : { id, name: head.name, at: head.at };
    });
    for (const id of begun) {
      const name = (await this.#begun(id))?.document.name;
      if (name !== undefined) lines.push({ id, name });
    }
    return lines.sort((a, b) => (b.at ?? Infinity) - (a.at ?? Infinity));
  }

  /** A new plan; it is written in the background like any change. Rejects where what opens plans cannot be loaded. */
  async create(document: PlanDocument): Promise<KeptPlan> {
    const { OpenPlan } = await loadOpen();
    return this.keep(OpenPlan.of(document, this.#planOptions()));
  }

  /** Keeps an open plan as a new one, at once. `id`: one that no plan here has. */
  keep(plan: OpenPlan, id = newId()): KeptPlan {
    const kept = this.#keep(id, plan, -1);
    void kept.flush();
    return kept;
  }

  /**
   * Opens a plan, with what could be undone in this tab when it was last open. What is damaged is told in `found`, kept for
   * `damaged()`, and the plan is written afresh. One of the version before is brought up to this one.
   *
   * Resolves with `undefined` where there is no such plan.
   */
  async open(id: string): Promise<Opened | undefined> {
    const { salvage } = await loadSalvage();
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
    const steps = keptSteps(id);
    const keepAll = steps.done.length + steps.undone.length > 0;
    const found = salvage(stored, { ...this.#planOptions(), keepAll });
    if (found.plan === undefined) return { found };
    let { seq } = found;
    if (found.damaged.length > 0 || found.lost > 0 || found.thin) {
      try {
        const done = await this.#renew(db, id, found);
        // Another tab brought it up meanwhile: its plan is the one to open.
        if (done === undefined) return await this.open(id);
        seq = done;
      } catch {
        // Where there is no room to mend, the plan opens as it is, and the same is found the next time.
        this.#connection.drop();
        if (found.earlier) seq = -1;
      }
    }
    found.plan.undo.resume(steps);
    const written = new Set(stored.log.map((record) => record.id));
    return { plan: this.#withEntries(id, found.plan, seq, entries, written), found };
  }

  /** Rejects where the plan cannot be opened. */
  async rename(id: string, name: string): Promise<void> {
    const kept = await this.#opened(id);
    kept.plan.change({ part: ['name'], value: name }, 'Rename the plan');
    if (!(await kept.close())) throw new Error('The new name could not be written.');
  }

  /** A second plan with the same content under the name given. Rejects where the first cannot be opened. */
  async duplicate(id: string, name: string): Promise<KeptPlan> {
    const kept = await this.#opened(id);
    const { document } = kept;
    await kept.close();
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
    const kept = (await db.getAll('snapshots', records(id))).filter((record) => isSound(record));
    const bySeq = new Map(kept.map(({ seq, at }) => [seq, { seq, at }]));
    return [...bySeq.values()].sort((a, b) => b.seq - a.seq);
  }

  /** The document of an earlier state; `undefined` where it is gone or damaged. Take it in by `KeptPlan.take`. */
  async readEarlier(id: string, seq: number): Promise<PlanDocument | undefined> {
    const db = await this.#connection.open();
    const snapshots = await db.getAll('snapshots', records(id, seq, seq));
    const { salvage } = await loadSalvage();
    const { plan } = salvage({ head: undefined, snapshots, log: [] });
    plan?.close();
    return plan?.document;
  }

  /** Edits of the version before that met another tab's and wait for a person, the oldest first. */
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
  async putBack(kept: KeptPlan, aside: AsideEdit): Promise<boolean> {
    const document = ifFits(kept.document, aside.edit);
    if (!document) return false;
    await kept.take(document, aside.edit.label);
    await this.drop(kept.id, aside.id);
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
    const { salvage } = await loadSalvage();
    const broken = inPlace === undefined ? [] : salvage(inPlace).damaged;
    if (kept.length === 0 && broken.length === 0) return undefined;
    return [
      ...kept.map((record) => record.text),
      ...broken.map((item) => JSON.stringify(item)),
    ].join('\n');
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

  #planOptions(): OpenPlanOptions {
    return { now: this.#now };
  }

  #keep(id: string, plan: OpenPlan, seq: number, more: Partial<Left> = {}): KeptPlan {
    const [connection, journal] = [this.#connection, this.#journalOf(id)];
    return new KeptPlan({ id, plan, seq, connection, journal, ...more, ...this.#options });
  }

  #journalOf(id: string): Journal {
    return new Journal(id, this.#room);
  }

  /** A plan that was made and left before the database had it. */
  async #openBegun(id: string, entries: readonly Journalled[]): Promise<Opened | undefined> {
    const plan = await this.#begun(id);
    if (!plan) return undefined;
    const found = { seq: -1, plan, lost: 0, unplaced: 0, damaged: [], thin: false };
    return { plan: this.#withEntries(id, plan, -1, entries, new Set()), found };
  }

  async #begun(id: string): Promise<OpenPlan | undefined> {
    const base = this.#journalOf(id).base();
    if (!base) return undefined;
    const { OpenPlan } = await loadOpen();
    return 'state' in base
      ? OpenPlan.from([base.state], this.#planOptions())
      : OpenPlan.of(base.document, this.#planOptions());
  }

  /** The plan with what the journal has and the database may not have: taking it in twice changes nothing. */
  #withEntries(
    id: string,
    plan: OpenPlan,
    seq: number,
    entries: readonly Journalled[],
    written: ReadonlySet<string>,
  ): KeptPlan {
    const pending = entries.flatMap(({ id: of, at, done }): Pending[] =>
      'update' in done ? [{ id: of, at, update: done.update }] : [],
    );
    const kept = this.#keep(id, plan, seq, { pending });
    const made: string[] = [];
    for (const entry of entries) {
      if ('update' in entry.done) continue;
      made.push(entry.id);
      if (written.has(entry.id)) continue;
      const { edit } = entry.done;
      const document = ifFits(kept.document, edit);
      if (document) void kept.take(document, edit.label);
      else void this.#setAside(id, entry.id, entry.at, edit);
    }
    if (made.length > 0) void kept.saved().then(() => this.#journalOf(id).done(made));
    return kept;
  }

  async #setAside(plan: string, id: string, at: number, edit: Edit): Promise<void> {
    const db = await this.#connection.open();
    await db.put('aside', sealed({ plan, id, at, text: JSON.stringify(edit) }));
  }

  async #opened(id: string): Promise<KeptPlan> {
    const opened = await this.open(id);
    if (opened?.plan === undefined) throw new Error('The plan cannot be opened.');
    return opened.plan;
  }

  async #openNewer(id: string): Promise<Opened | undefined> {
    const { salvage } = await loadSalvage();
    const db = await this.#connection.openNewer();
    try {
      const stored = db && (await storedPlan(db, id));
      if (stored === undefined) return undefined;
      const found = salvage(stored, this.#planOptions());
      if (found.plan === undefined) return { found };
      return { plan: this.#keep(id, found.plan, found.seq, { readOnly: true }), found };
    } finally {
      db?.close();
    }
  }

  /**
   * Moves what is damaged out of the way and writes the plan afresh, so that the next opening finds nothing. Returns the
   * last `seq`; `undefined` where a plan of the version before was brought up by another tab meanwhile.
   */
  async #renew(db: Database, plan: string, found: Salvaging.Salvage): Promise<number | undefined> {
    const now = this.#now();
    const transaction = db.transaction(
      ['heads', 'log', 'snapshots', 'aside', 'damaged'],
      'readwrite',
      { durability: 'strict' },
    );
    transaction.done.catch(() => undefined);
    const snapshots = transaction.objectStore('snapshots');
    const log = transaction.objectStore('log');
    if (found.earlier) {
      const inPlace = await snapshots.getAll(records(plan));
      if (inPlace.some((record) => record.kind === 'state' && isSound(record))) return undefined;
    }
    const seq = found.earlier ? found.seq + 1 : found.seq;
    const puts = new Requests();
    puts.add(transaction.done);
    if (found.damaged.length > 0) {
      const text = found.damaged.map((item) => JSON.stringify(item)).join('\n');
      puts.add(transaction.objectStore('damaged').add({ plan, at: now, text }));
    }
    for (const item of found.damaged) {
      if ('snapshotAt' in item || !('copy' in item)) continue;
      puts.add(('id' in item ? log : snapshots).delete([plan, item.seq, item.copy]));
    }
    for (const { id, at, edit } of found.earlier?.unplaced ?? []) {
      const record = sealed({ plan, id, at, text: JSON.stringify(edit) });
      puts.add(transaction.objectStore('aside').put(record));
    }
    const open = found.plan!;
    const text = toBase64(open.state());
    for (const copy of [0, 1])
      puts.add(snapshots.put(sealed({ plan, seq, copy, at: now, text, kind: 'state' })));
    const { name } = open.document;
    const head = { plan, name, seq, snapshot: seq, snapshotAt: now, at: now };
    puts.add(transaction.objectStore('heads').put(sealed(head)));
    await puts.done();
    return seq;
  }
}

/** What makes a plan of records: loaded with what opens plans, not for a page's first paint. */
const loadSalvage = (): Promise<typeof Salvaging> => import('./salvage.js');

interface Left {
  readonly pending: readonly Pending[];
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

async function storedPlan(db: Database, id: string): Promise<Salvaging.Stored | undefined> {
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
  return [...crypto.getRandomValues(new Uint32Array(4))]
    .map((value) => value.toString(36))
    .join('');
}
