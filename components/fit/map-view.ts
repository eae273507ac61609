import type { PackageSummary } from '../../src/engine/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { GridCell } from '../shared/grid-keys.js';
import { bringIntoSight, sightOf, type Sight } from '../shared/in-sight.js';
import { Pool } from '../shared/pool.js';
import { evenPlaces, placesWith, type Places } from '../shared/tracks.js';
import type { MapCell } from './map-cell.js';
import { MapHead, MapRow } from './map-row.js';
import { mapSize, packageText, type MapSize } from './map-size.js';
import { Settling } from './settling.js';
import type { FitStrings } from './strings.js';
import type { VerdictIndex } from './verdict-index.js';

/** What the map shows. */
export interface MapData {
  readonly packages: readonly PackageSummary[];
  readonly windows: readonly AccessWindow[];
  readonly book: VerdictIndex;
  /** The cell picked; -1 where none is. */
  readonly chosen: GridCell;
  /** The cell that the Tab key comes to; always drawn. */
  readonly at: GridCell;
  readonly words: FitStrings;
}

/** Rows and columns drawn beyond what is seen, so that a quick scroll meets cells and not paper. */
const MORE_ROWS = 5;
const MORE_COLUMNS = 2;
/** How long a scroll has to rest before cells are put into reading order, in milliseconds. */
const REST = 200;
/** Milliseconds in which a change of the data may work out what it does not know yet. */
const AT_ONCE = 4;

/** The part of the map that scrolls: it draws the cells in sight, and brings cells into sight. */
export class MapView {
  readonly scroller: HTMLElement;
  readonly #speaking: (work: () => void) => void;
  readonly #table: HTMLElement;
  readonly #headRow: HTMLElement;
  readonly #corner: Element;
  readonly #body: HTMLElement;
  readonly #rows = new Pool(() => new MapRow());
  readonly #heads = new Pool(() => new MapHead());
  readonly #settling = new Settling();
  #data: MapData | undefined;
  #size: MapSize = { names: 0, head: 0, row: 1, column: 1 };
  #room = 0;
  #version = 0;
  #drawn = '';
  #sizedFor: readonly unknown[] = [];
  #seenRows = 1;
  #rest: ReturnType<typeof setTimeout> | undefined;

  /** `speaking` does something in the language of the element. */
  constructor(scroller: HTMLElement, speaking: (work: () => void) => void) {
    this.scroller = scroller;
    this.#speaking = speaking;
    this.#table = scroller.querySelector('table')!;
    this.#headRow = scroller.querySelector('thead tr')!;
    this.#corner = this.#headRow.firstElementChild!;
    this.#body = scroller.querySelector('tbody')!;
  }

  dispose(): void {
    this.#settling.stop();
    clearTimeout(this.#rest);
  }

  /** Rows a page key moves by. */
  get page(): number {
    return Math.max(1, this.#seenRows - 1);
  }

  /** Index of the first window beside the names. */
  get firstColumn(): number {
    return Math.floor(Math.abs(this.scroller.scrollLeft) / this.#size.column + 0.5);
  }

  cell(row: number, column: number): MapCell | undefined {
    return this.#rows.at(row)?.cells.at(column);
  }

  /** Draws what has changed anywhere. */
  update(data: MapData): void {
    this.#data = data;
    this.#version += 1;
    this.#show(AT_ONCE);
  }

  /** Draws what has come into sight. */
  look(): void {
    this.#show(0);
  }

  #show(settle: number): void {
    this.#speaking(() => {
      this.#measure();
      this.#draw(settle);
    });
  }

  /** Brings a cell into sight and gives it the focus; the page scrolls too if need be. */
  focus({ row, column }: GridCell): void {
    const element = this.cell(row, column)?.element;
    element?.focus({ preventScroll: true });
    element?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    this.look();
  }

