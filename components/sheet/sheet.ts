import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Fault, TableText } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { countText } from '../shared/format.js';
import { gridMove, type GridCell } from '../shared/grid-keys.js';
import { CellSelectEvent } from './cell-select-event.js';
import { columnWidths, faultsByCell, HEAD_HEIGHT, ROW_HEIGHT, rowsInView } from './sheet-layout.js';
import { styles } from './sheet.styles.js';

/**
 * A table as it was typed, every column kept, with what is wrong marked in its cell.
 *
 * Keyboard: ARIA grid pattern with one tab stop; the focus stays on the grid and points at the current cell, so it
 * survives rows that are drawn and dropped while scrolling.
 * @summary A read-only sheet of any length.
 * @tag possession-sheet
 * @event {CellSelectEvent} possession-cell-select - A reader moves to a cell.
 * @csspart cell - One cell.
 */
export class PossessionSheet extends LitElement {
  static override readonly styles = [...base, styles];
  static override readonly properties: PropertyDeclarations = {
    table: { attribute: false },
    faults: { attribute: false },
    unread: { attribute: false },
    label: { type: String },
  };

  declare table: TableText;
  /** Those of this table; others are ignored. */
  declare faults: readonly Fault[];
  /** Columns that are kept but mean nothing to the plan. */
  declare unread: readonly string[];
  /** Accessible name; the file's name when empty. */
  declare label: string;

  #widths: number[] = [];
  #faults = new Map<number, Map<number, Fault[]>>();
  #at: GridCell = { row: 0, column: 0 };
  #view = { top: 0, height: 600 };
  #observer: ResizeObserver | undefined;

