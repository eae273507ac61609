import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { PackageSummary } from '../../src/engine/types.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import { Fed } from '../document/fed.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { gridMove, turnedKey } from '../shared/grid-keys.js';
import { SightWatch } from '../shared/in-sight.js';
import { paper } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { Words } from '../shared/words.js';
import { FitSelectEvent } from './fit-select-event.js';
import { styles } from './fit.styles.js';
import { Amounts, MOST_PAIRS } from './amounts.js';
import { asPlanned, goesFirst, type MapOrder } from './goes-first.js';
import { MapView, type MapData } from './map-view.js';
import { printedMap } from './printed.js';
import { defaultStrings, type FitStrings } from './strings.js';
import { VerdictIndex } from './verdict-index.js';
import { verdictMark } from './verdict-mark.js';

/**
 * Every package against every window: spare time, or what is missing. Only the cells in sight are drawn, and only what
 * is in sight is worked out; on paper all are, in a part where they are too many.
 *
 * Keyboard: ARIA grid pattern, one tab stop, selection by Enter, Space or click.
 * @summary Which work fits which window, by how much.
 * @tag possession-fit
 * @event {FitSelectEvent} possession-fit-select - A reader picks a package against a window.
 * @csspart cell - One verdict.
 * @csspart cautions - The cautions, seen in print.
 */
export class PossessionFit extends LitElement {
  static override readonly styles = [...base, cautionStyles, styles, rightToLeft, paper];
  static override readonly properties: PropertyDeclarations = {
    packages: { attribute: false },
    windows: { attribute: false },
    fits: { attribute: false },
    selected: { attribute: false },
    goesFirst: { type: Boolean, attribute: 'goes-first', reflect: true },
    strings: { attribute: false },
  };

  declare packages: readonly PackageSummary[];
  declare windows: readonly AccessWindow[];
  /** Quickest by packages, then windows, in the order of both. */
  declare fits: readonly FitVerdict[];
  /** The cell picked; null: none. Setting it shows the cell within the map. */
  declare selected: { readonly package: string; readonly window: string } | null;
  /** Shows first what can go first, in place of the order of the plan. */
  declare goesFirst: boolean;
  /** Words to use in place of the element's own. */
  declare strings: Partial<FitStrings>;

  readonly #words = new Words<FitStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  #order: MapOrder = asPlanned(0, 0);
  #rows: readonly PackageSummary[] = [];
  #columns: readonly AccessWindow[] = [];
  #book = new VerdictIndex([], [], []);
  #at = { row: 0, column: 0 };
  #chosen = { row: -1, column: -1 };
  #view: MapView | undefined;
  readonly #print = new PrintWatch(this, () => this.performUpdate());
  readonly #amounts = new Amounts(() => this.#layAgain());

