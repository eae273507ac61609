// A plan that is open and kept. The document changes and is journalled at once; the store is written within a quarter
// of a second.
//
// Several tabs may have the same plan open, and all may edit. There is no owner: a write is one transaction that reads
// what others wrote since, moves the edits made here past it and puts them after it. The browser lets one such
// transaction run at a time, over all tabs. Where two edits meet in the same row or value, the one that comes second
// is set aside, in the store, for a person to look at.
import { editBetween, shownOf, type Edit, type Line, type Pending } from '../../src/edits/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { wordsOf } from '../shared/words-of.js';
import type { Connection } from './database.js';
import { EditsAsideEvent } from './edits-aside-event.js';
import type { Journal } from './journal.js';
import { PlanFollowEvent } from './plan-follow-event.js';
import { SaveStateEvent } from './save-state-event.js';
import { troubleOf, type SaveState, type SaveTrouble } from './save-state.js';
import { mergeLine, readOthers, UnreadablePlan, writePlan, type Agreed } from './write-plan.js';

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

interface Start extends KeepOptions {
  readonly id: string;
  readonly document: PlanDocument;
  /** The last edit in the store. */
  readonly seq: number;
  readonly connection: Connection;
  readonly journal: Journal;
  /** Edits that the journal holds and the store does not; each fits on what the ones before it make. */
  readonly pending?: readonly Pending[];
  /** Edits of the journal that fit no more: written to those set aside. */
  readonly aside?: readonly Pending[];
  readonly readOnly?: boolean;
}

interface KeptPlanEvents {
  'save-state': SaveStateEvent;
  'plan-follow': PlanFollowEvent;
  'edits-aside': EditsAsideEvent;
}

type Outcome = 'saved' | 'aside';

export class KeptPlan extends EventTarget {
  readonly id: string;
  readonly readOnly: boolean;
  #line: Line;
  #shown: PlanDocument;
  #seq: number;
  #aside: Pending[] = [];
  #state: SaveState = { kind: 'saved' };
  #waiting = new Map<string, (outcome: Outcome) => void>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<boolean> | undefined;
  #attempts = 0;
  #closed = false;
  readonly #connection: Connection;
  readonly #journal: Journal;
  readonly #options: Required<KeepOptions>;
  readonly #tab = tabName();
  #count = 0;
  readonly #channel: BroadcastChannel | undefined;

