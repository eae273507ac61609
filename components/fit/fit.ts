import {
  html,
  LitElement,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { PackageSummary } from '../../src/engine/types.js';
import type { FitVerdict } from '../../src/fit/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { clockText, countText, dayText } from '../shared/format.js';
import { gridMove } from '../shared/grid-keys.js';
import { FitSelectEvent } from './fit-select-event.js';
import { styles } from './fit.styles.js';
import { isNearMiss, verdictKind, verdictMark, verdictText } from './verdict-mark.js';

/** Beyond this many pairs the calculation gives no verdicts at all. */
const MOST_PAIRS = 200_000;

/**
 * Every package against every window: spare time, or what is missing.
 *
 * Keyboard: ARIA grid pattern, one tab stop, selection by Enter, Space or click.
 * @summary Which work fits which window, by how much.
 * @tag possession-fit
 * @event {FitSelectEvent} possession-fit-select - A reader picks a package against a window.
 * @csspart cell - One verdict.
 */
export class PossessionFit extends LitElement {
  static override readonly styles = [...base, styles];
  static override readonly properties: PropertyDeclarations = {
    packages: { attribute: false },
    windows: { attribute: false },
    fits: { attribute: false },
    selected: { attribute: false },
  };

  declare packages: readonly PackageSummary[];
  declare windows: readonly AccessWindow[];
  declare fits: readonly FitVerdict[];
  /** The cell picked; null: none. */
  declare selected: { readonly package: string; readonly window: string } | null;

  #verdicts = new Map<string, FitVerdict>();
  #at = { row: 0, column: 0 };

  constructor() {
    super();
    this.packages = [];
    this.windows = [];
    this.fits = [];
    this.selected = null;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('fits'))
      this.#verdicts = new Map(
        this.fits.map((one) => [JSON.stringify([one.package, one.window]), one]),
      );
    if (changed.has('selected') && this.selected) {
      const row = this.packages.findIndex((one) => one.id === this.selected?.package);
      const column = this.windows.findIndex((one) => one.id === this.selected?.window);
      if (row >= 0 && column >= 0) this.#at = { row, column };
    }
    this.#at = {
      row: Math.max(0, Math.min(this.#at.row, this.packages.length - 1)),
      column: Math.max(0, Math.min(this.#at.column, this.windows.length - 1)),
    };
  }

  override render(): TemplateResult {
    if (this.packages.length === 0 || this.windows.length === 0)
      return html`<p class="key">Nothing to compare yet: the map needs windows and work.</p>`;
    const pairs = this.packages.length * this.windows.length;
    if (this.fits.length === 0 && pairs > MOST_PAIRS)
      return html`<p class="key">
        No verdicts: ${this.packages.length} packages against ${this.windows.length} windows are
        more than ${MOST_PAIRS} pairs. Split the plan to compare them.
      </p>`;
    return html`<ul class="key" aria-label="Key">
        <li class="good">${verdictMark('fits')} fits, usable time to spare</li>
        <li class="bad">
          ${verdictMark('short')} does not fit, time short; shaded when by an hour or less
        </li>
        <li>
          ${verdictMark('never')} cannot be done there, however long; the reason stands in the cell
        </li>
        <li>Each package on its own, required margin held</li>
      </ul>
      <div class="map">
        <table
          role="grid"
          aria-label="Packages against windows"
          aria-rowcount=${this.packages.length + 1}
          aria-colcount=${this.windows.length + 1}
          @keydown=${this.#onKey}
          @click=${this.#onClick}
        >
          <thead>
            <tr role="row">
              <th role="columnheader" scope="col">Package</th>
              ${this.windows.map(
                (one) =>
                  html`<th role="columnheader" scope="col" class=${one.status} title=${one.title}>
                    <strong>${one.id}</strong>${dayText(one.start, one.zone)}<br />${clockText(
                      one.start,
                      one.zone,
                    )}&ndash;${clockText(one.end, one.zone)}
                  </th>`,
              )}
            </tr>
          </thead>
          <tbody>
            ${this.packages.map((pack, row) => this.#renderRow(pack, row))}
          </tbody>
        </table>
      </div>`;
  }

  #renderRow(pack: PackageSummary, row: number): TemplateResult {
    return html`<tr role="row">
      <th role="rowheader" scope="row">
        <strong>${pack.id}</strong>
        <span class="quiet"
          >${durationText(pack.minutes)} in ${countText(pack.activities.length, 'piece')}</span
        >
      </th>
      ${this.windows.map((one, column) => this.#renderCell(pack, one, row, column))}
    </tr>`;
  }

  #renderCell(
    pack: PackageSummary,
    window: AccessWindow,
    row: number,
    column: number,
  ): TemplateResult {
    const verdict = this.#verdicts.get(JSON.stringify([pack.id, window.id]));
    const chosen = this.selected?.package === pack.id && this.selected.window === window.id;
    const here = this.#at.row === row && this.#at.column === column;
    const kind = verdict ? verdictKind(verdict) : 'never';
    const text = verdict ? verdictText(verdict) : { amount: 'not', word: 'read' };
    return html`<td
      part="cell"
      role="gridcell"
      class="${kind} ${verdict && isNearMiss(verdict) ? 'near' : ''}"
      data-row=${row}
      data-column=${column}
      tabindex=${here ? 0 : -1}
      aria-selected=${chosen}
      title=${verdict?.reasons.map((one) => one.text).join(' ') ?? ''}
    >
      <span class="amount">${verdictMark(kind)}${text.amount}</span>
      <span class="word">${text.word}</span>
    </td>`;
  }

  #focusCell(): void {
    void this.updateComplete.then(() => {
      const cell = this.renderRoot.querySelector<HTMLElement>('td[tabindex="0"]');
      cell?.focus();
      cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    });
  }

  #select(): void {
    const pack = this.packages[this.#at.row];
    const window = this.windows[this.#at.column];
    if (!pack || !window) return;
    this.selected = { package: pack.id, window: window.id };
    this.dispatchEvent(new FitSelectEvent(pack.id, window.id));
  }

  readonly #onClick = (event: Event): void => {
    const cell = (event.target as Element).closest<HTMLElement>('td');
    if (!cell) return;
    this.#at = { row: Number(cell.dataset['row']), column: Number(cell.dataset['column']) };
    this.#select();
    this.#focusCell();
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const size = { rows: this.packages.length, columns: this.windows.length };
    const to = gridMove(event, this.#at, size);
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

declare global {
  interface HTMLElementTagNameMap {
    'possession-fit': PossessionFit;
  }
}
