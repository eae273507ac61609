// One file though long: the desk is the one place that knows what is picked, and every view and link turns on that.
import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Engine, ImportReport, Placement, Results, ShiftLog } from '../../src/engine/types.js';
import { cautions, type PlanDocument, type TableKind } from '../../src/model/index.js';
import type { Allocation, Objective } from '../../src/schedule/types.js';
import type { FitSelectEvent } from '../fit/fit-select-event.js';
import type { ImportAcceptEvent } from '../import/import-accept-event.js';
import type { LedgerAskEvent } from '../ledger/ledger-ask-event.js';
import type { PlacementSelectEvent } from '../plan/placement-select-event.js';
import type { WindowSelectEvent } from '../ribbon/window-select-event.js';
import type { CalendarSaveEvent } from '../booking/calendar-save-event.js';
import type { HandbackRecordEvent } from '../handback/handback-record-event.js';
import type { OverrunChangeEvent } from '../overrun/overrun-change-event.js';
import { base } from '../shared/base.js';
import { countText } from '../shared/format.js';
import type { CellSelectEvent } from '../sheet/cell-select-event.js';
import type { PossessionSheet } from '../sheet/sheet.js';
import { explainCertificate, explainPlacement, provedText } from '../why/explain-plan.js';
import type { Explanation, Place } from '../why/explanation.js';
import type { WhyLinkEvent } from '../why/why-events.js';
import { styles } from './desk.styles.js';
import { windowForms, workForms } from './change-forms.js';
import { withCells, withWindow } from './edits.js';
import { bookingView, costView, handbackView } from './outlook-views.js';
import { Outlooks } from './outlooks.js';
import { addToShift, readShift } from './shift-store.js';
import { headingOf, rowWith, valueIn } from './table-lookup.js';
import { saveFile } from './save-file.js';
import {
  tellFaults,
  tellFit,
  tellLedger,
  tellMoves,
  tellPackage,
  tellShortNotice,
} from './told.js';

export type DeskView =
  'windows' | 'work' | 'fit' | 'plan' | 'handback' | 'cost' | 'booking' | 'import';
/** What the plan view shows. */
type PlanPart = 'plan' | 'units' | 'compare';
type WorkTable = Exclude<TableKind, 'windows'>;

const views: readonly DeskView[] = [
  'windows',
  'work',
  'fit',
  'plan',
  'handback',
  'cost',
  'booking',
  'import',
];
/** Views that fill the desk: they say themselves where their figures come from. */
const wholeViews: readonly DeskView[] = ['handback', 'cost', 'booking'];
const planParts: Readonly<Record<PlanPart, string>> = {
  plan: 'In the windows',
  units: 'Units in place',
  compare: 'Against the plan before',
};
/** Name under which the granting of the possession stands among the steps. */
const GRANTED = 'Possession granted';
const viewText: Readonly<Record<DeskView, string>> = {
  windows: 'Windows',
  work: 'Work',
  fit: 'Fit',
  plan: 'Plan',
  handback: 'Handback',
  cost: 'Overrun',
  booking: 'Booking',
  import: 'Import',
};
const objectives: Readonly<Record<Objective, string>> = {
  'key-dates': 'key dates met',
  margins: 'margins held',
  finish: 'earliest finish',
  'fewest-windows': 'fewest windows',
};

/**
 * The workbench: the plan's sheets and pictures, and beside them a narrow panel that says where a picked number
 * comes from. The cautions stay in sight.
 *
 * Keyboard: the views are an ARIA tab list (arrows, Home, End); each element within has its own keys.
 * @summary The whole desk over one plan document.
 * @tag possession-desk
 */
export class PossessionDesk extends LitElement {
  static override readonly styles = [...base, styles];
  static override readonly properties: PropertyDeclarations = {
    engine: { attribute: false },
    document: { attribute: false },
    view: { type: String, reflect: true },
    theme: { type: String, reflect: true },
    results: { state: true },
    allocation: { state: true },
    selectedWindow: { state: true },
    selectedFit: { state: true },
    asked: { state: true },
    told: { state: true },
    placement: { state: true },
    workTable: { state: true },
    first: { state: true },
    busy: { state: true },
    trouble: { state: true },
    reports: { state: true },
    wary: { state: true },
    now: { attribute: false },
    planPart: { state: true },
    earlier: { state: true },
    live: { state: true },
    log: { state: true },
  };