  /** Brings a cell that is drawn into sight within the map. */
  bring({ row, column }: GridCell): void {
    const element = this.cell(row, column)?.element;
    if (element) bringIntoSight(element, { block: this.#size.head, inline: this.#size.names });
    this.look();
  }

  #measure(): void {
    const data = this.#data;
    const room = this.scroller.clientWidth;
    if (!data || room === 0) return;
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
    const from = [data.packages, data.windows, data.words, room, rem];
    if (from.every((item, at) => item === this.#sizedFor[at])) return;
    this.#sizedFor = from;
    this.#room = room;
    const family = getComputedStyle(this.#table).fontFamily;
    const size = mapSize(data.packages, data.windows, data.words, { room, rem, family });
    this.#size = size;
    this.#version += 1;
    const lengths = {
      names: size.names,
      head: size.head,
      row: size.row,
      column: size.column,
      wide: Math.max(room, size.names + size.column * data.windows.length),
      high: size.row * data.packages.length,
    };
    for (const [name, length] of Object.entries(lengths))
      this.#table.style.setProperty(`--${name}`, `${length}px`);
  }

  #draw(settle: number): void {
    const data = this.#data;
    if (!data || this.#room === 0) return;
    const sight = sightOf(this.#body);
    const rows = this.#rowsToDraw(data, sight);
    const columns = this.#columnsToDraw(data, sight);
    const drawn = `${this.#version} ${columns.join()}`;
    if (this.#drawn === `${drawn} ${rows.join()}`) return;
    this.#drawn = `${drawn} ${rows.join()}`;
    const focused = this.#focused;
    this.#heads.lay(this.#headRow, columns, (head, column) =>
      head.write(
        column,
        this.#start(column),
        data.windows[column]!,
        column === data.chosen.column,
        data.words,
      ),
    );
    this.#rows.lay(this.#body, rows, (row, place) =>
      this.#drawRow(data, row, place, columns, drawn),
    );
    if (focused && !this.#focused)
      this.cell(data.at.row, data.at.column)?.element.focus({ preventScroll: true });
    clearTimeout(this.#rest);
    if (settle > 0) this.#order();
    else this.#rest = setTimeout(() => this.#order(), REST);
    const cells = [...this.#rows.items()].flatMap((row) => [...row.cells.items()]);
    this.#settling.look(cells, settle);
  }

  /** Reading order, once there is time for it. */
  #order(): void {
    const { activeElement } = this.scroller.getRootNode() as ShadowRoot;
    this.#heads.settle(this.#headRow, this.#corner);
    this.#rows.settle(this.#body, null, activeElement);
    for (const row of this.#rows.items()) row.cells.settle(row.element, row.head, activeElement);
  }

  #drawRow(
    data: MapData,
    row: MapRow,
    place: number,
    columns: readonly number[],
    drawn: string,
  ): void {
    const key = `${place} ${drawn}`;
    if (row.drawn === key) return;
    row.drawn = key;
    const { packages, book, chosen, at, words } = data;
    const pack = packages[place]!;
    row.write(place, place * this.#size.row, pack, packageText(pack, words), place === chosen.row);
    row.cells.lay(row.element, columns, (cell, column) =>
      cell.write({
        row: place,
        column,
        verdict: book.at(place, column),
        words,
        chosen: place === chosen.row && column === chosen.column,
        here: place === at.row && column === at.column,
        start: this.#start(column),
      }),
    );
  }

  #start(column: number): number {
    return this.#size.names + column * this.#size.column;
  }

  get #focused(): boolean {
    const { activeElement } = this.scroller.getRootNode() as ShadowRoot;
    return activeElement !== null && this.#body.contains(activeElement);
  }

  #rowsToDraw({ packages, at }: MapData, { blockStart, blockEnd }: Sight): number[] {
    const { row, head } = this.#size;
    const covered = Math.min(head, this.scroller.scrollTop);
    this.#seenRows = Math.floor((blockEnd - blockStart - covered) / row);
    const seen = evenPlaces(blockStart, blockEnd, row, packages.length, MORE_ROWS);
    return placesWith(seen, at.row, packages.length);
  }

  #columnsToDraw({ windows, at }: MapData, { inlineStart, inlineEnd }: Sight): number[] {
    const { names, column } = this.#size;
    const seen: Places = evenPlaces(
      inlineStart,
      inlineEnd - names,
      column,
      windows.length,
      MORE_COLUMNS,
    );
    return placesWith(seen, at.column, windows.length);
  }
}
