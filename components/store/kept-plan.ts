// A plan that is open and kept. What is done to it is journalled at once; the store is written within a quarter of a
// second.
//
// Several tabs may have the same plan open, and all may edit. There is no owner: a write is one transaction that takes in
// what others wrote since and puts what was done here after it. The browser lets one such transaction run at a time, over
// all tabs; what they did is merged by the plan itself.
import { changesBetween, type Change, type OpenPlan } from '../../src/plan/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { wordsOf } from '../shared/words-of.js';
import type { Connection } from './database.js';
import type { Journal } from './journal.js';
import { SaveStateEvent } from './save-state-event.js';
import { troubleOf, type SaveState, type SaveTrouble } from './save-state.js';
import { fromStore, readOthers, UnreadablePlan, writePlan } from './write-plan.js';

export interface KeepOptions {
  /** The clock, epoch ms. */
  readonly now?: () => number;
  /** Waiting time for more changes before a write, ms. */
  readonly gatherMs?: number;
  /** Waiting times before the second, third … attempt, ms; the last holds for all that follow. */
  readonly retryMs?: readonly number[];
  /** After so long without an answer a write counts as not saved, ms. */
  readonly answerMs?: number;
}

/** Something done here that the store does not have yet. */
export interface Pending {
  /** Unique among all changes of the plan. */
  readonly id: string;
  /** When it was made, epoch ms. */
  readonly at: number;
  readonly update: Uint8Array;
}

interface Start extends KeepOptions {
  readonly id: string;
  readonly plan: OpenPlan;
  /** The last update in the store; below 0: the store has nothing of the plan. */
  readonly seq: number;
  readonly connection: Connection;
  readonly journal: Journal;
  /** What the journal holds and the store may not. */
  readonly pending?: readonly Pending[];
  readonly readOnly?: boolean;
}

interface KeptPlanEvents {
  'save-state': SaveStateEvent;
}

export class KeptPlan extends EventTarget {
  readonly id: string;
  readonly readOnly: boolean;
  /** The plan itself: change it, and it is kept. */
  readonly plan: OpenPlan;
  #seq: number;
  #pending: Pending[];
  #state: SaveState = { kind: 'saved' };
  #waiting: { readonly until: number; readonly done: () => void }[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<boolean> | undefined;
  #attempts = 0;
  #closed = false;
  /** Changes taken and changes written, since the plan was opened. */
  #taken: number;
  #written = 0;
  readonly #connection: Connection;
  readonly #journal: Journal;
  readonly #options: Required<KeepOptions>;
  readonly #tab = tabName();
  #count = 0;
  readonly #channel: BroadcastChannel | undefined;
  readonly #ended: () => void;