  constructor() {
    super();
    this.packages = [];
    this.windows = [];
    this.fits = [];
    this.selected = null;
    this.goesFirst = false;
    this.strings = {};
    new SightWatch(this, () => this.#view?.look());
    new Fed(this, ({ results, selected }) => {
      this.packages = results?.packages ?? [];
      this.windows = results?.plan.windows ?? [];
      this.fits = results?.fits ?? [];
      this.selected = selected.package === '' ? null : selected;
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#layAgain();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#amounts.stop();
    this.#view?.dispose();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const others = changed.has('packages') || changed.has('windows') || changed.has('goesFirst');
    if (others || (changed.has('fits') && this.goesFirst)) this.#lay();
    if (others || changed.has('fits'))
      this.#book = new VerdictIndex(
        this.fits,
        this.packages,
        this.windows,
        this.#order.rows,
        this.#order.columns,
      );
    if (others || changed.has('fits') || changed.has('selected'))
      this.#chosen = {
        row: this.#rows.findIndex((row) => row.id === this.selected?.package),
        column: this.#columns.findIndex((column) => column.id === this.selected?.window),
      };
    if ((changed.has('selected') || changed.has('goesFirst')) && this.#isChosen)
      this.#at = this.#chosen;
    this.#at = {
      row: Math.max(0, Math.min(this.#at.row, this.packages.length - 1)),
      column: Math.max(0, Math.min(this.#at.column, this.windows.length - 1)),
    };
  }

  #layAgain(): void {
    this.requestUpdate('goesFirst', undefined);
  }

  /** What the order goes by. */
  #orderText(): string {
    const words = this.#words.now;
    if (this.fits.length > MOST_PAIRS) return words.tooManyPairs(this.fits.length);
    return this.#amounts.knows(this.fits) ? words.byAmount : words.amountsComing;
  }

  /** Puts packages and windows in the order asked for. */
  #lay(): void {
    const [rows, columns] = [this.packages.length, this.windows.length];
    if (this.goesFirst) this.#amounts.look(this.fits);
    this.#order = this.goesFirst
      ? goesFirst(this.fits, rows, columns, this.#amounts.knows(this.fits))
      : asPlanned(rows, columns);
    this.#rows = this.goesFirst ? this.#order.rows.map((at) => this.packages[at]!) : this.packages;
    this.#columns = this.goesFirst
      ? this.#order.columns.map((at) => this.windows[at]!)
      : this.windows;
  }

  protected override updated(changed: PropertyValues<this>): void {
    const scroller = this.renderRoot.querySelector<HTMLElement>('.map') ?? undefined;
    if (this.#view?.scroller !== scroller) {
      this.#view?.dispose();
      this.#view = scroller && new MapView(scroller, (work) => this.#words.speaking(work));
    }
    this.#view?.update(this.#data);
    if (changed.has('selected') && this.#isChosen) this.#view?.bring(this.#chosen);
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const pairs = this.packages.length * this.windows.length;
    if (pairs === 0) return html`<p class="key">${words.nothing}</p>`;
    if (this.fits.length === 0)
      return html`<p class="key">
        ${words.notWorkedOut(this.packages.length, this.windows.length)}
      </p>`;
    return html`<div class="bar on-screen">
        <span id="order">${words.order}</span>
        <div class="choice" role="group" aria-labelledby="order">
          ${[false, true].map(
            (first) =>
              html`<button
                type="button"
                aria-pressed=${first === this.goesFirst}
                @click=${() => {
                  this.goesFirst = first;
                }}
              >
                ${first ? words.goesFirst : words.asPlanned}
              </button>`,
          )}
        </div>
        <span role="status">${this.goesFirst ? this.#orderText() : nothing}</span>
      </div>
      <ul class="key" aria-label=${words.key}>
        <li class="good">${verdictMark('fits')} ${words.fits}</li>
        <li>${verdictMark('part')} ${words.part}</li>
        <li class="bad">
          ${verdictMark('short')}<span
            >${words.short} <span class="on-screen">${words.near}</span
            ><span class="on-paper">${words.nearOnPaper}</span></span
          >
        </li>
        <li>${verdictMark('never')} ${words.never}</li>
        <li>${words.alone}</li>
      </ul>
      <div class="map on-screen">
        <table
          role="grid"
          aria-label=${words.map}
          aria-rowcount=${this.packages.length + 1}
          aria-colcount=${this.windows.length + 1}
          @keydown=${this.#onKey}
          @click=${this.#onClick}
          @pointerover=${this.#onAsked}
          @focusin=${this.#onAsked}
        >
          <thead role="rowgroup">
            <tr role="row" aria-rowindex="1">
              <th role="columnheader" scope="col" class="corner" aria-colindex="1">
                ${words.package}
              </th>
            </tr>
          </thead>
          <tbody role="rowgroup"></tbody>
        </table>
      </div>
      ${this.#print.printing ? printedMap(this.#data, this.#view?.firstColumn ?? 0) : nothing}
      <div class="on-paper">${cautionList(words.cautions, words.cautionLines)}</div>`;
  }

  get #data(): MapData {
    return {
      packages: this.#rows,
      windows: this.#columns,
      book: this.#book,
      chosen: this.#isChosen ? this.#chosen : { row: -1, column: -1 },
      at: this.#at,
      words: this.#words.now,
    };
  }

  get #isChosen(): boolean {
    return this.#chosen.row >= 0 && this.#chosen.column >= 0;
  }

  #focusCell(): void {
    void this.updateComplete.then(() => this.#view?.focus(this.#at));
  }

  #select(): void {
    const pack = this.#rows[this.#at.row];
    const window = this.#columns[this.#at.column];
    if (!pack || !window) return;
    this.selected = { package: pack.id, window: window.id };
    this.dispatchEvent(new FitSelectEvent(pack.id, window.id));
  }

  readonly #onClick = (event: Event): void => {
    const at = placeOf(event);
    if (!at) return;
    this.#at = at;
    this.#select();
    this.#focusCell();
  };

  /** The reasons in whole sentences, only once someone points at a cell or comes to it. */
  readonly #onAsked = (event: Event): void => {
    const at = placeOf(event);
    if (at) this.#words.speaking(() => this.#view?.cell(at.row, at.column)?.explain());
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const size = {
      rows: this.packages.length,
      columns: this.windows.length,
      page: this.#view?.page ?? 1,
    };
    const to = gridMove(turnedKey(event, event.currentTarget as Element), this.#at, size);
    if (to) {
      event.preventDefault();
      this.#at = to;
      this.requestUpdate();
      this.#focusCell();
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.#select();
    }
  };
}

function placeOf(event: Event): { row: number; column: number } | undefined {
  const cell = (event.target as Element).closest<HTMLElement>('td[data-row]');
  if (!cell) return undefined;
  return { row: Number(cell.dataset['row']), column: Number(cell.dataset['column']) };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-fit': PossessionFit;
  }
}