  /** Works the figures out. The desk does not dispose of it. */
  declare engine: Engine | null;
  /** The plan shown; set a new document to change it. */
  declare document: PlanDocument | null;
  declare view: DeskView;
  /** `light` or `dark`; empty follows the system. */
  declare theme: '' | 'light' | 'dark';
  declare protected results: Results | null;
  declare protected allocation: Allocation | null;
  declare protected selectedWindow: string;
  declare protected selectedFit: { package: string; window: string } | null;
  declare protected asked: LedgerAskEvent['row'] | null;
  declare protected told: Explanation | null;
  declare protected placement: number | null;
  declare protected workTable: WorkTable;
  declare protected first: Objective;
  declare protected busy: '' | 'figures' | 'plan';
  declare protected trouble: string;
  declare protected reports: readonly ImportReport[];
  /** Whether a narrow screen shows every caution. */
  declare protected wary: boolean;
  /** The moment it is; the page sets it. Null: the clock is asked when it matters. */
  declare now: number | null;
  declare protected planPart: PlanPart;
  /** The plan before the last change, to compare with. */
  declare protected earlier: Allocation | null;
  declare protected live: boolean;
  declare protected log: ShiftLog;

  readonly #outlooks = new Outlooks(this);
  #askLater: ReturnType<typeof setTimeout> | undefined;
  /** A plan to start from when the document has changed under it. */
  #agreed: Allocation | null = null;
  #running: AbortController | undefined;
  #search: AbortController | undefined;
  #pending: Promise<void> = Promise.resolve();

  constructor() {
    super();
    this.engine = null;
    this.document = null;
    this.view = 'windows';
    this.theme = '';
    this.results = null;
    this.allocation = null;
    this.selectedWindow = '';
    this.selectedFit = null;
    this.asked = null;
    this.told = null;
    this.placement = null;
    this.workTable = 'work';
    this.first = 'key-dates';
    this.busy = '';
    this.trouble = '';
    this.reports = [];
    this.wary = false;
    this.now = null;
    this.planPart = 'plan';
    this.earlier = null;
    this.live = false;
    this.log = [];
  }

  /** Takes what was read from files, with the reports that say which columns are not used. */
  take(document: PlanDocument, reports: readonly ImportReport[]): void {
    this.document = document;
    const files = new Set(reports.map((one) => one.kind));
    this.reports = [...this.reports.filter((one) => !files.has(one.kind)), ...reports];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#running?.abort();
    this.#search?.abort();
    clearTimeout(this.#askLater);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if ((changed.has('document') || changed.has('engine')) && this.engine && this.document)
      this.#pending = this.#recompute(this.engine, this.document);
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('selectedWindow') && this.view === 'windows') this.#followInSheet();
  }