  /** Made by `PlanStore`. */
  constructor({
    id,
    plan,
    seq,
    connection,
    journal,
    pending = [],
    readOnly = false,
    ...options
  }: Start) {
    super();
    this.id = id;
    this.readOnly = readOnly;
    this.plan = plan;
    this.#pending = [...pending];
    this.#taken = pending.length;
    this.#journal = journal;
    this.#seq = seq;
    this.#connection = connection;
    this.#options = {
      now: () => Date.now(),
      gatherMs: 200,
      retryMs: [500, 2_000, 5_000, 15_000, 30_000],
      answerMs: 5_000,
      ...options,
    };
    for (const { update } of pending) plan.incoming(update, fromStore);
    this.#ended = plan.onUpdate((update, origin) => {
      if (origin !== fromStore) this.#take(update);
    });
    if (typeof BroadcastChannel !== 'undefined') {
      this.#channel = new BroadcastChannel(`possession-fit/plan/${id}`);
      this.#channel.addEventListener('message', this.#onOthers);
    }
    globalThis.addEventListener?.('pagehide', this.#onLeaving);
    globalThis.document?.addEventListener('visibilitychange', this.#onVisibility);
    if (readOnly) this.#state = { kind: 'read-only', changes: 0 };
    else if (seq < 0) journal.begin(plan.state(), this.#options.now());
    if (!readOnly && this.#unsaved > 0) {
      this.#state = { kind: 'saving', changes: this.#unsaved };
      this.#timer = setTimeout(() => void this.flush(), 0);
    }
  }

  /** The document with all that was done here and in other tabs. */
  get document(): PlanDocument {
    return this.plan.document;
  }

  get state(): SaveState {
    return this.#state;
  }

  /**
   * Changes the plan, with what was done in words ("Cut window W3"). Resolves once the change is with the disk. It never
   * rejects: while the store cannot be written it waits, and `state` says so.
   */
  change(changes: Change | readonly Change[], label: string): Promise<void> {
    this.plan.change(changes, label);
    return this.saved();
  }

  /** Makes the plan what a document says that was made elsewhere: a file, a page of somebody's own. Resolves as `change` does. */
  take(document: PlanDocument, label: string): Promise<void> {
    return this.change(changesBetween(this.document, document), label);
  }

  /** Resolves once all that was done until now is with the disk. */
  saved(): Promise<void> {
    if (this.#written >= this.#taken) return Promise.resolve();
    return new Promise((done) => this.#waiting.push({ until: this.#taken, done }));
  }

  /** Writes at once what is waiting. Returns whether all is saved. */
  async flush(): Promise<boolean> {
    if (this.readOnly) return this.#unsaved === 0;
    clearTimeout(this.#timer);
    this.#timer = undefined;
    // A write under way took what was there when it began.
    while (this.#writing) await this.#writing;
    if (this.#unsaved === 0 && this.#stored) return true;
    this.#writing = this.#write();
    const done = await this.#writing;
    return done && this.#unsaved === 0 ? true : done ? this.flush() : false;
  }

  /** Reads what other tabs wrote. Needed by hand only where the browser cannot tell tabs of each other. */
  async follow(): Promise<void> {
    if (this.readOnly || this.#closed) return;
    if (this.#writing) {
      await this.#writing;
      return;
    }
    try {
      const db = await this.#connection.open();
      this.#seq = Math.max(this.#seq, await readOthers(db, this.#work()));
    } catch (error) {
      // Nothing is lost by it, and the next write meets the same trouble and tells of it; but a page that is out of
      // date should say so before more is typed.
      this.#connection.drop();
      if (troubleOf(error) === 'newer') this.#trouble('newer', wordsOf(error));
    }
  }

  /** Writes what is waiting and lets the plan go. Returns whether all is saved. */
  async close(): Promise<boolean> {
    const saved = await this.flush();
    this.#closed = true;
    clearTimeout(this.#timer);
    this.#channel?.close();
    this.#ended();
    globalThis.removeEventListener?.('pagehide', this.#onLeaving);
    globalThis.document?.removeEventListener('visibilitychange', this.#onVisibility);
    return saved;
  }

  override addEventListener<T extends keyof KeptPlanEvents>(
    type: T,
    listener: (event: KeptPlanEvents[T]) => void,
    options?: boolean | AddEventListenerOptions,
  ): void;
  override addEventListener(
    type: string,
    listener: EventListenerOrEventListenerObject | null,
    options?: boolean | AddEventListenerOptions,
  ): void;
  override addEventListener(
    type: string,
    listener: EventListenerOrEventListenerObject | null,
    options?: boolean | AddEventListenerOptions,
  ): void {
    super.addEventListener(type, listener, options);
  }

  /** Whether the store has the plan at all: a new one is written whole at its first write. */
  get #stored(): boolean {
    return this.#seq >= 0;
  }

  get #unsaved(): number {
    return this.#pending.length;
  }

  #take(update: Uint8Array): void {
    const id = `${this.#tab}-${(this.#count += 1)}`;
    // The journal goes by this time: a change stands after the ones that it was made upon, whatever the clock says.
    const after = (this.#pending.at(-1)?.at ?? -Infinity) + 1;
    const pending: Pending = { id, at: Math.max(this.#options.now(), after), update };
    this.#pending.push(pending);
    this.#taken += 1;
    const kept = this.readOnly || this.#journal.add(pending);
    if (this.readOnly) this.#tell({ kind: 'read-only', changes: this.#unsaved });
    else if (this.#state.kind !== 'not-saved') {
      this.#tell({ kind: 'saving', changes: this.#unsaved });
      this.#timer ??= setTimeout(() => void this.flush(), kept ? this.#options.gatherMs : 0);
    } else this.#tell({ ...this.#state, changes: this.#unsaved });
  }

  #work(update?: Uint8Array, id = ''): Parameters<typeof writePlan>[1] {
    const now = this.#options.now();
    const work = { plan: this.id, open: this.plan, seq: this.#seq, id, now };
    return update ? { ...work, update } : work;
  }

  async #write(): Promise<boolean> {
    const pending = [...this.#pending];
    const update =
      pending.length > 0 ? this.plan.merged(pending.map((item) => item.update)) : undefined;
    const slow = setTimeout(
      () => this.#trouble('no-answer', 'No answer yet.'),
      this.#options.answerMs,
    );
    try {
      const db = await this.#connection.open();
      this.#seq = await writePlan(db, this.#work(update, pending.at(-1)?.id));
      clearTimeout(slow);
      this.#attempts = 0;
      this.#writing = undefined;
      this.#settle(pending);
      this.#channel?.postMessage(this.#seq);
      return true;
    } catch (error) {
      clearTimeout(slow);
      this.#writing = undefined;
      this.#connection.drop();
      this.#trouble(error instanceof UnreadablePlan ? 'damaged' : troubleOf(error), wordsOf(error));
      this.#retryLater();
      return false;
    }
  }

  /** What is with the disk now need not be journalled, and those who waited for it are told. */
  #settle(written: readonly Pending[]): void {
    this.#pending = this.#pending.slice(written.length);
    this.#written += written.length;
    this.#journal.begun();
    this.#journal.done(written.map(({ id }) => id));
    const waiting = this.#waiting;
    this.#waiting = waiting.filter(({ until }) => until > this.#written);
    for (const { until, done } of waiting) if (until <= this.#written) done();
    if (this.#unsaved === 0) this.#tell({ kind: 'saved', at: this.#options.now() });
    // With a timer set, a write is due already: after a failure, not at once.
    else if (this.#timer === undefined) {
      this.#tell({ kind: 'saving', changes: this.#unsaved });
      this.#timer = setTimeout(() => void this.flush(), 0);
    }
  }

  #trouble(trouble: SaveTrouble, detail: string): void {
    this.#tell({ kind: 'not-saved', trouble, changes: this.#unsaved, detail });
  }

  #retryLater(): void {
    if (this.#closed) return;
    const { retryMs } = this.#options;
    const wait = retryMs[Math.min(this.#attempts, retryMs.length - 1)];
    this.#attempts += 1;
    clearTimeout(this.#timer);
    if (wait !== undefined) this.#timer = setTimeout(() => void this.flush(), wait);
  }

  #tell(state: SaveState): void {
    this.#state = state;
    this.dispatchEvent(new SaveStateEvent(state));
  }

  readonly #onOthers = (): void => void this.follow();

  readonly #onLeaving = (): void => void this.flush();

  readonly #onVisibility = (): void => {
    if (globalThis.document.visibilityState === 'hidden') void this.flush();
    else void this.follow();
  };
}

/** Tells this tab's edits from those of any other, at any time. */
function tabName(): string {
  // `randomUUID` is missing on pages without a secure origin.
  return [...crypto.getRandomValues(new Uint32Array(3))]
    .map((value) => value.toString(36))
    .join('');
}
