import type { Engine, Placement } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { explainCertificate } from '../why/explain-plan.js';
import type { Explanation } from '../why/explanation.js';
import { askBooking } from './booking-view.js';
import { askAccount, askOptions, askPrice } from './cost-view.js';
import type { Desk } from './desk-parts.js';
import { askHandback, openHandback } from './handback-view.js';
import { askRules } from './rules-view.js';
import { askSite } from './site-view.js';
import { tellMoves } from './told.js';
import { askChecks } from './urgent-view.js';
import type { CostPart, DeskView } from './views.js';

/** What each view needs to have been worked out before it says anything, and what it explains first. */
export class Opening {
  readonly #desk: Desk;
  /** The search under way, with what follows from its end. */
  #search: Promise<void> = Promise.resolve();
  /** Whether the plan is to be made anew as soon as the figures of the change are known. */
  planAgain = false;

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  /** The figures of the document are known: what follows from them is asked for. */
  figuresKnown(engine: Engine, document: PlanDocument): void {
    if (!this.planAgain) {
      this.open(this.#desk.view);
      return this.#first();
    }
    this.planAgain = false;
    this.#search = this.#again(engine, document);
  }

  /** Asks for what a view shows where it is not known yet, and explains what stands first in it. */
  open(view: DeskView): void {
    const desk = this.#desk;
    desk.planning.stopped = false;
    switch (view) {
      case 'windows':
      case 'table':
        // Margin and chance stand beside the windows; they follow the plan without being asked for.
        if (desk.planning.allocation) void askHandback(desk);
        break;
      case 'fit':
      case 'work':
      case 'files':
        break;
      case 'rules':
        askRules(desk);
        break;
      case 'site':
        askSite(desk);
        break;
      case 'plan':
        void this.#planned();
        break;
      case 'urgent':
        askChecks(desk);
        break;
      case 'handback':
        void this.#planned().then(() => openHandback(desk));
        break;
      case 'cost':
        this.#openCost(desk.costPart);
        break;
      case 'booking':
        void askBooking(desk);
        break;
    }
  }

  /** Looks for a plan: after a change from what was agreed before, else for the best. */
  planNow(): Promise<void> {
    const { engine, document, planning } = this.#desk;
    if (!planning.isStale || !engine || !document) return this.search();
    return (this.#search = this.#again(engine, document));
  }

  /** The first plan of a document that was opened is made without being asked for. */
  #first(): void {
    const { planning, figures } = this.#desk;
    const { windows, activities } = figures.results?.plan ?? { windows: [], activities: [] };
    if (windows.length > 0 && activities.length > 0 && !planning.isStale) void this.#planned();
  }

  /** Looks for the best plan, whatever was agreed before. */
  search(): Promise<void> {
    return (this.#search = this.#best());
  }

  /** A plan round work that stays where it is, against the plan before. */
  planFrom(placements: readonly Placement[]): Promise<void> {
    return (this.#search = this.#held(placements));
  }

  async #best(): Promise<void> {
    const { engine, document, planning, outlooks, picked } = this.#desk;
    if (!engine || !document) return;
    const found = await planning.search(engine, document);
    if (!found.done) return;
    outlooks.clearPlanned();
    picked.pick({ placement: null });
    if (['windows', 'table', 'site'].includes(this.#desk.view)) this.open(this.#desk.view);
  }

  async #held(placements: readonly Placement[]): Promise<void> {
    const desk = this.#desk;
    const { engine, document, planning, outlooks, picked } = desk;
    if (!engine || !document) return;
    const found = await planning.hold(engine, document, placements);
    if (!found.done) return;
    outlooks.clearPlanned();
    picked.pick({ placement: null });
    desk.view = 'plan';
    desk.planPart = 'compare';
    picked.tell(() => this.#certificate());
  }

  #openCost(part: CostPart): void {
    if (part === 'options') void this.#planned().then(() => askOptions(this.#desk));
    else if (part === 'account') askAccount(this.#desk);
    else void this.#expectCost();
  }

  /** The cost of an overrun is known at once; what is to be expected of the plan follows when that is simulated. */
  async #expectCost(): Promise<void> {
    const desk = this.#desk;
    await askPrice(desk);
    if (!desk.document?.prices || desk.outlooks.handbacks.length > 0) return;
    await this.#planned();
    // The plan says who is on site: its cost stands while the chances are simulated.
    if (desk.view === 'cost') await askPrice(desk);
    await askHandback(desk);
    if (desk.view === 'cost') await askPrice(desk);
  }

  /** A plan of the work, made where there is none yet. */
  async #planned(): Promise<void> {
    const { engine, document, planning } = this.#desk;
    // One that is stopped is not begun again behind a person's back.
    if (planning.busy) return this.#search;
    if (planning.allocation || planning.stopped || !engine || !document) return;
    if (planning.isStale) this.#search = this.#again(engine, document);
    else void this.search();
    await this.#search;
  }

  /** A plan for the changed document from what was agreed before. */
  async #again(engine: Engine, document: PlanDocument): Promise<void> {
    const desk = this.#desk;
    const { planning, outlooks, picked } = desk;
    const found = await planning.again(engine, document);
    if (!found.done) return;
    outlooks.clearPlanned();
    picked.pick({ placement: null });
    // A changed window is answered where both plans stand side by side; moved work stays in its picture.
    if (desk.view === 'windows') {
      desk.view = 'plan';
      desk.planPart = 'compare';
    }
    if (desk.view === 'plan')
      picked.tell(() => planning.allocation && tellMoves(found.value, planning.allocation));
  }

  #certificate(): Explanation | null {
    const { allocation } = this.#desk.planning;
    return allocation && explainCertificate(allocation);
  }
}