  /** Settled means that the figures of the current document are shown. */
  protected override async getUpdateComplete(): Promise<boolean> {
    let pending: Promise<void>;
    let done = await super.getUpdateComplete();
    do {
      pending = this.#pending;
      await pending;
      done = await super.getUpdateComplete();
    } while (pending !== this.#pending);
    return done;
  }

  override render(): TemplateResult {
    const whole = wholeViews.includes(this.view);
    return html`<div class="desk ${whole ? 'one' : ''}">
      ${this.#renderTop()}
      <main>
        <div
          id="view"
          class="view"
          role="tabpanel"
          aria-labelledby="tab-${this.view}"
          aria-busy=${this.busy !== ''}
        >
          ${this.trouble ? html`<p class="trouble" role="alert">${this.trouble}</p>` : nothing}
          ${this.#renderView()}
        </div>
      </main>
      ${whole ? nothing : html`<aside aria-label="Where figures come from" tabindex="0">${this.#renderSide()}</aside>`}
      <footer aria-label="Cautions" class=${this.wary ? 'whole' : ''}>
        ${cautions.map((one, index) => html`<p>${index === 0 ? html`<strong>${one}</strong>` : one}</p>`)}
        <button
          class="plain"
          type="button"
          aria-expanded=${this.wary}
          @click=${() => {
            this.wary = !this.wary;
          }}
        >
          ${this.wary ? 'Fewer' : `All ${cautions.length} cautions`}
        </button>
      </footer>
    </div>`;
  }

  #renderTop(): TemplateResult {
    const faults = this.results?.faults ?? [];
    return html`<header class="top">
      <div class="title">
        <h1>${this.document?.name || 'No plan yet'}</h1>
        <p>
          ${this.document ? html`${this.document.rules.name === 'none' ? 'no rules: nothing is deducted' : this.document.rules.name}, ${this.document.zone}` : 'possession-fit'}
        </p>
      </div>
      <div role="tablist" aria-label="Views" @keydown=${this.#onTabKey}>
        ${views.map(
          (view) =>
            html`<button
              type="button"
              role="tab"
              id="tab-${view}"
              aria-controls="view"
              aria-selected=${view === this.view}
              tabindex=${view === this.view ? 0 : -1}
              @click=${() => {
                this.#show(view);
              }}
            >
              <strong>${viewText[view]}</strong><span>${this.#countOf(view)}</span>
            </button>`,
        )}
      </div>
      <div class="tools">
        ${
          faults.length > 0
            ? html`<button class="faulty" type="button" @click=${this.#onFaults}>
                ✕ ${countText(faults.length, 'fault')}
              </button>`
            : nothing
        }
        <button type="button" @click=${this.#onTheme}>${this.#isDark ? 'Light' : 'Dark'}</button>
      </div>
    </header>`;
  }

  #countOf(view: DeskView): string {
    const { results } = this;
    if (view === 'import') return 'files or cells';
    if (!results) return this.busy ? 'working' : 'none yet';
    if (view === 'windows') return `${results.plan.windows.length} booked`;
    if (view === 'work') return countText(results.packages.length, 'package');
    if (view === 'handback') return this.#heldText();
    if (view === 'cost')
      return this.#outlooks.price
        ? `${this.#outlooks.price.curve.currency} by minute`
        : 'by minute';
    if (view === 'booking') return this.#lateText();
    if (view === 'fit')
      return this.busy === 'figures'
        ? 'working'
        : `${results.fits.filter((one) => one.fits).length} of ${results.fits.length}`;
    if (!this.allocation) return this.busy === 'plan' ? 'searching' : 'not yet';
    return provedText(this.allocation).toLowerCase();
  }

  #heldText(): string {
    const { handbacks } = this.#outlooks;
    if (handbacks.length === 0) return this.#outlooks.isBusy('handback') ? 'working' : 'margins';
    const held = handbacks.filter((one) => one.verdict === 'held').length;
    return `${held} of ${handbacks.length} held`;
  }

  #lateText(): string {
    const { booked } = this.#outlooks;
    if (!booked) return 'dates';
    const late = booked.milestones.filter((one) => one.state === 'late').length;
    return late === 0 ? 'none late' : `${late} late`;
  }

  #renderView(): TemplateResult {
    const { results, document } = this;
    if (this.view === 'import')
      return html`<div class="fill pad">
        <possession-import
          .engine=${this.engine}
          .document=${document}
          @possession-import-accept=${this.#onAccept}
        ></possession-import>
      </div>`;
    if (!results || !document)
      return html`<p class="pad quiet">
        ${this.busy ? 'Working the figures out.' : 'Import windows and work to begin.'}
      </p>`;
    if (this.view === 'windows')
      return html`<div class="picture">
          <possession-ribbon
            .windows=${results.plan.windows}
            .ledgers=${results.ledgers}
            .selected=${this.selectedWindow}
            @possession-window-select=${this.#onWindow}
          ></possession-ribbon>
        </div>
        ${this.#renderSheet('windows', '')}`;
    if (this.view === 'work') return this.#renderWork();
    if (this.view === 'fit')
      return html`<possession-fit
        .packages=${results.packages}
        .windows=${results.plan.windows}
        .fits=${results.fits}
        .selected=${this.selectedFit}
        @possession-fit-select=${this.#onFit}
      ></possession-fit>`;
    if (wholeViews.includes(this.view)) return this.#renderOutlook(results);
    return this.#renderPlan(results, document);
  }

  #renderOutlook(results: Results): TemplateResult {
    const shown = {
      outlooks: this.#outlooks,
      windows: results.plan.windows,
      selected: this.selectedWindow,
      now: this.#moment(),
    };
    if (this.view === 'booking') return bookingView(shown, this.#onCalendar);
    if (this.view === 'cost')
      return costView(shown, this.document?.prices !== undefined, {
        pick: this.#onPriced,
        minutes: this.#onOverrun,
      });
    const state = { live: this.live, log: this.log, searching: this.busy === 'plan' };
    return handbackView(shown, state, {
      live: this.#onLive,
      forecast: () => void this.#forecast(),
      saveLog: this.#onSaveLog,
      pick: this.#onHandbackWindow,
      record: this.#onRecord,
    });
  }

  #renderSheet(kind: TableKind, extra: string): TemplateResult {
    const table = this.document?.tables[kind];
    return html`<possession-sheet
      class=${extra}
      data-kind=${kind}
      .table=${table}
      .faults=${this.results?.faults ?? []}
      .unread=${this.reports.find((one) => one.kind === kind)?.unmatched ?? []}
      .label=${`${kind}, as typed`}
      @possession-cell-select=${this.#onCell}
    ></possession-sheet>`;
  }

  #renderWork(): TemplateResult {
    const kinds: readonly WorkTable[] = ['work', 'resources', 'trains'];
    return html`<div class="bar">
        <div class="choice" role="group" aria-label="Table">
          ${kinds.map(
            (kind) =>
              html`<button
                type="button"
                aria-pressed=${kind === this.workTable}
                @click=${() => {
                  this.workTable = kind;
                }}
              >
                ${kind.charAt(0).toUpperCase() + kind.slice(1)}
                ${this.document?.tables[kind].rows.length ?? 0}
              </button>`,
          )}
        </div>
        <span class="said">Pick a row of work: the panel says where its package fits.</span>
      </div>
      ${this.#renderSheet(this.workTable, 'only')}`;
  }

