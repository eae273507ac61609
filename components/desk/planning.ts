import type { ReactiveControllerHost } from 'lit';
import type {
  Allocation,
  Engine,
  Objective,
  Placement,
  Progress,
  Replan,
  SearchProgress,
  ShortNotice,
} from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { Asking } from './asking.js';
import type { Outcome } from './latest.js';

/** The plan of the work, the plan before it, and the search for the next. */
export class Planning extends Asking {
  allocation: Allocation | null = null;
  /** The plan before the last change, to compare with. */
  earlier: Allocation | null = null;
  /** The best plan that the search under way has found so far. */
  draft: Allocation | null = null;
  /** How far the search under way is; null where it does not say. */
  progress: Progress | null = null;
  first: Objective = 'key-dates';
  /** A person ended the last search before it had found a plan: it is not begun again behind their back. */
  stopped = false;

  /** A plan to start from where the document has changed under it. */
  #agreed: Allocation | null = null;
  #enough: ((found: Allocation) => void) | undefined;

  constructor(host: ReactiveControllerHost) {
    super(host, 'No plan was worked out');
  }

  override hostDisconnected(): void {
    this.stop();
  }

  /** Whether the document has changed since the last plan was made. */
  get isStale(): boolean {
    return this.#agreed !== null && this.allocation === null;
  }

  /** The plan, or while one is searched for the best so far. */
  get shown(): Allocation | null {
    return this.allocation ?? this.draft;
  }

  stop(): void {
    this.latest.stop();
    this.#forgetWay();
  }

  /** Ends the search and keeps the best plan it has found; without one it only ends. */
  settle(): void {
    if (this.draft && this.#enough) this.#enough(this.draft);
    else {
      this.stop();
      this.stopped = true;
    }
  }

  /** The document has changed: what was agreed is kept as far as it can be when the next plan is made. */
  outdate(): void {
    this.stop();
    this.#agreed = this.allocation ?? this.#agreed;
    this.allocation = null;
  }

  /** Another plan altogether: nothing of the one before holds. */
  forget(): void {
    this.stop();
    this.#agreed = null;
    this.allocation = null;
    this.earlier = null;
  }

  /** The best plan for the document, whatever was agreed before. */
  async search(engine: Engine, document: PlanDocument): Promise<Outcome<Allocation>> {
    const { first } = this;
    const found = await this.#searching(async (signal) => {
      const settled = new AbortController();
      const enough = new Promise<Allocation>((resolve) => (this.#enough = resolve));
      const search = engine.allocate(
        document,
        { first },
        AbortSignal.any([signal, settled.signal]),
        (progress) => {
          if (!signal.aborted) this.#heard(progress);
        },
      );
      const best = await Promise.race([search, enough]);
      settled.abort();
      return best;
    });
    if (found.done) this.#take(found.value, this.allocation ?? this.#agreed ?? this.earlier);
    return found;
  }

  /** A plan in which some work stays where it is; a placement that the document has no work for is refused in words. */
  async hold(
    engine: Engine,
    document: PlanDocument,
    keep: readonly Placement[],
  ): Promise<Outcome<Allocation>> {
    const { first } = this;
    const found = await this.#searching((signal) =>
      engine.allocate(document, { first, keep }, signal),
    );
    if (found.done) this.#take(found.value, this.allocation ?? this.#agreed ?? this.earlier);
    return found;
  }

  /** A plan for the changed document that moves as little of the agreed plan as it can, with what moved. */
  async again(engine: Engine, document: PlanDocument): Promise<Outcome<Replan>> {
    const { first } = this;
    const agreed = this.#agreed;
    if (!agreed) return { done: false };
    const found = await this.#searching((signal) =>
      engine.replan(document, agreed, { first }, signal),
    );
    if (found.done) this.#take(found.value.allocation, agreed);
    return found;
  }

  /** The best use of one window that the plan does not know. */
  async shortNotice(
    engine: Engine,
    document: PlanDocument,
    window: string,
  ): Promise<Outcome<ShortNotice>> {
    const { allocation, first } = this;
    if (!allocation) return { done: false };
    const found = await this.#searching((signal) =>
      engine.shortNotice(document, allocation, window, { first }, signal),
    );
    if (found.done) this.#take(found.value.allocation, allocation);
    return found;
  }

  #heard({ best, ...progress }: SearchProgress): void {
    this.progress = progress;
    if (best) this.draft = best;
    this.host.requestUpdate();
  }

  #take(allocation: Allocation, earlier: Allocation | null): void {
    this.earlier = earlier;
    this.allocation = allocation;
    this.#agreed = null;
    this.host.requestUpdate();
  }

  /** Runs a search; the last one asked for wins. */
  async #searching<T>(work: (signal: AbortSignal) => Promise<T>): Promise<Outcome<T>> {
    this.#forgetWay();
    this.stopped = false;
    const found = await this.latest.ask(work);
    if (!this.busy) this.#forgetWay();
    return found;
  }

  #forgetWay(): void {
    this.draft = null;
    this.progress = null;
    this.#enough = undefined;
  }
}
