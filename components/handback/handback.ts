import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Instant } from '../../src/calendar/index.js';
import { shiftState, type HandbackResult, type Progress } from '../../src/engine/index.js';
import type { AccessWindow, Decisions } from '../../src/model/index.js';
import { CalendarSaveEvent } from '../booking/calendar-save-event.js';
import { WindowSelectEvent } from '../ribbon/window-select-event.js';
import { Fed } from '../document/fed.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { progressStyle } from '../shared/progress-style.js';
import { FigureAskEvent, type Figure } from '../shared/figure-ask-event.js';
import { stretchText, numberText } from '../shared/format.js';
import { kindStyles } from '../shared/kinds.js';
import { WidthWatch } from '../shared/width-watch.js';
import { busyLine } from './busy-line.js';
import { criticalityTable, helpsTable, unitTables } from './end/chance-tables.js';
import { cutOffTable, decisionTable } from './cut-off-tables.js';
import '../chart/define.js';
import type { ChartShown } from '../chart/shown.js';
import { endChart } from './end/end-chart.js';
import { barTable, endPicture, endTables } from './end/end-picture.js';
import { decisionForm } from './decisions/decision-form.js';
import { DecisionsChangeEvent } from './decisions-change-event.js';
import { decisionStyles } from './decisions/decisions.styles.js';
import { goPointTable } from './live/go-points.js';
import { HandbackEntryEvent } from './handback-entry-event.js';
import { HandbackRecordEvent } from './handback-record-event.js';
import { styles } from './handback.styles.js';
import { liveStyles } from './live/live.styles.js';
import type { LogFiles } from './live/log-files.js';
import { liveView } from './live/live-view.js';
import { leftOpenList } from './left-open-list.js';
import { printLog } from './paper/print-log.js';
import { titleOf, type Setting } from './result-parts.js';
import { printSheet } from './paper/print-sheet.js';
import { printStyles } from './paper/print.styles.js';
import { shiftStyles } from './live/shift.styles.js';
import { shiftLines, type HandbackLogEntry } from './live/shift-lines.js';
import { defaultStrings, type HandbackStrings } from './strings.js';
import { exactClock } from './times.js';
import { windowList } from './window-list.js';
import { titleText } from '../shared/name.js';
import { loadSentences, saidText } from '../shared/said.js';
import { wordsOf } from '../shared/words-of.js';
import { Words } from '../shared/words.js';
import { changing } from '../shared/changing.js';

/**
 * How each window stands against its booked end: margin, chance of handing back on time, and by when every step must
 * start; during the shift, the same as it stands now, with buttons that report what has happened.
 *
 * It reads no clock: `now` comes from outside, and so do the times of what is reported.
 *
 * Keyboard: the windows are an ARIA listbox (arrows, Home, End; the selection follows the focus).
 * @summary Handback of all windows, and one of them in full.
 * @tag possession-handback
 * @event {WindowSelectEvent} possession-window-select - A reader picks a window.
 * @event {HandbackRecordEvent} possession-handback-record - Someone reports that a step or work started or finished just now.
 * @event {HandbackEntryEvent} possession-handback-entry - Someone wants anything else written in the log, or an entry put right.
 * @event {HandbackLogSaveEvent} possession-handback-log-save - Someone wants the log as a file.
 * @event {HandbackLogMergeEvent} possession-handback-log-merge - Someone brought in the log of another device.
 * @event {DecisionsChangeEvent} possession-decisions-change - Someone changes go/no-go points or what cannot be undone.
 * @event {CalendarSaveEvent} possession-calendar-save - Someone wants the cut-off times as a calendar file.
 * @event {FigureAskEvent} possession-figure-ask - A reader asks where a figure comes from.
 * @csspart row - One window of the list.
 * @csspart live - The view for the shift.
 * @csspart advice - The one line of advice on top of the view for the shift.
 * @csspart record - A button that reports a start or a finish.
 * @csspart cautions - The cautions.
 * @csspart print-sheet - The sheet of paper, seen in print only.
 * @cssproperty [--possession-live-scheme=dark] - Colour scheme of the view for the shift.
 */
export class PossessionHandback extends LitElement {
  static override readonly styles = [
    ...base,
    kindStyles,
    cautionStyles,
    progressStyle,
    ...styles,
    liveStyles,
    shiftStyles,
    decisionStyles,
    printStyles,
  ];
  static override readonly properties: PropertyDeclarations = {
    results: { attribute: false },
    windows: { attribute: false },
    selectedWindow: { type: String, attribute: 'selected-window', reflect: true },
    busy: { type: Boolean, reflect: true },
    progress: { attribute: false },
    live: { type: Boolean, reflect: true },
    now: { attribute: false },
    log: { attribute: false },
    decisions: { attribute: false },
    assumptions: { attribute: false },
    plan: { type: String },
    readonly: { type: Boolean },
    strings: { attribute: false },
  };

