import type { Engine } from '../../../src/engine/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { askBooking } from '../views/booking-view.js';
import { askAccount, askOptions, askPrice } from '../views/cost-view.js';
import type { Desk } from '../desk-parts.js';
import { askHandback, openHandback, resumeShift } from '../views/handback-view.js';
import { askRules } from '../views/rules-view.js';
import { askSite } from '../views/site-view.js';
import { askChecks, askRoster } from '../views/urgent-view.js';
import type { CostPart, DeskView } from '../views.js';

/** Views that show what was worked out of the plan, and ask for it again when there is another. */
const followers: readonly string[] = ['windows', 'table', 'site', 'handback', 'summary', 'ahead'];

/** Milliseconds without a change before a plan is looked for anew. */
const SETTLE_MS = 800;

/** What each view needs to have been worked out before it says anything, and what it explains first. */
export class ViewLoader {
  readonly #desk: Desk;
  /** Whether a plan was looked for since the document was opened. */
  #known = false;
  #settling: ReturnType<typeof setTimeout> | undefined;
  /** The search under way, with what follows from its end. */
  #search: Promise<void> = Promise.resolve();
  /** Whether the plan is to be made anew as soon as the figures of the change are known. */
  replan = false;

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  /** The figures of the document are known: what follows from them is asked for. */
  figuresKnown(engine: Engine, document: PlanDocument): void {
    void this.#follow(engine, document);
  }

  /** The agreed plan is held against the document first: it is never made anew unless a person asks. */
  async #follow(engine: Engine, document: PlanDocument): Promise<void> {
    const desk = this.#desk;
    const { replan: planAgain } = this;
    this.replan = false;
    clearTimeout(this.#settling);
    desk.planning.waits = false;
    if (document.agreed?.now) {
      await (this.#search = desk.planning.assess(engine, document));
      if (desk.document !== document) return;
      if (planAgain && desk.planning.broken.length > 0) await this.mend();
      if (!planAgain && resumeShift(desk)) return;
      this.open(desk.view);
      return;
    }
    if (!planAgain && resumeShift(desk)) return;
    this.open(desk.view);
    // Of several changes one after another only the last is planned for.
    if (this.#known && !planAgain)
      this.#settle(() => desk.document === document && this.#first(false));
    else this.#first(planAgain);
    this.#known = true;
  }

  /** Another plan altogether is shown: it is planned for at once. */
  forget(): void {
    clearTimeout(this.#settling);
    this.#known = false;
  }

  #settle(act: () => void): void {
    clearTimeout(this.#settling);
    const { planning } = this.#desk;
    planning.waits = true;
    this.#settling = setTimeout(() => {
      planning.waits = false;
      act();
    }, SETTLE_MS);
  }

  /** Mends the agreed plan with few moves, for a person to accept. */
  mend(): Promise<void> {
    const { engine, document } = this.#desk;
    if (!engine || !document) return Promise.resolve();
    return (this.#search = this.#replan(engine, document));
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
      case 'summary':
        void this.#planned().then(() => askHandback(desk));
        break;
      case 'ahead':
        void this.#planned();
        void askBooking(desk);
        askRoster(desk);
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

  /** Looks for the best plan, to be accepted or not. */
  planNow(): Promise<void> {
    return this.search();
  }

  /** Looks for a plan made to a chance, and shows the handback of it. */
  toChance(chance: number): Promise<void> {
    return (this.#search = this.#toChance(chance));
  }

  async #toChance(chance: number): Promise<void> {
    const { engine, document, planning, outlooks, picked } = this.#desk;
    if (!engine || !document) return;
    const found = await planning.searchToChance(engine, document, chance);
    if (!found.done) return;
    if (!document.agreed?.now) outlooks.clearPlanned();
    picked.pick({ placement: null });
    if (this.#desk.view === 'handback') this.open('handback');
  }

  /** While nothing is agreed a plan is proposed without being asked for; after an act it is shown against the one before. */
  #first(afterAct: boolean): void {
    const desk = this.#desk;
    const { windows, activities } = desk.figures.results?.plan ?? { windows: [], activities: [] };
    if (windows.length === 0 || activities.length === 0) return;
    void this.#planned().then(() => {
      if (!afterAct || desk.view !== 'windows' || !desk.planning.proposal) return;
      desk.view = 'plan';
      desk.planPart = 'compare';
    });
  }

  /** Looks for the best plan, whatever was agreed before. */
  search(): Promise<void> {
    return (this.#search = this.#best());
  }

  async #best(): Promise<void> {
    const { engine, document, planning, outlooks, picked } = this.#desk;
    if (!engine || !document) return;
    const found = await planning.search(engine, document);
    if (!found.done) return;
    // What was worked out of the agreed plan stays: a proposal takes nothing from it.
    if (!document.agreed?.now) outlooks.clearPlanned();
    picked.pick({ placement: null });
    const { view, costPart } = this.#desk;
    const rests = view === 'cost' ? costPart === 'account' : followers.includes(view);
    if (rests) this.open(view);
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
    if (!desk.document?.prices || desk.outlooks.hasAllHandbacks) return;
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
    if (document.agreed?.now) this.#search = planning.assess(engine, document);
    else void this.search();
    await this.#search;
  }

  /** A plan for the changed document from what was agreed before. */
  async #replan(engine: Engine, document: PlanDocument): Promise<void> {
    const desk = this.#desk;
    const { planning, outlooks, picked } = desk;
    const found = await planning.again(engine, document);
    if (!found.done) return;
    // What was worked out of the agreed plan stays: a proposal takes nothing from it.
    if (!document.agreed?.now) outlooks.clearPlanned();
    picked.pick({ placement: null });
    // A changed window is answered where both plans stand side by side; moved work stays in its picture.
    if (desk.view === 'windows') {
      desk.view = 'plan';
      desk.planPart = 'compare';
    }
    // What was asked of the plan before is asked of this one: the view is never left empty.
    if (desk.view === 'handback') this.open(desk.view);
    if (desk.view === 'plan')
      picked.explain((why) => planning.proposal && why.tellMoves(found.value, planning.proposal));
  }
}
