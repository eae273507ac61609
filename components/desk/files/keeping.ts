import { loadProblems } from '../../shared/problem-words.js';
import type { ReactiveController } from 'lit';
import type { OpenPlan } from '../../../src/plan/index.js';
import { isoText } from '../../../src/calendar/index.js';
import {
  askToKeep,
  keepSteps,
  lastPlans,
  rememberPlan,
  salvageText,
  saveText,
  type AsideEdit,
  type KeptPlan,
  type PlanLine,
  type PlanStore,
  type SaveState,
} from '../../store/index.js';
import type { WordedHost } from '../worded-host.js';
import type { DeskStrings } from '../strings.js';
import { wordsOf } from '../../shared/words-of.js';

/** Keeps the plan on this device as it is changed, and the other plans that are kept beside it. */
export class Keeping implements ReactiveController {
  /** Null: the page gave no store, and nothing is kept. */
  store: PlanStore | null = null;
  state: SaveState | null = null;
  /** The plans on this device, the last changed first. */
  lines: readonly PlanLine[] = [];
  /** What was found when the plan was opened; empty when it was sound. */
  notes: readonly string[] = [];
  /** Why the list of plans on this device cannot be read; empty when it can. */
  unreadable = '';
  /** Changes of an earlier version that met another tab's: kept, not made. */
  aside: readonly AsideEdit[] = [];
  /** Whether the plan shown came by a link and is kept only when asked to. */
  reviewed = false;
  readonly #host: WordedHost;
  /** How safe a plan is that is not kept: nothing is said of it where the page wants none kept. */
  #unkept: SaveState | null = null;
  #kept: KeptPlan | null = null;
  #asked = false;

  constructor(host: WordedHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    globalThis.addEventListener?.('pagehide', this.#keepSteps);
  }

  hostDisconnected(): void {
    this.#keepSteps();
    globalThis.removeEventListener?.('pagehide', this.#keepSteps);
  }

  /** The page wants plans kept, and what keeps them cannot be loaded: that is said of every plan shown. */
  storeNotLoaded(error: unknown): void {
    this.#unkept = {
      kind: 'not-saved',
      trouble: 'not-loaded',
      changes: 0,
      detail: wordsOf(error),
    };
    this.state ??= this.#unkept;
    this.#host.requestUpdate();
  }

  /** The plan that is kept, with its id; null: none is. */
  get kept(): KeptPlan | null {
    return this.#kept;
  }

  get id(): string | undefined {
    return this.#kept?.id;
  }

  /** Whether a person should save a file now. */
  get isUnsafe(): boolean {
    return this.state?.kind === 'not-saved' || this.state?.kind === 'read-only';
  }

  /** How far the plan is safe, in words; empty without a store. */
  textIn(zone: string): string {
    if (this.reviewed) return this.#words.notKeptYet;
    return this.state
      ? saveText(this.state, (at) => isoText(at, zone).slice(11, 16), this.#words.save)
      : '';
  }

  /** The plan open last in this tab, else on this device, else the one last written; undefined: none can be read. */
  async openLatest(): Promise<OpenPlan | undefined> {
    await this.refresh();
    for (const id of new Set([...lastPlans(), ...this.lines.map((line) => line.id)])) {
      const plan = await this.open(id);
      if (plan) return plan;
    }
    return undefined;
  }

  /** Opens a plan; undefined when it cannot be read, and `notes` say why. */
  async open(id: string): Promise<OpenPlan | undefined> {
    await this.leave();
    try {
      const opened = await this.store?.open(id);
      if (!opened) return undefined;
      if (opened.found.refusal) await loadProblems();
      const time = (at: number): string => isoText(at, 'UTC').slice(0, 16);
      this.notes = salvageText(opened.found, time, this.#words.salvage);
      if (opened.plan) this.#hold(opened.plan);
      return opened.plan?.plan;
    } catch (error) {
      this.notes = [this.#words.cannotOpen(wordsOf(error))];
      return undefined;
    } finally {
      this.#host.requestUpdate();
    }
  }

  /** Keeps an open plan as one of its own, under the id given or a new one. */
  async create(plan: OpenPlan, id?: string): Promise<void> {
    await this.leave();
    if (this.store) this.#hold(this.store.keep(plan, id));
    await this.refresh();
  }

  /** Lets the plan go that is shown; what is not written yet is written first. */
  async leave(): Promise<void> {
    this.#keepSteps();
    const kept = this.#kept;
    this.#kept = null;
    this.state = this.#unkept;
    this.notes = [];
    this.aside = [];
    this.reviewed = false;
    await kept?.close();
  }

  /** Writes what waits. Returns whether all is safe. */
  async flush(): Promise<boolean> {
    return (await this.#kept?.flush()) ?? !this.isUnsafe;
  }

  async remove(id: string): Promise<void> {
    await this.store?.delete(id);
    await this.refresh();
  }

  /** Does a change again that was set aside. Returns whether it could be done. */
  async putBack(edit: AsideEdit): Promise<boolean> {
    const done = this.#kept && this.store ? await this.store.putBack(this.#kept, edit) : false;
    await this.#findAside();
    return done;
  }

  async drop(edit: AsideEdit): Promise<void> {
    if (this.#kept) await this.store?.drop(this.#kept.id, edit.id);
    await this.#findAside();
  }

  /** Looks again which plans there are. */
  async refresh(): Promise<void> {
    this.unreadable = '';
    const lines =
      (await this.store?.list().catch((error: unknown) => {
        this.unreadable = wordsOf(error);
        return [];
      })) ?? [];
    this.lines = [...lines].sort((a, b) => (b.at ?? 0) - (a.at ?? 0));
    this.#host.requestUpdate();
  }

  #hold(kept: KeptPlan): void {
    this.#kept = kept;
    this.state = kept.state;
    rememberPlan(kept.id);
    kept.addEventListener('save-state', (event) => {
      if (this.#kept !== kept) return;
      this.state = event.state;
      this.#host.requestUpdate();
    });
    kept.plan.onChange(({ own }) => {
      // Some browsers ask the person: not before there is something to keep.
      if (own && !this.#asked) void askToKeep();
      this.#asked ||= own;
    });
    void this.#findAside();
  }

  get #words(): DeskStrings['files'] {
    return this.#host.words.files;
  }

  readonly #keepSteps = (): void => {
    if (this.#kept) keepSteps(this.#kept.id, this.#kept.plan.undo.steps);
  };

  async #findAside(): Promise<void> {
    const kept = this.#kept;
    const aside = kept && this.store ? await this.store.aside(kept.id).catch(() => []) : [];
    if (this.#kept !== kept) return;
    this.aside = aside;
    this.#host.requestUpdate();
  }
}
