import { spokenNow } from '../shared/language.js';
import { loadProblems } from '../shared/problem-words.js';
import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Engine, ImportReport } from '../../src/engine/index.js';
import {
  emptyPlan,
  type LimitSet,
  type PlanDocument,
  type RuleSet,
} from '../../src/model/index.js';
import {
  changesBetween,
  loadOpen,
  type Change,
  type OpenPlan,
  type OpenPlanOptions,
  type PlanChange,
} from '../../src/plan/index.js';
import { base } from '../shared/base.js';
import { Words } from '../shared/words.js';
import { wordsOf } from '../shared/words-of.js';
import { progressStyle } from '../shared/progress-style.js';
import { momentText } from '../shared/format.js';
import { paper } from '../shared/paper.js';
import type { FigureAskEvent } from '../shared/figure-ask-event.js';
import type { Place } from '../why/explanation.js';
import { answerView } from './views/answer-view.js';
import { beginView, isBlank } from './views/begin-view.js';
import { bookingView } from './views/booking-view.js';
import { costView } from './views/cost-view.js';
import type {} from '../import/import.js';
import type {} from '../sheet/sheet.js';
import type { Desk, Menu, ShownRows } from './desk-parts.js';
import type { Trouble } from './worded-host.js';
import { agreedStyles } from './styles/agreed.styles.js';
import { styles } from './styles/desk.styles.js';
import { ResultsController } from './results/results-controller.js';
import { filesView } from './views/files-view.js';
import { fitView } from './views/fit-view.js';
import { footView } from './frame/foot.js';
import { followInSheet, goTo } from './frame/go-to.js';
import { followLog, handbackView } from './views/handback-view.js';
import { fileDrops } from './files/file-drops.js';
import { Incoming } from './files/incoming.js';
import { Keeping } from './files/keeping.js';
import { PlanOpening } from './files/plan-opening.js';
import { bringChosen } from './frame/bring-chosen.js';
import { isFindKey, placeByKey, stepByKey } from './frame/keys.js';
import { Meeting } from './results/meeting.js';
import { meetingView } from './views/meeting-view.js';
import type { menuView } from './views/menu-view.js';
import { narrowStyles } from './styles/narrow.styles.js';
import { newFaultsText } from './files/new-faults.js';
import { newsView } from './frame/news.js';
import { ViewLoader } from './results/view-loader.js';
import { ForecastController } from './results/forecast-controller.js';
import { panelStyles } from './styles/panel.styles.js';
import { paperStyles } from './styles/paper.styles.js';
import { Picked } from './frame/picked.js';
import { planView } from './views/plan-view.js';
import { Planning } from './results/planning.js';
import { CutPreview } from './forms/cut-preview.js';
import { RuleTrial } from './forms/rule-trial.js';
import { rulesView } from './views/rules-view.js';
import { explained } from './results/result-asks.js';
import { SheetResults } from './results/sheet-results.js';
import { Sharing } from './sharing/sharing.js';
import { Shift } from './shift/shift.js';
import { ShiftWatch } from './shift/shift-watch.js';
import { hasSide, sideView } from './frame/side.js';
import { shownName } from './frame/shown-name.js';
import { siteView } from './views/site-view.js';
import { defaultStrings, type DeskStrings } from './strings.js';
import { topView } from './frame/top.js';
import { tableView } from './views/table-view.js';
import {
  placeOf,
  viewsOf,
  type CostPart,
  type DeskView,
  type PlaceId,
  type PlanPart,
  type ResultTable,
  type SitePart,
  type WorkTable,
} from './views.js';
import { unsaidView } from './views/unsaid-view.js';
import { urgentView } from './views/urgent-view.js';
import { windowsView } from './views/windows-view.js';
import { workView } from './views/work-view.js';

export type { DeskView } from './views.js';

/** Views that have nothing of their own to show of a blank plan. */
const emptyViews: readonly DeskView[] = [
  'windows',
  'table',
  'fit',
  'plan',
  'ahead',
  'summary',
  'handback',
  'cost',
];