  declare results: readonly HandbackResult[];
  /** For titles and zones; a window that is not here is shown by its id and in UTC. */
  declare windows: readonly AccessWindow[];
  /** Id of the window shown in full; empty: none. */
  declare selectedWindow: string;
  declare busy: boolean;
  declare progress: Progress | null;
  /** The view for the shift. It also comes with any result that carries a forecast. */
  declare live: boolean;
  /** The moment countdowns count from; null: the moment of the forecast. */
  declare now: Instant | null;
  /** Entries of the shift log of the window shown, in the order in which they were written. */
  declare log: readonly HandbackLogEntry[];
  /** Go/no-go points and what cannot be undone, as the plan has them, to be edited here; null: not to be edited. */
  declare decisions: Decisions | null;
  /** Further lines for the printed sheet. */
  declare assumptions: readonly string[];
  /** Name and revision of the plan, for the printed sheet; empty: not said. */
  declare plan: string;
  /** Nothing may be written down or changed; whoever shows this says why. */
  declare readonly: boolean;
  /** Words in place of the default ones. */
  declare strings: Partial<HandbackStrings>;

  readonly #words = new Words<HandbackStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  /** Why no calendar was made when it was last asked for; empty: it was, or nobody asked. */
  #calendarTrouble = '';
  /** What became of the last log brought in. */
  #said: { window: string; lines: LogFiles['said'] } = { window: '', lines: [] };
  #chart:
    | {
        readonly result: HandbackResult;
        readonly strings: Partial<HandbackStrings>;
        readonly shown: ChartShown | null;
      }
    | undefined;
  readonly #picture = new WidthWatch(this, '.end-strip', 640);