  #renderPlan(results: Results, document: PlanDocument): TemplateResult {
    const searching = this.busy === 'plan';
    return html`<div class="bar">
        <label for="first">First</label>
        <select id="first" @change=${this.#onFirst} ?disabled=${searching}>
          ${Object.entries(objectives).map(
            ([value, text]) =>
              html`<option value=${value} ?selected=${value === this.first}>${text}</option>`,
          )}
        </select>
        ${
          searching
            ? html`<button type="button" @click=${() => this.#search?.abort()}>Stop</button>`
            : html`<button class="strong" type="button" @click=${this.#onSearch}>
                ${this.allocation ? 'Work it out again' : 'Work out a plan'}
              </button>`
        }
        <div class="choice" role="group" aria-label="What is shown of the plan">
          ${(Object.entries(planParts) as [PlanPart, string][]).map(
            ([part, text]) =>
              html`<button
                type="button"
                aria-pressed=${part === this.planPart}
                @click=${() => {
                  this.planPart = part;
                }}
              >
                ${text}
              </button>`,
          )}
        </div>
        <span class="said" role="status"
          >${searching ? 'Searching, up to ten seconds' : 'All work against all windows'}</span
        >
      </div>
      ${this.planPart === 'plan' ? this.#renderPlanned(results, document) : this.#renderPlanPart(results, document)}`;
  }