  constructor() {
    super();
    this.table = { file: '', columns: [], rows: [] };
    this.faults = [];
    this.unread = [];
    this.label = '';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer?.disconnect();
    this.#observer = undefined;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('table')) {
      this.#widths = columnWidths(this.table);
      if (changed.get('table')?.file !== this.table.file) this.#at = { row: 0, column: 0 };
    }
    if (changed.has('table') || changed.has('faults'))
      this.#faults = faultsByCell(
        this.faults.filter((one) => one.file === this.table.file),
        this.table.columns,
      );
  }

  protected override updated(changed: PropertyValues<this>): void {
    const scroller = this.#scroller;
    if (!scroller) return;
    const { first } = this.#range;
    const last = this.#widths.length - 1;
    const columns = this.#widths
      .map((width, column) => (column === last ? `minmax(${width}px, 1fr)` : `${width}px`))
      .join(' ');
    scroller.style.setProperty('--columns', columns);
    const canvas = scroller.querySelector<HTMLElement>('.canvas');
    canvas?.style.setProperty('height', `${HEAD_HEIGHT + this.table.rows.length * ROW_HEIGHT}px`);
    const body = scroller.querySelector<HTMLElement>('.body');
    body?.style.setProperty('transform', `translateY(${first * ROW_HEIGHT}px)`);
    if (changed.has('table') && changed.get('table')?.file !== this.table.file)
      scroller.scrollTo(0, 0);
    if (!this.#observer) {
      this.#observer = new ResizeObserver(() => this.#onScroll());
      this.#observer.observe(scroller);
    }
  }

  /** Index of the row that has the focus within the sheet. */
  get currentRow(): number {
    return this.#at.row;
  }

  /** Moves to a cell and shows it; the first column when the heading is not found. Sends nothing. */
  goTo(row: number, column = ''): void {
    const at = Math.max(0, this.table.columns.indexOf(column));
    this.#move({ row: Math.max(0, Math.min(row, this.table.rows.length - 1)), column: at });
  }

  override render(): TemplateResult {
    const { table } = this;
    if (table.columns.length === 0)
      return html`<p class="none">This table is empty. Import a file to fill it.</p>`;
    const { first, end } = this.#range;
    const shown = this.#at.row >= first && this.#at.row < end;
    return html`<div
        class="scroller"
        role="grid"
        tabindex="0"
        aria-label=${this.label || table.file}
        aria-readonly="true"
        aria-rowcount=${table.rows.length + 1}
        aria-colcount=${table.columns.length}
        aria-activedescendant=${shown ? `cell-${this.#at.row}-${this.#at.column}` : nothing}
        @scroll=${this.#onScroll}
        @keydown=${this.#onKey}
        @click=${this.#onClick}
      >
        <div class="canvas" role="presentation">
          <div class="row head" role="row" aria-rowindex="1">
            ${table.columns.map(
              (heading, column) =>
                html`<div role="columnheader" aria-colindex=${column + 1} title=${heading}>
                  ${heading}${
                    this.unread.includes(heading)
                      ? html`<span class="unread"> kept, not read</span>`
                      : nothing
                  }
                </div>`,
            )}
          </div>
          <div class="body" role="presentation">
            ${table.rows.slice(first, end).map((row, index) => this.#renderRow(row, first + index))}
          </div>
        </div>
      </div>
      ${this.#renderStatus()}`;
  }

  #renderRow(row: readonly string[], index: number): TemplateResult {
    return html`<div
      class="row ${index === this.#at.row ? 'chosen' : ''}"
      role="row"
      aria-rowindex=${index + 2}
    >
      ${this.table.columns.map((_, column) => this.#renderCell(row[column] ?? '', index, column))}
    </div>`;
  }

  #renderCell(value: string, row: number, column: number): TemplateResult {
    const faults = this.#faults.get(row)?.get(column);
    const here = this.#at.row === row && this.#at.column === column;
    const severity = faults?.some((one) => one.severity === 'error') ? 'error' : 'warning';
    return html`<div
      part="cell"
      id="cell-${row}-${column}"
      role=${column === 0 ? 'rowheader' : 'gridcell'}
      class="${faults ? `fault ${severity}` : ''} ${here ? 'at' : ''}"
      aria-colindex=${column + 1}
      aria-selected=${here}
      aria-invalid=${faults ? 'true' : nothing}
      data-row=${row}
      data-column=${column}
      title=${faults ? faults.map((one) => `${one.message} ${one.mend}`).join(' ') : value}
    >
      ${
        faults
          ? html`<span class="sign" aria-hidden="true">${severity === 'error' ? '✕ ' : '! '}</span
              ><span class="unseen">${severity}: </span>`
          : nothing
      }${value}
    </div>`;
  }

  #renderStatus(): TemplateResult {
    const { table } = this;
    const faults = this.#faults.get(this.#at.row)?.get(this.#at.column) ?? [];
    const rows = [...this.#faults.keys()].sort((a, b) => a - b);
    const next = rows.find((row) => row > this.#at.row) ?? rows[0];
    return html`<div class="status">
      <span>${table.file}, ${countText(table.rows.length, 'row')}</span>
      <span class="said" aria-live="polite"
        >${
          faults.length > 0
            ? faults.map(
                (one) =>
                  html`<span class="wrong">${one.severity === 'error' ? 'Not used' : 'Note'}:</span>
                    ${one.message} ${one.mend} `,
              )
            : html`${table.columns[this.#at.column]}:
              ${table.rows[this.#at.row]?.[this.#at.column] || 'empty'}`
        }</span
      >
      ${
        next === undefined
          ? html`<span>no faults</span>`
          : html`<button class="plain" type="button" @click=${() => this.#toFault(next)}>
              next of ${countText(rows.length, 'row')} with a fault
            </button>`
      }
    </div>`;
  }

  get #scroller(): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>('.scroller');
  }

  get #range(): { first: number; end: number } {
    return rowsInView(this.#view.top, this.#view.height, this.table.rows.length);
  }

  #toFault(row: number): void {
    const column = this.#faults.get(row)?.keys().next().value ?? 0;
    this.#move({ row, column });
    this.#scroller?.focus();
    this.#tell();
  }

  #tell(): void {
    const { row, column } = this.#at;
    const value = this.table.rows[row]?.[column] ?? '';
    this.dispatchEvent(new CellSelectEvent(row, this.table.columns[column] ?? '', value));
  }

  #move(to: GridCell): void {
    this.#at = to;
    const scroller = this.#scroller;
    if (scroller) {
      const top = to.row * ROW_HEIGHT;
      const room = scroller.clientHeight - HEAD_HEIGHT;
      if (top < scroller.scrollTop) scroller.scrollTop = top;
      else if (top + ROW_HEIGHT > scroller.scrollTop + room)
        scroller.scrollTop = top + ROW_HEIGHT - room;
      this.#showColumn(scroller, to.column);
      this.#view = { top: scroller.scrollTop, height: scroller.clientHeight };
    }
    this.requestUpdate();
  }

  #showColumn(scroller: HTMLElement, column: number): void {
    if (column === 0) {
      scroller.scrollLeft = 0;
      return;
    }
    const heads = scroller.querySelectorAll<HTMLElement>('.head > *');
    const head = heads[column];
    const pinned = heads[0]?.offsetWidth ?? 0;
    if (!head) return;
    if (head.offsetLeft - pinned < scroller.scrollLeft)
      scroller.scrollLeft = head.offsetLeft - pinned;
    else if (head.offsetLeft + head.offsetWidth > scroller.scrollLeft + scroller.clientWidth)
      scroller.scrollLeft = head.offsetLeft + head.offsetWidth - scroller.clientWidth;
  }

  readonly #onScroll = (): void => {
    const scroller = this.#scroller;
    if (!scroller) return;
    const before = this.#range;
    this.#view = { top: scroller.scrollTop, height: scroller.clientHeight };
    const after = this.#range;
    if (before.first !== after.first || before.end !== after.end) this.requestUpdate();
  };

  readonly #onClick = (event: Event): void => {
    const cell = (event.target as Element).closest<HTMLElement>('[data-row]');
    if (!cell) return;
    this.#move({ row: Number(cell.dataset['row']), column: Number(cell.dataset['column']) });
    this.#tell();
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const scroller = this.#scroller;
    const page = Math.max(1, Math.floor((scroller?.clientHeight ?? 300) / ROW_HEIGHT) - 2);
    const to = gridMove(event, this.#at, {
      rows: this.table.rows.length,
      columns: this.table.columns.length,
      page,
    });
    if (!to) return;
    event.preventDefault();
    this.#move(to);
    this.#tell();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-sheet': PossessionSheet;
  }
}
