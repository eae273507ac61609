import type {
  Allocation,
  Broken,
  Engine,
  GivenPlan,
  Objective,
  PlanToChance,
  Progress,
  Replan,
  SearchProgress,
  ShortNotice,
} from '../../../src/engine/index.js';
import type { AgreedPlan, PlanDocument } from '../../../src/model/index.js';
import type { WordedHost } from '../worded-host.js';
import { TaskController } from './task-controller.js';
import { LatestTask, type Outcome } from './latest-task.js';

/** Simulated runs that the chance of each window rests on while a plan is made to it. */
const CHANCE_RUNS = 20_000;

/**
 * The plan of the work: the one agreed on, held against the document as it is; what a search proposes beside it; and the
 * search for the next. While nothing is agreed the proposal stands for the plan, and whoever shows it says so.
 */
export class Planning extends TaskController {
  /** The agreed plan as it stands in the document shown; null where none is agreed or that is not known yet. */
  agreed: GivenPlan | null = null;
  /** What a search found and nobody has agreed yet. */
  proposal: Allocation | null = null;
  /** Whether the proposal is shown where plans are looked at, though another plan is agreed. */
  showsProposal = false;
  /** The plan before the last change, to compare with. */
  earlier: Allocation | null = null;
  /** The best plan that the search under way has found so far. */
  draft: Allocation | null = null;
  /** How far the search under way is; null where it does not say. */
  progress: Progress | null = null;
  /** What the last plan made to a chance reaches and costs; null where the last was made otherwise. */
  toChance: PlanToChance | null = null;
  first: Objective = 'key-dates';
  /** A person ended the last search before it had found a plan: it is not begun again behind their back. */
  stopped = false;

  /** The tables were changed a moment ago: a plan is looked for once nothing more is. */
  waits = false;

  readonly #assessing: LatestTask;
  #enough: ((found: Allocation) => void) | undefined;

  constructor(host: WordedHost) {
    super(host, 'plan');
    this.#assessing = new LatestTask({
      failed: () => host.words.forms.failed.agreed,
      onChange: () => host.requestUpdate(),
    });
  }

  override hostDisconnected(): void {
    this.stop();
  }

  /** The plan that handback, cost and booking speak of: the agreed one; while none is agreed, what is proposed. */
  get allocation(): Allocation | null {
    return this.agreed?.allocation ?? this.proposal;
  }

  /** The plan, or while one is searched for the best so far. */
  get shown(): Allocation | null {
    return this.allocation ?? this.draft;
  }

  /** The plan whose pieces are looked at: a proposal where there is one and a person has not turned from it. */
  get looked(): Allocation | null {
    return (this.showsProposal ? this.proposal : null) ?? this.shown;
  }

  /** What of the agreed plan no longer holds. */
  get broken(): readonly Broken[] {
    return this.agreed?.broken ?? [];
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

  /** The document has changed: a proposal was for the one before, and how the agreed plan stands has to be asked. */
  outdate(): void {
    this.stop();
    this.#assessing.stop();
    this.earlier = this.allocation ?? this.earlier;
    this.agreed = null;
    this.proposal = null;
    this.toChance = null;
    this.showsProposal = false;
  }

  /** Another plan altogether: nothing of the one before holds. */
  forget(): void {
    this.outdate();
    this.earlier = null;
  }

  /** Holds the plan that the document says is agreed against it. */
  async assess(engine: Engine, document: PlanDocument): Promise<void> {
    const now = document.agreed?.now;
    if (!now) return;
    await this.#assessing.ask(
      (signal) => engine.assess(document, now.placements, signal),
      (found) => (this.agreed = found),
    );
  }

  /** Shows the proposal where plans are looked at, or the agreed plan again. */
  look(proposal: boolean): void {
    this.showsProposal = proposal;
    this.host.requestUpdate();
  }

  /** Sets another plan beside the one shown. */
  async compareWith(engine: Engine, document: PlanDocument, plan: AgreedPlan): Promise<void> {
    await this.#assessing.ask(
      (signal) => engine.assess(document, plan.placements, signal),
      (found) => (this.earlier = found.allocation),
    );
  }

  /** Lets go of what was proposed. */
  drop(): void {
    this.stop();
    this.proposal = null;
    this.showsProposal = false;
    this.host.requestUpdate();
  }

  /** Goes on with a plan that was made for this very document. */
  resume(allocation: Allocation): void {
    this.#take(allocation);
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
    if (found.done) this.#take(found.value);
    return found;
  }

  /** A plan in which every window used hands back on time with the chance wanted. */
  async searchToChance(
    engine: Engine,
    document: PlanDocument,
    chance: number,
  ): Promise<Outcome<PlanToChance>> {
    const { first } = this;
    const found = await this.#searching((signal) =>
      engine.allocateToChance(document, { first, chance, runs: CHANCE_RUNS, seed: 1 }, signal),
    );
    if (found.done) {
      this.#take(found.value.allocation);
      this.toChance = found.value;
    }
    return found;
  }

  hideToChance(): void {
    this.toChance = null;
    this.host.requestUpdate();
  }

  /** A plan for the changed document that moves as little of the agreed plan as it can, with what moved. */
  async again(engine: Engine, document: PlanDocument): Promise<Outcome<Replan>> {
    const { first, agreed } = this;
    const now = document.agreed?.now;
    if (!agreed || !now) return { done: false };
    const before = { ...agreed.allocation, placements: now.placements };
    const found = await this.#searching((signal) =>
      engine.replan(document, before, { first }, signal),
    );
    if (found.done) this.#take(found.value.allocation);
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
    if (found.done) this.#take(found.value.allocation);
    return found;
  }

  #heard({ best, ...progress }: SearchProgress): void {
    this.progress = progress;
    if (best) this.draft = best;
    this.host.requestUpdate();
  }

  #take(found: Allocation): void {
    this.earlier = this.allocation ?? this.earlier;
    this.proposal = found;
    this.toChance = null;
    this.showsProposal = true;
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
