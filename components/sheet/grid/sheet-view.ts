import type { GridCell } from '../../shared/grid-keys.js';
import { RowPool, type DrawnPart } from './row-pool.js';
import {
  columnsInView,
  HEAD_HEIGHT,
  ROW_HEIGHT,
  rowsInView,
  TOUCH_ROW_HEIGHT,
} from './sheet-layout.js';
import type { SheetState } from '../sheet-state.js';

/** Pause after scrolling before rows are put into reading order, in milliseconds. */
const SCROLL_PAUSE = 200;
/** The first column is frozen only up to this share of the width. */
const FROZEN_SHARE = 0.6;

/** The scrolling part of the sheet: draws the visible rows and scrolls cells into view. */
export class SheetView {
  readonly scroller: HTMLElement;
  readonly pool: RowPool;
  readonly #state: SheetState;
  readonly #canvas: HTMLElement;
  readonly #observer: ResizeObserver;
  #rest: ReturnType<typeof setTimeout> | undefined;
  #columns = '';
  #height = 0;
  #width = 0;
  #kept: GridCell | undefined;
  #readonly = false;
  #version = 0;

  constructor(scroller: HTMLElement, state: SheetState) {
    this.scroller = scroller;
    this.#state = state;
    this.#canvas = scroller.querySelector<HTMLElement>('.canvas')!;
    this.pool = new RowPool(scroller.querySelector<HTMLElement>('.body')!);
    scroller.addEventListener('scroll', this.#onScroll, { passive: true });
    this.#observer = new ResizeObserver(() => {
      this.#measure();
      this.draw();
    });
    this.#observer.observe(scroller);
    this.#measure();
  }

  dispose(): void {
    this.#observer.disconnect();
    clearTimeout(this.#rest);
    this.scroller.removeEventListener('scroll', this.#onScroll);
  }

  get rowHeight(): number {
    return matchMedia('(pointer: coarse)').matches ? TOUCH_ROW_HEIGHT : ROW_HEIGHT;
  }

  /** Rows a page key moves by. */
  get page(): number {
    return Math.max(1, Math.floor((this.#height - HEAD_HEIGHT) / this.rowHeight) - 1);
  }

  /** Draws all changes. `kept`: the cell being edited. */
  update(kept: GridCell | undefined, readonly: boolean): void {
    this.#version += 1;
    this.#kept = kept;
    this.#readonly = readonly;
    const columns = this.#template();
    if (columns !== this.#columns) {
      this.#columns = columns;
      this.#canvas.style.setProperty('--columns', columns);
      this.#canvas.style.setProperty('--gutter', `${this.#gutter}px`);
      this.scroller.classList.toggle('thawed', this.#frozen === this.#gutter);
    }
    const height = `${this.#state.size.rows * this.rowHeight}px`;
    this.#canvas.style.setProperty('--rows', height);
    this.draw();
  }

  draw(): void {
    const { pool, scroller } = this;
    pool.draw(this.#state, this.#part(), this.#kept, this.#readonly);
    const { row, column } = this.#state.at;
    const cell = pool.cell(row, column);
    if (cell) {
      if (scroller.getAttribute('aria-activedescendant') !== cell.id)
        scroller.setAttribute('aria-activedescendant', cell.id);
    } else scroller.removeAttribute('aria-activedescendant');
  }

  /** Scrolls as little as needed to show the whole cell, clear of headings and frozen columns. */
  show({ row, column }: GridCell): void {
    const { scroller, rowHeight } = this;
    const top = row * rowHeight;
    const room = scroller.clientHeight - HEAD_HEIGHT;
    if (top < scroller.scrollTop) scroller.scrollTop = top;
    else if (top + rowHeight > scroller.scrollTop + room)
      scroller.scrollTop = top + rowHeight - room;
    this.#showColumn(column);
    this.draw();
  }

  toTop(): void {
    this.scroller.scrollTo(0, 0);
  }

  #showColumn(column: number): void {
    const { scroller } = this;
    const sign = getComputedStyle(scroller).direction === 'rtl' ? -1 : 1;
    const widths = this.#widths;
    const start = this.#gutter + widths.slice(0, column).reduce((sum, value) => sum + value, 0);
    const end = start + (widths[column] ?? 0);
    const at = Math.abs(scroller.scrollLeft);
    if (column === 0 || start - this.#frozen < at)
      scroller.scrollLeft = sign * Math.max(0, start - this.#frozen);
    else if (end > at + scroller.clientWidth)
      scroller.scrollLeft = sign * Math.min(end - scroller.clientWidth, start - this.#frozen);
  }

  get #widths(): number[] {
    const { shown, widths } = this.#state.columns;
    return shown.map((column) => widths[column]!);
  }

  get #gutter(): number {
    const last = this.#state.lines.of(this.#state.table.rows.length - 1);
    return Math.max(2, String(last).length) * 7 + 20;
  }

  /** Width of the frozen columns, in pixels. */
  get #frozen(): number {
    const both = this.#gutter + (this.#widths[0] ?? 0);
    return both > this.#width * FROZEN_SHARE ? this.#gutter : both;
  }

  #template(): string {
    const widths = this.#widths;
    const last = widths.length - 1;
    const tracks = widths.map((width, at) =>
      at === last ? `minmax(${width}px, 1fr)` : `${width}px`,
    );
    return [`${this.#gutter}px`, ...tracks].join(' ');
  }

  #part(): DrawnPart {
    const { scroller, rowHeight } = this;
    const rows = rowsInView(scroller.scrollTop, this.#height, this.#state.size.rows, rowHeight);
    const columns = columnsInView(Math.abs(scroller.scrollLeft), this.#width, this.#widths);
    return {
      ...rows,
      firstColumn: columns.first,
      endColumn: columns.end,
      rowHeight,
      version: this.#version,
    };
  }

  #measure(): void {
    this.#height = this.scroller.clientHeight;
    this.#width = this.scroller.clientWidth;
    this.scroller.classList.toggle('thawed', this.#frozen === this.#gutter);
  }

  readonly #onScroll = (): void => {
    this.draw();
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => {
      if (!this.#kept) this.pool.settle();
    }, SCROLL_PAUSE);
  };
}