/**
 * The workbench: five places, each the home of one kind of question, over one plan; and a narrow panel that says where
 * a picked number comes from, folded away while it has nothing to say. The cautions stay in sight.
 *
 * Keyboard: the places are an ARIA tab list (arrows, Home, End); each element within has its own keys. Ctrl+Z and
 * Ctrl+Y, outside a field, undo and redo the last change of the plan.
 * @summary The whole desk over one plan document.
 * @event {FigureAskEvent} possession-figure-ask - A reader asks where a figure comes from.
 * @tag possession-desk
 */
export class PossessionDesk extends LitElement implements Desk {
  static override readonly styles = [
    ...base,
    progressStyle,
    styles,
    panelStyles,
    agreedStyles,
    narrowStyles,
    paper,
    paperStyles,
  ];
  static override readonly properties: PropertyDeclarations = {
    engine: { attribute: false },
    document: { attribute: false },
    view: { type: String, reflect: true },
    theme: { type: String, reflect: true },
    now: { attribute: false },
    workTable: { state: true },
    resultTable: { state: true },
    menu: { state: true },
    asked: { state: true },
    askedAt: { state: true },
    planPart: { state: true },
    costPart: { state: true },
    sitePart: { state: true },
    limitSets: { attribute: false },
    ruleSets: { attribute: false },
    openSample: { attribute: false },
    sampleName: { attribute: false },
    gallery: { type: String },
    over: { state: true },
    trouble: { state: true },
    said: { state: true },
    newer: { attribute: false },
    opening: { attribute: false },
    wary: { state: true },
    folded: { state: true },
    strings: { attribute: false },
  };

  /** Works the figures out. The desk does not dispose of it. */
  declare engine: Engine | null;
  /** The plan shown; set a new document to change it. */
  declare document: PlanDocument | null;
  declare view: DeskView;
  /** `light` or `dark`; empty follows the system. */
  declare theme: '' | 'light' | 'dark';
  /** The moment it is; the page sets it. Null: the clock is asked when it matters. */
  declare now: number | null;
  declare workTable: WorkTable;
  declare resultTable: ResultTable;
  declare menu: Menu;
  declare asked: string;
  declare askedAt: number;
  declare planPart: PlanPart;
  declare costPart: CostPart;
  declare sitePart: SitePart;
  /** Sets of limits on hours to choose from; the page gives them. */
  declare limitSets: readonly LimitSet[];
  /** Sets of rules to begin a plan with; the page gives them. */
  declare ruleSets: readonly RuleSet[];
  /** Shows the sample plan; null where the page has none. */
  declare openSample: (() => Promise<void>) | null;
  /** Name of the sample plan, into which no file goes unless a person says so. */
  declare sampleName: string;
  /** Address of a page that shows every element, which the help then names; empty: none. */
  declare gallery: string;
  /** Files are held over the page. */
  declare protected over: boolean;
  /** Takes the page to a newer version of itself; null while there is none. */
  declare newer: (() => void) | null;
  /** Whether the page is still getting the plan to show, late or not: then the desk does not say that there is none. */
  declare opening: boolean | 'late';
  declare protected trouble: Trouble;
  declare protected said: string;
  /** Whether a narrow screen shows every caution. */
  declare protected cautionsOpen: boolean;
  declare folded: boolean;
  /** Words to use in place of the desk's own. */
  declare strings: Partial<DeskStrings>;