  #renderPlanPart(results: Results, document: PlanDocument): TemplateResult {
    const { windows, activities } = results.plan;
    return html`<div
      class="fill pad"
      tabindex="0"
      role="region"
      aria-label=${planParts[this.planPart]}
    >
      ${
        this.planPart === 'units'
          ? html`<possession-units
              .allocation=${this.allocation}
              .windows=${windows}
              .activities=${activities}
              .zone=${document.zone}
            ></possession-units>`
          : html`<possession-compare
              .beforePlan=${this.earlier}
              .afterPlan=${this.earlier ? this.allocation : null}
              .windows=${windows}
              .activities=${activities}
              .zone=${document.zone}
            ></possession-compare>`
      }
    </div>`;
  }

  #renderPlanned(results: Results, document: PlanDocument): TemplateResult {
    return html`<div class="fill" tabindex="0" role="region" aria-label="The plan">
      <possession-plan
        .allocation=${this.allocation}
        .windows=${results.plan.windows}
        .ledgers=${results.ledgers}
        .activities=${results.plan.activities}
        .zone=${document.zone}
        .selected=${this.placement}
        @possession-placement-select=${this.#onPlacement}
      ></possession-plan>
    </div>`;
  }

  #renderSide(): TemplateResult {
    const window = this.results?.plan.windows.find((one) => one.id === this.selectedWindow);
    const ledger = this.results?.ledgers.find((one) => one.window === this.selectedWindow);
    return html`<button class="plain up" type="button" @click=${this.#onUp}>Back to the top</button>
      ${
        this.view === 'windows'
          ? html`<possession-ledger
                .window=${window ?? null}
                .ledger=${ledger ?? null}
                .asked=${this.asked}
                @possession-ledger-ask=${this.#onAsk}
              ></possession-ledger>
              ${this.#renderChange()}`
          : nothing
      }
      ${this.view === 'import' ? this.#renderImportNote() : nothing}
      ${this.view === 'plan' && this.planPart === 'plan' ? this.#renderMove() : nothing}
      <possession-why
        ?hidden=${this.view === 'import' && !this.told}
        .explanation=${this.told}
        @possession-why-link=${this.#onLink}
      ></possession-why>`;
  }

  #renderChange(): TemplateResult | typeof nothing {
    const windows = this.document?.tables.windows;
    if (!windows) return nothing;
    return windowForms(windows, this.selectedWindow, this.allocation !== null, {
      change: this.#onChange,
      add: this.#onAdd,
      bestUse: this.#onBestUse,
    });
  }

  get #picked(): Placement | undefined {
    return this.placement === null ? undefined : this.allocation?.placements[this.placement];
  }

  #renderMove(): TemplateResult | typeof nothing {
    const placed = this.#picked;
    const work = this.document?.tables.work;
    if (!placed || !work || !this.results) return nothing;
    return workForms(placed, work, this.results.plan.windows, {
      move: this.#onMove,
      fix: (window) => this.#fix(placed.activity, window),
      done: this.#onDone,
    });
  }

  #renderImportNote(): TemplateResult {
    return html`<p class="note">
      Files are read here and sent nowhere. Nothing changes until what was read is taken. A row that
      cannot be used stays in its sheet, marked, with how to mend it; the figures leave it out.
    </p>`;
  }

  async #recompute(engine: Engine, document: PlanDocument): Promise<void> {
    this.#running?.abort();
    this.#search?.abort();
    const running = (this.#running = new AbortController());
    this.busy = 'figures';
    this.trouble = '';
    try {
      const results = await engine.recompute(document, running.signal, (outline) => {
        // A first picture; later the figures shown stay until the new ones are all there.
        if (!running.signal.aborted) this.results ??= outline;
      });
      if (running.signal.aborted) return;
      const agreed = this.#agreed;
      this.#agreed = null;
      this.results = results;
      this.allocation = null;
      this.placement = null;
      this.#outlooks.clear();
      this.#keepSelection(results);
      if (agreed) {
        this.earlier = agreed;
        this.busy = '';
        void this.#planAgain(agreed);
        return;
      }
      if (this.view === 'booking') void this.#outlooks.askBooking(engine, document, this.#moment());
    } catch (error) {
      if (running.signal.aborted) return;
      this.trouble = `The figures could not be worked out: ${error instanceof Error ? error.message : String(error)}`;
    }
    this.busy = '';
  }

  /** After a change the same window stays picked where it still exists, and what is told is told anew. */
  #keepSelection(results: Results): void {
    const windows = results.plan.windows;
    if (!windows.some((one) => one.id === this.selectedWindow))
      this.selectedWindow = results.fits.find((one) => one.fits)?.window ?? windows[0]?.id ?? '';
    this.selectedFit = null;
    this.told = null;
    this.asked = null;
    if (this.view === 'windows') this.#ask('usable');
  }

  #show(view: DeskView): void {
    if (view === this.view) return;
    this.view = view;
    this.told = null;
    this.asked = null;
    if (view === 'windows') this.#ask('usable');
    else if (view === 'fit' && this.selectedFit)
      this.told = tellFit(this.results, this.selectedFit);
    else if (view === 'work')
      this.told = tellPackage(this.results, this.results?.packages[0]?.id ?? '');
    else if (view === 'plan' && this.allocation) this.told = explainCertificate(this.allocation);
    else if (view === 'plan' && this.busy === '') void this.#onSearch();
    else if (view === 'handback') void this.#askHandback();
    else if (view === 'cost') void this.#askPrice();
    else if (view === 'booking' && this.engine && this.document && !this.#outlooks.booked)
      void this.#outlooks.askBooking(this.engine, this.document, this.#moment());
    else if (view === 'fit') this.#pickFirstFit();
  }

  #moment(): number {
    return this.now ?? Date.now();
  }

  /** Handback is of a plan of the work: where there is none yet it is worked out first. */
  async #askHandback(): Promise<void> {
    if (!this.allocation && this.busy === '') await this.#onSearch();
    const { engine, document, allocation } = this;
    if (!engine || !document || !allocation) return;
    const used = allocation.placements.flatMap((one) => one.window ?? []);
    if (!used.includes(this.selectedWindow)) this.selectedWindow = used[0] ?? this.selectedWindow;
    this.#openLog();
    if (this.#outlooks.handbacks.length === 0 && !this.#outlooks.isBusy('handback'))
      await this.#outlooks.askHandback({ engine, document, allocation });
  }

  async #askPrice(): Promise<void> {
    const { engine, document } = this;
    if (!engine || !document?.prices || this.selectedWindow === '') return;
    await this.#outlooks.askPrice(engine, document, this.selectedWindow, this.allocation);
  }

  #openLog(): void {
    this.log = readShift(this.document?.name ?? '', this.selectedWindow);
  }

  /** The picked window as it stands now, from what the log says. */
  async #forecast(): Promise<void> {
    const { engine, document, allocation } = this;
    if (!engine || !document || !allocation) return;
    await this.#outlooks.askLive(
      { engine, document, allocation },
      this.selectedWindow,
      this.#moment(),
      this.log,
    );
  }

  /** Changes the document under a plan: what was agreed is kept as far as it can be. */
  #edit(document: PlanDocument): void {
    this.#agreed = this.allocation;
    this.document = document;
  }

  #fix(activity: string, window: string): void {
    if (this.document)
      this.#edit(withCells(this.document, 'work', 'activity', activity, { window }));
  }

  async #planAgain(agreed: Allocation): Promise<void> {
    const { engine, document, first } = this;
    if (!engine || !document) return;
    await this.#searching(async (signal) => {
      const { allocation, moved } = await engine.replan(
        document,
        agreed,
        { first, seconds: 6 },
        signal,
      );
      return () => {
        this.allocation = allocation;
        // A changed window is answered where both plans stand side by side; moved work stays in its picture.
        if (this.view === 'windows') {
          this.view = 'plan';
          this.planPart = 'compare';
        }
        this.told = tellMoves(moved, allocation);
      };
    });
  }

  /** Runs a search with the desk marked busy; the last one asked for wins. */
  async #searching(work: (signal: AbortSignal) => Promise<() => void>): Promise<void> {
    this.#search?.abort();
    const search = (this.#search = new AbortController());
    this.busy = 'plan';
    this.trouble = '';
    try {
      const keep = await work(search.signal);
      if (!search.signal.aborted) {
        this.#outlooks.clear();
        this.placement = null;
        keep();
      }
    } catch (error) {
      if (!search.signal.aborted)
        this.trouble = `No plan was worked out: ${error instanceof Error ? error.message : String(error)}`;
    }
    if (this.#search === search) this.busy = '';
  }

  #pickFirstFit(): void {
    const one = this.results?.fits.find((fit) => fit.fits) ?? this.results?.fits[0];
    if (!one) return;
    this.selectedFit = { package: one.package, window: one.window };
    this.told = tellFit(this.results, this.selectedFit);
  }

  #ask(row: LedgerAskEvent['row']): void {
    this.asked = row;
    this.told = tellLedger(this.results, this.selectedWindow, row);
  }

  /** On a narrow screen the panel is below: what was asked for is brought into sight. */
  #bringSide(): void {
    const side = this.renderRoot.querySelector('aside');
    if (!side || side.offsetTop < (this.renderRoot.querySelector('main')?.offsetHeight ?? 0))
      return;
    void this.updateComplete.then(() => side.scrollIntoView({ block: 'start' }));
  }

  async #goTo(place: Place): Promise<void> {
    if (place.to === 'fit') {
      this.view = 'fit';
      this.selectedFit = { package: place.package, window: place.window };
      this.told = tellFit(this.results, this.selectedFit);
      return;
    }
    const tables = this.document?.tables;
    if (!tables) return;
    if (place.to === 'window') {
      this.#show('windows');
      this.selectedWindow = place.id;
      this.#ask('usable');
      await this.#goToCell('windows', rowWith(tables.windows, 'window', place.id), '');
    } else if (place.to === 'cell')
      await this.#goToCell(place.table, place.row, place.column ?? '');
    else {
      const row = rowWith(tables.work, place.to, place.id);
      await this.#goToCell('work', row, headingOf(tables.work, place.to) ?? '');
    }
  }

  async #goToCell(kind: TableKind, row: number, column: string): Promise<void> {
    if (row < 0) return;
    const told = this.told;
    this.#show(kind === 'windows' ? 'windows' : 'work');
    if (kind !== 'windows') this.workTable = kind;
    this.told = told;
    await this.updateComplete;
    const sheet = this.renderRoot.querySelector<PossessionSheet>(`[data-kind=${kind}]`);
    await sheet?.updateComplete;
    sheet?.goTo(row, column);
    sheet?.scrollIntoView({ block: 'nearest' });
  }

  /** The sheet moves to the row of the window picked elsewhere; a cell of that row stays where it is. */
  #followInSheet(): void {
    const sheet = this.renderRoot.querySelector<PossessionSheet>('[data-kind=windows]');
    const table = this.document?.tables.windows;
    const row = table ? rowWith(table, 'window', this.selectedWindow) : -1;
    if (!sheet || row < 0) return;
    void sheet.updateComplete.then(() => {
      if (sheet.currentRow !== row) sheet.goTo(row);
    });
  }

  get #isDark(): boolean {
    if (this.theme !== '') return this.theme === 'dark';
    return typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
  }

  readonly #onTheme = (): void => {
    this.theme = this.#isDark ? 'light' : 'dark';
  };

  readonly #onTabKey = (event: KeyboardEvent): void => {
    const at = views.indexOf(this.view);
    const last = views.length - 1;
    const to = {
      ArrowRight: at === last ? 0 : at + 1,
      ArrowLeft: at === 0 ? last : at - 1,
      Home: 0,
      End: last,
    }[event.key];
    const view = views[to ?? -1];
    if (!view) return;
    event.preventDefault();
    this.#show(view);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`#tab-${view}`)?.focus(),
    );
  };

  readonly #onWindow = (event: WindowSelectEvent): void => {
    this.selectedWindow = event.window;
    this.#ask('usable');
  };

  readonly #onAsk = (event: LedgerAskEvent): void => this.#ask(event.row);

  readonly #onFit = (event: FitSelectEvent): void => {
    this.selectedFit = { package: event.package, window: event.window };
    this.told = tellFit(this.results, this.selectedFit);
    this.#bringSide();
  };

  readonly #onPlacement = (event: PlacementSelectEvent): void => {
    if (!this.allocation || !this.results || !this.document) return;
    this.placement = event.index;
    const { activities } = this.results.plan;
    this.told = explainPlacement(this.allocation, event.index, activities, this.document.zone);
    this.#bringSide();
  };

  readonly #onCell = (event: CellSelectEvent): void => {
    const tables = this.document?.tables;
    if (!tables) return;
    if (this.view === 'windows') {
      const id = valueIn(tables.windows, event.row, 'window');
      if (!this.results?.plan.windows.some((one) => one.id === id)) return;
      this.selectedWindow = id;
      this.#ask('usable');
    } else if (this.workTable === 'work')
      this.told = tellPackage(this.results, valueIn(tables.work, event.row, 'package'));
  };

  readonly #onLink = (event: WhyLinkEvent): void => void this.#goTo(event.place);

  readonly #onFaults = (): void => {
    this.told = tellFaults(this.results, this.document);
    this.#bringSide();
  };

  readonly #onFirst = (event: Event): void => {
    this.first = (event.target as HTMLSelectElement).value as Objective;
  };

  readonly #onUp = (): void => {
    this.renderRoot.querySelector('main')?.scrollIntoView({ block: 'start' });
  };

  readonly #onAccept = (event: ImportAcceptEvent): void => {
    this.take(event.document, event.report);
    this.view = 'windows';
  };

  readonly #onSearch = async (): Promise<void> => {
    const { engine, document, first } = this;
    if (!engine || !document) return;
    await this.#searching(async (signal) => {
      const found = await engine.allocate(document, { first, seconds: 10 }, signal);
      return () => {
        this.earlier = this.allocation ?? this.earlier;
        this.allocation = found;
        if (this.view === 'plan') this.told = explainCertificate(found);
      };
    });
  };

  readonly #onChange = (event: SubmitEvent): void => {
    event.preventDefault();
    if (!this.document) return;
    const given = new FormData(event.target as HTMLFormElement);
    const cells = Object.fromEntries(
      ['start', 'end', 'status'].map((name) => [name, String(given.get(name) ?? '').trim()]),
    );
    this.#edit(withCells(this.document, 'windows', 'window', this.selectedWindow, cells));
  };

  readonly #onAdd = (event: SubmitEvent): void => {
    event.preventDefault();
    const { document } = this;
    if (!document) return;
    const given = new FormData(event.target as HTMLFormElement);
    const cell = (name: string): string => String(given.get(name) ?? '').trim();
    if (rowWith(document.tables.windows, 'window', cell('window')) >= 0) {
      this.trouble = `There is a window ${cell('window')} already: give the new one another name.`;
      return;
    }
    const cells = {
      window: cell('window'),
      title: cell('title'),
      start: cell('start'),
      end: cell('end'),
      status: 'offered',
    };
    this.#edit(withWindow(document, this.selectedWindow, cells));
  };

  readonly #onDone = (event: SubmitEvent): void => {
    event.preventDefault();
    const placed = this.#picked;
    const done = String(new FormData(event.target as HTMLFormElement).get('done') ?? '').trim();
    if (placed && this.document)
      this.#edit(withCells(this.document, 'work', 'activity', placed.activity, { done }));
  };

  readonly #onBestUse = async (): Promise<void> => {
    const { engine, document, allocation, selectedWindow, first } = this;
    if (!engine || !document || !allocation) return;
    await this.#searching(async (signal) => {
      const found = await engine.shortNotice(
        document,
        allocation,
        selectedWindow,
        { first, seconds: 6 },
        signal,
      );
      return () => {
        this.earlier = allocation;
        this.allocation = found.allocation;
        this.told = tellShortNotice(found, document.zone);
      };
    });
  };

  readonly #onMove = (event: Event): void => {
    const placed = this.#picked;
    if (placed) this.#fix(placed.activity, (event.target as HTMLSelectElement).value);
  };

  readonly #onHandbackWindow = (event: WindowSelectEvent): void => {
    this.selectedWindow = event.window;
    this.live = false;
    this.#openLog();
  };

  readonly #onLive = (): void => {
    this.live = !this.live;
    if (this.live) void this.#forecast();
  };

  readonly #onRecord = (event: HandbackRecordEvent): void => {
    const at = this.#moment();
    const what =
      event.step === GRANTED
        ? { kind: 'granted' as const }
        : event.activity === undefined
          ? { kind: `step-${event.what}` as const, step: event.step ?? '' }
          : { kind: `activity-${event.what}` as const, activity: event.activity };
    const entry = {
      id: `${at}-${this.log.length}`,
      at,
      enteredAt: at,
      by: 'this desk',
      event: what,
    };
    const { log, stored } = addToShift(this.document?.name ?? '', event.window, this.log, entry);
    this.log = log;
    if (!stored)
      this.trouble =
        'The entry is shown but could not be stored: save the log to a file before closing.';
    void this.#forecast();
  };

  readonly #onSaveLog = (): void =>
    saveFile(
      `shift-${this.selectedWindow}.json`,
      JSON.stringify(this.log, null, 2),
      'application/json',
    );

  readonly #onCalendar = (event: CalendarSaveEvent): void =>
    saveFile('booking-dates.ics', event.text, 'text/calendar');

  readonly #onPriced = (event: Event): void => {
    this.selectedWindow = (event.target as HTMLSelectElement).value;
    void this.#askPrice();
  };

  readonly #onOverrun = (event: OverrunChangeEvent): void => {
    this.#outlooks.overrunMinutes = event.overrunMinutes;
    // A dragged slider speaks often; the element shows the total at once, the heads of cost may follow.
    clearTimeout(this.#askLater);
    this.#askLater = setTimeout(() => void this.#askPrice(), 120);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-desk': PossessionDesk;
  }
}