  constructor() {
    super();
    this.results = [];
    this.windows = [];
    this.selectedWindow = '';
    this.busy = false;
    this.progress = null;
    this.live = false;
    this.now = null;
    this.log = [];
    this.decisions = null;
    this.assumptions = [];
    this.plan = '';
    this.readonly = false;
    this.strings = {};
    new Fed(this, ({ results, handbacks, selected, want }) => {
      want('handback');
      this.results = handbacks ?? [];
      this.windows = results?.plan.windows ?? [];
      this.busy = handbacks === null;
      this.selectedWindow = selected.window;
    });
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const result = this.results.find((item) => item.window === this.selectedWindow);
    const live = result !== undefined && (this.live || result.live !== null);
    return html`<div class="screen" aria-busy=${this.busy}>
        ${busyLine(this.busy, this.progress, words)}
        ${
          this.results.length === 0
            ? this.busy
              ? nothing
              : html`<p class="empty quiet">${words.empty}</p>`
            : live
              ? html`${this.#renderLive(result, words)}
                  <details class="rest">
                    <summary>${words.allFigures(result.window)}</summary>
                    ${this.#renderList(words)} ${this.#renderResult(result, words)}
                  </details>`
              : html`${this.#renderList(words)}
                  <p class="quiet">${words.waits} ${words.thinTail}</p>
                  ${cautionList(words.cautions, words.cautionLines)}
                  ${
                    result
                      ? this.#renderResult(result, words)
                      : html`<p class="empty quiet">${words.pick}</p>`
                  }`
        }
      </div>
      ${
        result
          ? printSheet(
              result,
              this.#windowOf(result.window),
              { zone: this.#zoneOf(result), strings: words },
              this.assumptions,
              this.now,
              this.plan,
            )
          : nothing
      }
      ${
        result
          ? printLog(
              this.log,
              `${result.window} ${titleText(this.#windowOf(result.window)?.title ?? '')}`,
              { zone: this.#zoneOf(result), strings: words },
              (activity) => titleOf(result, activity),
            )
          : nothing
      }`;
  }

  #renderList(strings: HandbackStrings): TemplateResult {
    return windowList(this.results, {
      strings,
      selected: this.selectedWindow,
      windowOf: (id) => this.#windowOf(id),
      onKey: this.#onKey,
      onClick: this.#onClick,
    });
  }

  #renderLive(result: HandbackResult, strings: HandbackStrings): TemplateResult {
    const { window } = result;
    return liveView(result, {
      zone: this.#zoneOf(result),
      strings,
      now: this.now ?? result.live?.at ?? null,
      lines: shiftLines(this.log),
      windowLines: this.#windowOf(window)?.lines ?? [],
      cutOffs: result.cutOffs,
      state: shiftState(this.log),
      readonly: this.readonly,
      record: (what) => this.dispatchEvent(new HandbackRecordEvent({ ...what, window })),
      write: (entry) => this.dispatchEvent(new HandbackEntryEvent({ ...entry, window })),
      files: {
        readonly: this.readonly,
        log: this.log,
        window,
        start: this.#windowOf(window)?.start ?? null,
        said: this.#said.window === window ? this.#said.lines : [],
        send: (event) => this.dispatchEvent(event),
        say: (lines) => {
          this.#said = { window, lines };
          this.requestUpdate();
        },
      },
    });
  }

  /** A chart draws anew only for another result or other words. */
  #chartOf(result: HandbackResult, { zone, strings }: Setting<HandbackStrings>): ChartShown | null {
    if (this.#chart?.result !== result || this.#chart.strings !== strings)
      this.#chart = { result, strings, shown: endChart(result, zone, strings) };
    return this.#chart.shown;
  }

  #renderResult(result: HandbackResult, strings: HandbackStrings): TemplateResult {
    const window = this.#windowOf(result.window);
    const setting = { zone: this.#zoneOf(result), strings };
    const { simulation: run } = result;
    const { width } = this.#picture;
    const ask = (figure: Figure): boolean => this.dispatchEvent(new FigureAskEvent(figure));
    return html`<article aria-label="${result.window} ${titleText(window?.title ?? '')}">
      <header>
        <h2>${result.window} ${titleText(window?.title ?? '')}</h2>
        <p class="quiet">
          ${window ? stretchText(window.start, window.end, window.zone) : strings.noZone}
        </p>
        ${run.stopped ? html`<p class="warned">${strings.stopped(numberText(run.runs))}</p>` : nothing}
      </header>
      <section class="end">
        <h3>${strings.end}</h3>
        <p class="quiet">
          ${strings.handedBack}, ${strings.madeWith(numberText(run.runs), run.seed)}
        </p>
        ${result.live ? html`<p class="quiet">${strings.forecastRuns(exactClock(result.live.at, setting.zone))}</p>` : nothing}
        <div class="end-parts">
          <div class="end-picture">
            <possession-chart .shown=${this.#chartOf(result, setting)}
              >${barTable(result, setting)}</possession-chart
            >
            <div class="end-strip">${endPicture(result, setting, width)}</div>
          </div>
          <div class="end-tables">${endTables(result, setting, ask)}</div>
        </div>
      </section>
      ${leftOpenList(result, strings)}
      <div class="tables">
        ${cutOffTable(result, setting, ask)}
        ${
          this.now === null
            ? nothing
            : html`<button type="button" class="calendar" @click=${() => void this.#saveCalendar()}>
                  ${strings.saveCalendar}
                </button>
                <p class="problem" role="alert">
                  ${this.#calendarTrouble && strings.noCalendar(this.#calendarTrouble)}
                </p>`
        }
        ${decisionTable(result, setting, ask)} ${goPointTable(result, setting)}
        ${
          this.decisions && window
            ? changing(
                this.readonly,
                decisionForm(result, window, this.decisions, setting, (decisions) =>
                  this.dispatchEvent(new DecisionsChangeEvent(decisions)),
                ),
              )
            : nothing
        }
        ${unitTables(result, strings)} ${helpsTable(result, strings)}
        ${criticalityTable(result, strings)}
      </div>
    </article>`;
  }

  /** What makes the file is loaded when the first is asked for; the file holds what stood there then. */
  async #saveCalendar(): Promise<void> {
    const { results, windows, now, plan } = this;
    if (now === null) return;
    const about = plan === '' ? undefined : this.#words.now.planOfWork(plan);
    try {
      const [{ cutOffCalendarIn }] = await Promise.all([
        import('../../src/engine/handback/cut-off-events.js'),
        this.#words.speaking(() => loadSentences()),
      ]);
      this.#calendarTrouble = '';
      const text = this.#words.speaking(() =>
        cutOffCalendarIn(saidText, results, windows, now, about),
      );
      this.dispatchEvent(new CalendarSaveEvent(text));
    } catch (error) {
      this.#calendarTrouble = wordsOf(error);
    }
    this.requestUpdate();
  }

  #windowOf(id: string): AccessWindow | undefined {
    return this.windows.find((window) => window.id === id);
  }

  #zoneOf(result: HandbackResult): string {
    return this.#windowOf(result.window)?.zone ?? 'UTC';
  }

  #select(id: string): void {
    if (id === this.selectedWindow) return;
    this.selectedWindow = id;
    this.dispatchEvent(new WindowSelectEvent(id));
  }

  readonly #onClick = (event: Event): void => {
    const row = (event.target as Element).closest<HTMLElement>('[data-id]');
    if (!row) return;
    row.focus();
    this.#select(row.dataset['id'] ?? '');
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const found = this.results.findIndex((result) => result.window === this.selectedWindow);
    const last = this.results.length - 1;
    const moves: Record<string, number> = {
      ArrowUp: Math.max(0, found - 1),
      ArrowDown: Math.min(last, found + 1),
      Home: 0,
      End: last,
      Enter: Math.max(0, found),
      ' ': Math.max(0, found),
    };
    const to = this.results[moves[event.key] ?? -1];
    if (!to) return;
    event.preventDefault();
    this.#select(to.window);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('[role=option][aria-selected=true]')?.focus(),
    );
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-handback': PossessionHandback;
  }
}