  #menuView: typeof menuView | undefined;
  #menuLoading: Promise<void> | undefined;
  readonly #words = new Words<DeskStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  readonly figures = new ResultsController(this);
  readonly incoming = new Incoming(this);
  readonly planning = new Planning(this);
  readonly outlooks = new ForecastController(this);
  readonly meeting = new Meeting(this);
  readonly shift = new Shift(this);
  readonly watch: ShiftWatch = new ShiftWatch(this);
  readonly picked = new Picked(this);
  readonly sheetResults = new SheetResults();
  readonly ruleTrial = new RuleTrial(this);
  readonly cutPreview = new CutPreview(this);
  readonly keeping = new Keeping(this);
  readonly sharing: Sharing = new Sharing(this);
  readonly #opening = new ViewLoader(this);
  readonly #drops = fileDrops(this, {
    over: (over) => {
      this.over = over;
    },
    dropped: (files) => void this.readFiles(files),
  });

  /** The plan shown, which several people may change; null before it is open. */
  plan: OpenPlan | null = null;
  readonly #planOpening = new PlanOpening(this, (plan) => this.#follow(plan));
  #unfollow: () => void = () => undefined;
  /** Whether another plan is about to be shown. */
  #turned = false;
  /** The document of the last edit by hand. */
  #edited: PlanDocument | null = null;
  /** How each place was last looked at. */
  readonly #lastOf = new Map<PlaceId, DeskView>();
  /** The picked window that the sheet was last moved to. */
  #followed = '';
  #pending: Promise<void> = Promise.resolve();
  #pendingPlan: Promise<void> = Promise.resolve();

  constructor() {
    super();
    this.engine = null;
    this.document = null;
    this.view = 'windows';
    this.theme = '';
    this.now = null;
    this.workTable = 'work';
    this.resultTable = 'windows';
    this.menu = '';
    this.asked = '';
    this.askedAt = 0;
    this.planPart = 'plan';
    this.costPart = 'overrun';
    this.sitePart = 'people';
    this.limitSets = [];
    this.ruleSets = [];
    this.openSample = null;
    this.sampleName = '';
    this.gallery = '';
    this.over = false;
    this.newer = null;
    this.opening = false;
    this.trouble = '';
    this.said = '';
    this.cautionsOpen = false;
    this.folded = true;
    this.strings = {};
  }

  get words(): DeskStrings {
    return this.#words.now;
  }

  inWords<T>(work: () => T): T {
    return this.#words.speaking(work);
  }

  get undoLabel(): string {
    return this.plan?.undo.undoLabel ?? '';
  }

  get redoLabel(): string {
    return this.plan?.undo.redoLabel ?? '';
  }

  take(document: PlanDocument, reports: readonly ImportReport[]): void {
    const names = reports.map((report) => report.file).join(', ');
    const isPlan = reports.some((report) => report.kind === 'plan');
    if (this.document && !isPlan)
      this.change(changesBetween(this.document, document), this.words.takenIn(names));
    else void this.adopt(document);
  }

  change(changes: Change | readonly Change[], label: string, planAgain = false): void {
    if (!this.mayChange()) return;
    if (!this.plan) this.#planOpening.wait(() => this.change(changes, label, planAgain));
    try {
      if (!this.plan?.change(changes, label)) return;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return this.complain(error.message);
    }
    this.#edited = this.document;
    this.#opening.replan = planAgain;
  }

  mayChange(): boolean {
    if (this.sharing.reads) this.complain(this.words.readsOnly);
    return !this.sharing.reads;
  }

  async adopt(document: PlanDocument): Promise<void> {
    const plan = await this.#openOf(document);
    if (plan) await this.keeping.create(plan);
  }

  async openShared(id: string, update: Uint8Array): Promise<void> {
    await this.keeping.refresh();
    if (this.keeping.lines.some((line) => line.id === id)) return this.openKept(id);
    const { OpenPlan } = await loadOpen();
    const plan = OpenPlan.from([update], this.#planOptions);
    if (!plan) return this.complain(this.words.files.cameUnreadable);
    this.#turnTo(plan);
    await this.keeping.create(plan, id);
  }

  async openKept(id: string): Promise<void> {
    const plan = await this.keeping.open(id);
    if (plan) this.#turnTo(plan);
    else this.complain(this.keeping.notes.join(' ') || this.words.cannotOpen);
  }

  /** Shows the plan last changed on this device. False where there is none. */
  async openLatest(): Promise<boolean> {
    const plan = await this.keeping.openLatest();
    if (plan) this.#turnTo(plan);
    return plan !== undefined;
  }

  /** Shows a plan that came by a link. It is kept only when a person says so. */
  async review(document: PlanDocument): Promise<void> {
    await this.keeping.leave();
    await this.keeping.refresh();
    this.keeping.reviewed = true;
    await this.#openOf(document);
  }

  blank(): PlanDocument {
    return emptyPlan(this.words.untitled, this.document?.zone ?? 'Europe/London');
  }

  undo(): void {
    this.#turn('undo', this.undoLabel);
  }

  redo(): void {
    this.#turn('redo', this.redoLabel);
  }

  show(view: DeskView): void {
    this.menu = '';
    this.#lastOf.set(placeOf(view), view);
    if (view !== this.view) {
      this.view = view;
      this.#followed = '';
      this.picked.close();
    }
    this.#opening.open(view);
  }

  showPlace(place: PlaceId): void {
    this.show(this.#lastOf.get(place) ?? viewsOf[place][0]!);
  }

  async planNow(): Promise<void> {
    await this.#opening.planNow();
  }

  async planToChance(chance: number): Promise<void> {
    await this.#opening.toChance(chance);
  }

  async mend(): Promise<void> {
    await this.#opening.mend();
  }

  goTo(place: Place): Promise<void> {
    return goTo(this, this.renderRoot, place);
  }

  /** Reads files where they are shown before anything is taken. */
  async readFiles(files: readonly File[]): Promise<void> {
    this.show('files');
    await this.updateComplete;
    await customElements.whenDefined('possession-import');
    await this.renderRoot.querySelector('possession-import')?.readBlobs(files);
  }

  shownRows(): ShownRows {
    const sheet = this.renderRoot.querySelector('possession-sheet');
    return sheet?.shownTable ?? { columns: [], rows: [] };
  }

  /** What stands at the head of every printed page: the plan and the view, the date and the revision. */
  get paperHead(): { readonly start: string; readonly end: string } {
    const { document } = this;
    const now = document?.agreed?.now;
    const revision = now ? this.words.agreedPlan(now.revision, now.name) : this.words.noneAgreed;
    return {
      start: `${document?.name ?? ''} \u2013 ${shownName(this.view, this, this.words)}`,
      end: `${momentText(this.moment(), document?.zone ?? 'UTC')}; ${revision}`,
    };
  }

  moment(): number {
    return this.now ?? Date.now();
  }

  complain(trouble: Trouble): void {
    this.trouble = trouble;
  }

  say(words: string): void {
    this.said = words;
  }

  bringSide(): void {
    const side = this.renderRoot.querySelector('aside');
    if (!side || side.offsetTop < (this.renderRoot.querySelector('main')?.offsetHeight ?? 0))
      return;
    void this.updateComplete.then(() => side.scrollIntoView({ block: 'start' }));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('keydown', this.#onKey);
    this.#drops.listen();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.removeEventListener('keydown', this.#onKey);
    this.#drops.end();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (this.menu !== '') void (this.#menuLoading ??= this.#loadMenu());
    if (!(changed.has('document') || changed.has('engine')) || !this.document) return;
    this.cutPreview.clear();
    if (this.document !== this.plan?.document) {
      this.#unfollow();
      this.plan = null;
      this.#turned = true;
      this.#pendingPlan = this.#planOpening.begin(this.document);
    }
    if (this.#turned) {
      this.#turned = false;
      this.planning.forget();
      this.ruleTrial.startFrom(null);
      this.outlooks.forgetEntered();
      this.#opening.replan = false;
      this.#opening.forget();
    }
    if (this.engine) this.#pending = this.#refresh(this.engine, this.document);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('view')) bringChosen(this.renderRoot);
    if (!['table', 'work'].includes(this.view) || this.#followed === this.picked.window) return;
    this.#followed = this.picked.window;
    void followInSheet(this, this.renderRoot);
  }

  /** Menu and help are loaded when one of them is first opened, and shown once they are there. */
  async #loadMenu(): Promise<void> {
    try {
      this.#menuView = (await import('./views/menu-view.js')).menuView;
    } catch (error) {
      this.menu = '';
      this.#menuLoading = undefined;
      this.complain(this.words.notDone(wordsOf(error)));
    }
    this.requestUpdate();
  }

  /** Settled means that the plan of the current document is open and its figures are shown. */
  protected override async getUpdateComplete(): Promise<boolean> {
    let pending: Promise<void>;
    let done = await super.getUpdateComplete();
    await this.#menuLoading;
    do {
      await this.#pendingPlan;
      pending = this.#pending;
      await pending;
      done = await super.getUpdateComplete();
    } while (pending !== this.#pending);
    return done;
  }

  override render(): TemplateResult {
    const whole = !hasSide(this);
    const place = placeOf(this.view);
    const { words } = this;
    const told = typeof this.trouble === 'string' ? this.trouble : this.trouble(words);
    const trouble = told || this.figures.trouble || this.planning.trouble;
    const isReport =
      this.view === 'summary' ||
      this.view === 'ahead' ||
      (this.view === 'cost' && this.outlooks.report !== null);
    return html`<div
      class="desk ${whole ? 'one' : ''} ${this.over ? 'over' : ''} ${isReport ? 'report' : ''}"
    >
      ${topView(
        this,
        { dark: this.#isDark },
        {
          placeKey: this.#onPlaceKey,
          faults: this.#onFaults,
          find: this.#openFind,
          theme: this.#onTheme,
        },
      )}
      ${this.menu === '' ? nothing : this.#menuView?.(this)}
      <main>
        <div
          id="view"
          class="view"
          role="tabpanel"
          @possession-figure-ask=${this.#onFigure}
          aria-labelledby="tab-${place}"
          aria-busy=${this.figures.busy || this.planning.busy}
        >
          ${trouble ? html`<p class="trouble" role="alert">${trouble}</p>` : nothing}
          ${newsView(this, { said: this.said, newer: this.newer, back: () => void this.openLatest() })}
          ${place === 'programme' ? html`${unsaidView(this)} ${answerView(this)}` : nothing}
          ${this.#renderView()}
        </div>
      </main>
      ${whole ? nothing : sideView(this, this.#onUp)}
      ${footView(this.words, this.cautionsOpen, this.#onCautions)}
      ${this.over ? html`<p class="dropping" role="status">${this.words.drop}</p>` : nothing}
    </div>`;
  }

  #renderView(): TemplateResult {
    const { document } = this;
    const { results, busy } = this.figures;
    if (this.view === 'files') return filesView(this);
    if (!results || !document)
      return html`<p class="pad quiet">${busy ? this.words.workingOut : this.#notYet()}</p>`;
    if (isBlank(results) && emptyViews.includes(this.view)) return beginView(this, document);
    switch (this.view) {
      case 'windows':
        return windowsView(this, results);
      case 'table':
        return tableView(this, document);
      case 'urgent':
        return urgentView(this, results);
      case 'work':
        return workView(this, document);
      case 'rules':
        return rulesView(this, results, document);
      case 'site':
        return siteView(this, results);
      case 'fit':
        return fitView(this, results);
      case 'plan':
        return planView(this, results, document);
      case 'ahead':
      case 'summary':
        return meetingView(this, results, this.view);
      case 'handback':
        return handbackView(this, results);
      case 'cost':
        return costView(this, results);
      case 'booking':
        return bookingView(this, results);
    }
  }

  /** Why no plan is shown. */
  #notYet(): string {
    if (this.opening === false) return this.words.beginHere;
    return this.opening === 'late' ? this.words.openingLate : this.words.opening;
  }

  get #planOptions(): OpenPlanOptions {
    return { now: () => this.moment() };
  }

  /** Shows the plan of a document. Undefined where it could not be opened: then the document is shown as it is. */
  async #openOf(document: PlanDocument): Promise<OpenPlan | undefined> {
    try {
      const { OpenPlan } = await loadOpen();
      const plan = OpenPlan.of(document, this.#planOptions);
      this.#turnTo(plan);
      return plan;
    } catch {
      this.document = document;
      return undefined;
    }
  }

  /** Shows another plan. */
  #turnTo(plan: OpenPlan): void {
    this.#planOpening.end();
    this.#turned = true;
    this.#follow(plan);
  }

  #follow(plan: OpenPlan): void {
    this.#unfollow();
    this.#unfollow = plan.onChange((event) => this.#onChange(event));
    this.plan = plan;
    this.document = plan.document;
    this.requestUpdate();
  }

  /** Takes back an act of the person here, or makes it again. */
  #turn(step: 'undo' | 'redo', label: string): void {
    if (!this.plan) this.#planOpening.wait(() => this[step]());
    if (label === '' || !this.mayChange() || this.plan?.undo[step]()) return;
    this.say(this.words.nothingLeft(label));
    this.requestUpdate();
  }

  /** Shows what was done to the plan, here or elsewhere. */
  #onChange({ before, document, own, by, shifts }: PlanChange): void {
    if (!own && shifts.length > 0) followLog(this);
    if (document === before) return this.requestUpdate();
    this.trouble = '';
    this.said = '';
    this.planning.outdate();
    this.#opening.replan = false;
    this.document = document;
    if (!own) this.say(this.words.changedBy(by.join(', ') || this.words.anotherTab));
  }

  async #refresh(engine: Engine, document: PlanDocument): Promise<void> {
    this.outlooks.clear();
    const before = this.#edited === document ? this.figures.results?.faults : undefined;
    if (!(await this.figures.ask(engine, document))) return;
    // An unlikely change is told at once: what it leaves out would else be missed in the plan.
    const after = this.figures.results?.faults ?? [];
    if (before && after.length > 0) {
      await loadProblems(this.inWords(() => spokenNow().words));
      const news = this.inWords(() => newFaultsText(before, after, this.words));
      if (news) this.say(news);
    }
    this.#keepPicked();
    this.#opening.figuresKnown(engine, document);
  }

  /** After a change the same things stay picked where they still exist, and what is told is told anew. */
  #keepPicked(): void {
    const { picked } = this;
    const { results } = this.figures;
    const windows = results?.plan.windows ?? [];
    if (!windows.some((window) => window.id === picked.window)) {
      const window = results?.fits.find((fit) => fit.fits)?.window ?? windows[0]?.id ?? '';
      picked.pick({ window });
    }
    picked.pick({ placement: null });
    picked.refresh();
  }

  get #isDark(): boolean {
    if (this.theme !== '') return this.theme === 'dark';
    return typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
  }

  readonly #onTheme = (): void => {
    this.theme = this.#isDark ? 'light' : 'dark';
  };

  readonly #onPlaceKey = (event: KeyboardEvent): void => {
    const place = placeByKey(event.key, placeOf(this.view));
    if (!place) return;
    event.preventDefault();
    this.showPlace(place);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`#tab-${place}`)?.focus(),
    );
  };

  readonly #openFind = (): void => {
    this.menu = 'find';
    this.asked = '';
    this.askedAt = 0;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('#asked')?.focus(),
    );
  };

  /** Undo and redo of the plan, but not where a field has keys of its own. */
  readonly #onKey = (event: KeyboardEvent): void => {
    if (isFindKey(event)) {
      event.preventDefault();
      this.#openFind();
      return;
    }
    const step = stepByKey(event);
    if (!step) return;
    event.preventDefault();
    this[step]();
  };

  readonly #onFigure = ({ figure }: FigureAskEvent): void => {
    this.picked.explain((why) => explained(why, this, figure));
    this.bringSide();
  };

  readonly #onFaults = (): void => {
    this.picked.explain((why) => why.tellFaults(this.figures.results, this.document));
    this.bringSide();
  };

  readonly #onCautions = (): void => {
    this.cautionsOpen = !this.cautionsOpen;
  };

  readonly #onUp = (): void => {
    this.renderRoot.querySelector('main')?.scrollIntoView({ block: 'start' });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-desk': PossessionDesk;
  }
}
