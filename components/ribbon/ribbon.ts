import {
  html,
  LitElement,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import { MINUTE, startOfLocalDay, weekdayOf } from '../../src/calendar/index.js';
import { Fed } from '../document/fed.js';
import { base } from '../shared/base.js';
import { dateText } from '../shared/format.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { bringIntoSight, SightWatch } from '../shared/in-sight.js';
import { kindPatterns, kindStyles, kindSwatch, ledgerKinds } from '../shared/kinds.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { placed } from '../shared/placed.js';
import { PrintWatch } from '../shared/print-watch.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { WidthWatch } from '../shared/width-watch.js';
import { Words } from '../shared/words.js';
import { piecesOf } from './lines.js';
import { ListKeys } from './list-keys.js';
import { axis } from './picture.js';
import { printedRibbon } from './printed.js';
import { styles } from './ribbon.styles.js';
import { RowsInSight } from './rows-in-sight.js';
import { emptyFrame, frameOf, lineHeight, Scale } from './scale.js';
import { defaultStrings, type RibbonStrings } from './strings.js';
import { windowRow } from './window-row.js';
import { WindowSelectEvent } from './window-select-event.js';
import { windowTable } from './window-table.js';
import { laneCount, type WindowWork } from './work.js';

/** Width of the drawing on paper, beside names and usable time. */
const ON_PAPER = PORTRAIT - 300;

/**
 * Windows drawn along elapsed time from noon to noon, so that nights stand under each other and a long closure folds
 * into one line a day. A night on which clocks go forward is an hour shorter here, because it is. Of more than 60
 * windows only those in sight are drawn, in whatever scrolls the element; on paper all are.
 *
 * Keyboard: ARIA listbox pattern (arrows, Home, End, the first letters of a name, and page keys in a long list; the
 * selection follows the focus).
 * @summary One row a window, with its ledger drawn in time.
 * @tag possession-ribbon
 * @event {WindowSelectEvent} possession-window-select - A reader picks a window.
 * @csspart row - One window.
 * @csspart cautions - The cautions, seen in print.
 */
export class PossessionRibbon extends LitElement {
  static override readonly styles = [
    ...base,
    kindStyles,
    cautionStyles,
    styles,
    rightToLeft,
    paper,
  ];
  static override readonly properties: PropertyDeclarations = {
    windows: { attribute: false },
    ledgers: { attribute: false },
    work: { attribute: false },
    byWeek: { type: Boolean, attribute: 'by-week' },
    selected: { type: String, reflect: true },
    asTable: { type: Boolean, attribute: 'as-table' },
    strings: { attribute: false },
  };

  declare windows: readonly AccessWindow[];
  /** Matched to the windows by id; a window without one is drawn as an outline. */
  declare ledgers: readonly Ledger[];
  /** Work planned in the windows; null: no plan, so the usable time is shown instead. */
  declare work: readonly WindowWork[] | null;
  /** Marks the first window of each week, if windows are in time order. */
  declare byWeek: boolean;
  /** Id of the selected window; empty: none. Setting it scrolls the window into view within a scrolling ancestor. */
  declare selected: string;
  /** Shows the same figures as a table. */
  declare asTable: boolean;
  /** Words to use in place of the element's own. */
  declare strings: Partial<RibbonStrings>;

  readonly #words = new Words<RibbonStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });
  #ledgers = new Map<string, Ledger>();
  #work: ReadonlyMap<string, WindowWork> = new Map();
  #weeks: readonly string[] = [];
  #weeksIn: RibbonStrings = defaultStrings;
  /** Key of each row between renders: its id, or its index when the id is not unique. */
  #names: readonly string[] = [];
  #frame = emptyFrame;
  #scale = new Scale(720, emptyFrame);
  #brought = '';
  /** Whether the surrounding document has been calculated. */
  #given = false;
  readonly #rows = new RowsInSight(this);
  readonly #keys = new ListKeys();
  readonly #drawing = new WidthWatch(this, '.axis .drawing', 720);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.windows = [];
    this.ledgers = [];
    this.work = null;
    this.byWeek = false;
    this.selected = '';
    this.asTable = false;
    this.strings = {};
    new SightWatch(this, () => this.#look());
    new Fed(this, ({ outline, selected }) => {
      this.#given = outline !== null;
      this.windows = outline?.plan.windows ?? [];
      this.ledgers = outline?.ledgers ?? [];
      this.selected = selected.window;
    });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('ledgers'))
      this.#ledgers = new Map(this.ledgers.map((ledger) => [ledger.window, ledger]));
    if (changed.has('windows')) {
      this.#frame = frameOf(this.windows.flatMap(piecesOf));
      this.#names = namesOf(this.windows);
    }
    if (changed.has('work'))
      this.#work = new Map(this.work?.map((work) => [work.window, work]) ?? []);
    const { now } = this.#words;
    if (changed.has('windows') || changed.has('byWeek') || this.#weeksIn !== now) {
      this.#weeks = this.byWeek ? this.#words.speaking(() => weeksOf(this.windows, now)) : [];
      this.#weeksIn = now;
    }
    if (changed.has('windows') || changed.has('asTable') || changed.has('work'))
      this.#rows.take(this.windows, this.asTable, (window) =>
        lineHeight(laneCount(this.#work.get(window.id))),
      );
    const scale = new Scale(this.#print.printing ? ON_PAPER : this.#drawing.width, this.#frame);
    if (!scale.equals(this.#scale)) this.#scale = scale;
  }

  protected override updated(): void {
    this.#look();
    if (this.selected === this.#brought) return;
    const row = this.#row(this.selected);
    if (this.selected !== '' && !row) return;
    this.#brought = this.selected;
    if (row) bringIntoSight(row, { block: this.#rows.covered, inline: 0 });
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    if (this.windows.length === 0 && !this.#isReading)
      return html`<p class="empty">${words.empty}</p>`;
    return html`<svg class="unseen" width="0" height="0" aria-hidden="true">${kindPatterns}</svg>
      <div class="top">
        <ul class="key" aria-label=${words.key}>
          ${ledgerKinds.map(
            (kind) =>
              html`<li>
                <svg width="16" height="12" aria-hidden="true">${kindSwatch(kind)}</svg
                >${words.kind[kind]}
              </li>`,
          )}
        </ul>
        <button
          type="button"
          class="on-screen"
          aria-pressed=${this.asTable}
          @click=${() => {
            this.asTable = !this.asTable;
          }}
        >
          ${this.asTable ? words.asPicture : words.asTable}
        </button>
      </div>
      ${
        this.asTable
          ? windowTable(
              this.windows,
              this.#ledgers,
              words,
              this.#print.printing ? null : this.#rows,
            )
          : this.#print.printing
            ? printedRibbon(this.windows, this.#ledgers, this.#scale, words, this.#work)
            : this.#renderPicture()
      }
      <div class="on-paper">${cautionList(words.cautions, words.cautionLines)}</div>`;
  }

  /** Selects a window and scrolls it into view, page included. Sends no event. */
  goTo(window: string): void {
    this.selected = window;
    void this.updateComplete.then(() => this.#row(window)?.scrollIntoView({ block: 'nearest' }));
  }

  #renderPicture(): TemplateResult {
    const words = this.#words.now;
    const chosen = this.#chosen;
    const rows = this.#rows;
    return html`<div class="axis" aria-hidden="true">
        <span>${words.axis}</span>
        <div class="drawing">${axis(this.#scale)}</div>
        <span class="figure">${words.usable}</span>
      </div>
      <div
        role="listbox"
        class="rows ${rows.many ? 'many' : ''}"
        aria-label=${words.list}
        @keydown=${this.#onKey}
        @click=${this.#onClick}
        ${placed(rows.many ? 0 : undefined, rows.total)}
      >
        ${repeat(
          rows.places(Math.max(0, chosen)),
          (place) => this.#names[place],
          (place) => this.#renderRow(place, chosen),
        )}
      </div>`;
  }

  /** Renders again only when something in the row changed. */
  #renderRow(at: number, chosen: number): unknown {
    const window = this.windows[at]!;
    const ledger = this.#ledgers.get(window.id);
    const place = this.#rows.placeOf(at);
    const look = {
      chosen: window.id === this.selected,
      reachable: chosen < 0 ? at === 0 : window.id === this.selected,
      scale: this.#scale,
      words: this.#words.now,
      work: this.work ? (this.#work.get(window.id) ?? noWork) : undefined,
      week: this.#weeks[at] ?? '',
    };
    return guard([window, ledger, ...Object.values(look), ...Object.values(place ?? {})], () =>
      windowRow(window, ledger, { ...look, place }),
    );
  }

  /** Until the surrounding document is read, it is unknown whether it has windows. */
  get #isReading(): boolean {
    return !this.#given && this.closest('possession-document') !== null;
  }

  get #chosen(): number {
    return this.windows.findIndex((window) => window.id === this.selected);
  }

  #row(window: string): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>(`[data-id="${CSS.escape(window)}"]`);
  }

  #look(): void {
    if (!this.#print.printing && this.#rows.look()) this.requestUpdate();
  }

  /** The selected window may be selected again, as a listener may have closed its details. */
  #select(id: string): void {
    this.selected = id;
    this.dispatchEvent(new WindowSelectEvent(id));
  }

  readonly #onClick = (event: Event): void => {
    const row = (event.target as Element).closest<HTMLElement>('[data-id]');
    if (!row) return;
    row.focus();
    this.#select(row.dataset['id'] ?? '');
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const at = Math.max(0, this.#chosen);
    const to = this.windows[this.#keys.to(event, at, this.windows, this.#rows.page) ?? -1];
    if (!to) return;
    event.preventDefault();
    this.#select(to.id);
    void this.updateComplete.then(() => {
      const row = this.renderRoot.querySelector<HTMLElement>('[role=option][aria-selected=true]');
      row?.focus({ preventScroll: true });
      row?.scrollIntoView({ block: 'nearest' });
    });
  };
}

const noWork: WindowWork = { window: '', pieces: [], outcome: '' };

/** `w/c 1 Mar` for the first window of each week from Monday on, else empty. */
function weeksOf(windows: readonly AccessWindow[], words: RibbonStrings): string[] {
  let last = '';
  return windows.map(({ start, zone }) => {
    const monday = startOfLocalDay(start, zone, 1 - weekdayOf(start, zone));
    const week = words.weekFrom(dateText(monday + 12 * 60 * MINUTE, zone));
    const first = week !== last;
    last = week;
    return first ? week : '';
  });
}

function namesOf(windows: readonly AccessWindow[]): string[] {
  const seen = new Set<string>();
  return windows.map(({ id }, at) => {
    if (seen.has(id)) return `${id} ${at}`;
    seen.add(id);
    return id;
  });
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-ribbon': PossessionRibbon;
  }
}