  /** Made by `PlanStore`. */
  constructor({
    id,
    document,
    seq,
    connection,
    journal,
    pending = [],
    aside = [],
    readOnly = false,
    ...options
  }: Start) {
    super();
    this.id = id;
    this.readOnly = readOnly;
    this.#line = { base: document, pending };
    this.#shown = shownOf(this.#line);
    this.#aside = [...aside];
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
    if (typeof BroadcastChannel !== 'undefined') {
      this.#channel = new BroadcastChannel(`possession-fit/plan/${id}`);
      this.#channel.addEventListener('message', this.#onOthers);
    }
    globalThis.addEventListener?.('pagehide', this.#onLeaving);
    globalThis.document?.addEventListener('visibilitychange', this.#onVisibility);
    if (readOnly) this.#state = { kind: 'read-only', changes: 0 };
    else if (seq < 0) journal.begin(document, this.#options.now());
    if (!readOnly && this.#unsaved > 0) {
      this.#state = { kind: 'saving', changes: this.#unsaved };
      this.#timer = setTimeout(() => void this.flush(), 0);
    }
  }

  /** The document with all that was done here and in other tabs. */
  get document(): PlanDocument {
    return this.#shown;
  }

  get state(): SaveState {
    return this.#state;
  }

  /**
   * Takes in the changed document: call it on every change, with what was done in words ("Cut window W3").
   *
   * Resolves once the change is with the disk (`saved`), or was set aside because another tab changed the same place
   * first (`aside`). It never rejects: while the store cannot be written it waits, and `state` says so.
   */
  change(document: PlanDocument, label: string): Promise<Outcome> {
    const edit = editBetween(this.#shown, document, label);
    if (edit.changes.length === 0) return Promise.resolve('saved');
    const id = `${this.#tab}-${(this.#count += 1)}`;
    // The journal goes by this time: an edit stands after the ones that it was made upon, whatever the clock says.
    const after = (this.#line.pending.at(-1)?.at ?? -Infinity) + 1;
    const one: Pending = { id, at: Math.max(this.#options.now(), after), edit };
    this.#line = { base: this.#line.base, pending: [...this.#line.pending, one] };
    this.#shown = document;
    const kept = this.readOnly || this.#journal.add(one);
    const written = new Promise<Outcome>((resolve) => this.#waiting.set(id, resolve));
    if (this.readOnly) this.#tell({ kind: 'read-only', changes: this.#unsaved });
    else if (this.#state.kind !== 'not-saved') {
      this.#tell({ kind: 'saving', changes: this.#unsaved });
      this.#timer ??= setTimeout(() => void this.flush(), kept ? this.#options.gatherMs : 0);
    } else this.#tell({ ...this.#state, changes: this.#unsaved });
    return written;
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
      const work = { plan: this.id, line: this.#line, seq: this.#seq, aside: [], now: 0 };
      const { agreed, seq } = await readOthers(db, work);
      // A write may have begun and ended meanwhile; it read the same and more.
      if (agreed.length > 0 && this.#seq === work.seq && !this.#writing)
        this.#takeIn(agreed, seq, new Set());
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
    return this.#line.pending.length + this.#aside.length;
  }

  async #write(): Promise<boolean> {
    const work = {
      plan: this.id,
      line: this.#line,
      seq: Math.max(0, this.#seq),
      aside: this.#aside,
      now: this.#options.now(),
    };
    const slow = setTimeout(
      () => this.#trouble('no-answer', 'No answer yet.'),
      this.#options.answerMs,
    );
    try {
      const db = await this.#connection.open();
      const { agreed, aside, seq } = await writePlan(db, work);
      clearTimeout(slow);
      this.#attempts = 0;
      this.#writing = undefined;
      this.#aside = this.#aside.filter((one) => !aside.has(one.id));
      this.#takeIn(agreed, seq, aside);
      this.#channel?.postMessage(seq);
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

  /** Moves the line past what is in the store. `written`: ids that are in the list of those set aside. */
  #takeIn(agreed: readonly Agreed[], seq: number, written: ReadonlySet<string>): void {
    const before = this.#shown;
    const own = new Set(this.#line.pending.map((one) => one.id));
    const merged = mergeLine(this.#line, agreed);
    this.#line = merged.line;
    this.#seq = seq;
    const refused = merged.refused;
    this.#aside.push(...refused.filter((one) => !written.has(one.id)));
    const foreign = agreed.some((one) => !own.has(one.id));
    if (foreign || refused.length > 0) this.#shown = shownOf(this.#line);
    this.#journal.begun();
    const open = new Set([...this.#line.pending, ...this.#aside].map((one) => one.id));
    this.#journal.done([...own, ...written].filter((id) => !open.has(id)));
    this.#settle(written);
    if (this.#unsaved === 0) this.#tell({ kind: 'saved', at: this.#options.now() });
    // With a timer set, a write is due already: after a failure, not at once.
    else if (this.#timer === undefined) {
      this.#tell({ kind: 'saving', changes: this.#unsaved });
      this.#timer = setTimeout(() => void this.flush(), 0);
    }
    const edit: Edit = editBetween(before, this.#shown, 'Changes made in another tab');
    if (edit.changes.length > 0) this.dispatchEvent(new PlanFollowEvent(this.#shown, edit));
    if (refused.length > 0 || written.size > 0) this.dispatchEvent(new EditsAsideEvent(refused));
  }

  /** Keeps the promises of all edits that are neither under way nor about to be set aside. */
  #settle(aside: ReadonlySet<string>): void {
    const open = new Set([...this.#line.pending, ...this.#aside].map((one) => one.id));
    for (const [id, resolve] of this.#waiting) {
      if (open.has(id)) continue;
      this.#waiting.delete(id);
      resolve(aside.has(id) ? 'aside' : 'saved');
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
  return [...crypto.getRandomValues(new Uint32Array(3))].map((one) => one.toString(36)).join('');
}
