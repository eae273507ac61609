import type { Fault, TableText } from '../../src/model/index.js';
import { applySteps } from '../../src/plan/apply-steps.js';
import type { TableStep } from '../../src/plan/change.js';
import { mostTyped, tooLong } from '../../src/model/too-long.js';
import type { GridCell } from '../shared/grid-keys.js';
import { ColumnView } from './grid/column-view.js';
import { SheetHistory } from './edit/history.js';
import { LineNumbers } from './grid/line-numbers.js';
import { blockOf, onlyCell, within, type Block, type Selection } from './grid/selection.js';
import { nothingKnown, resultValue, type ResultColumn, type ResultValue } from './result-column.js';
import type { OthersByCell } from './other-at.js';
import { faultsByCell } from './grid/sheet-layout.js';
import type { SheetStrings } from './strings.js';
import { asInTheFile, viewOrder, type ViewWish } from './grid/view-order.js';

/** The view after a change: the selection, and the row order if the number of rows changed. */
export interface ShownAs {
  readonly selection?: Selection;
  readonly order?: readonly number[] | null;
  /** Message to announce instead of the label. */
  readonly notice?: string;
}

/** Called for every change of the table by a person. */
export type ChangeListener = (
  before: TableText,
  label: string,
  /** The steps of the change; absent: an undo or redo by the sheet itself. */
  steps?: readonly TableStep[],
) => void;

/**
 * The state of the sheet, without rendering: the table, what is shown in which order, the selection and the undo
 * history. `row` and `column` of a GridCell are positions on the screen; `fileRow` and `fileColumn` convert them to the
 * table.
 */
export class SheetState {
  table: TableText = { file: '', columns: [], rows: [] };
  faults = new Map<number, Map<number, Fault[]>>();
  /** Names of the people at each cell, by row and column of the table. */
  others: OthersByCell = new Map();
  selection: Selection = onlyCell({ row: 0, column: 0 });
  words: SheetStrings;
  /** Announcement of the last action. */
  announcement = '';
  /** For the cells last copied, which columns were calculated. */
  copied: readonly boolean[] = [];
  readonly columns = new ColumnView();
  readonly lines = new LineNumbers();
  readonly history = new SheetHistory();
  readonly #onChange: ChangeListener;
  #wish: ViewWish = asInTheFile;
  #order: readonly number[] | null = null;
  #stale = false;

  constructor(words: SheetStrings, onChange: ChangeListener) {
    this.words = words;
    this.#onChange = onChange;
  }

  /** Sets the table from outside. Another file resets the view; otherwise order, widths and selection are kept where possible. */
  take(table: TableText): void {
    if (table === this.table) return;
    const other = table.file !== this.table.file;
    this.history.clear();
    if (other) {
      this.#wish = asInTheFile;
      this.#order = null;
      this.columns.forget();
      this.selection = onlyCell({ row: 0, column: 0 });
      this.announcement = '';
    }
    this.#put(table);
  }

  /** Sets the result columns. Order, filters and widths of remaining columns are kept. */
  takeResults(results: readonly ResultColumn[]): void {
    this.#wish = this.columns.read(this.table, this.table, this.#wish, results);
    this.#stale = this.#order !== null;
    this.selection = within(this.selection, this.size);
  }

  takeFaults(faults: readonly Fault[]): void {
    const mine = faults.filter((fault) => fault.file === this.table.file);
    this.faults = faultsByCell(mine, this.table.columns);
    if (this.#wish.onlyFaults) this.#stale = true;
  }

  /** Applies a change by a person. Does nothing if the table stays the same; refuses a text that is too long. */
  change(steps: readonly TableStep[], label: string, shown: ShownAs = {}): boolean {
    const length = tooLong(steps);
    if (length !== undefined) {
      this.announcement = this.words.tooLong(length, mostTyped);
      return false;
    }
    const before = this.table;
    const next = applySteps(before, steps);
    if (next === before) return false;
    this.history.push(before, next, label, this.selection);
    this.#put(next, shown.order);
    if (shown.selection) this.selection = within(shown.selection, this.size);
    this.announcement = shown.notice ?? label;
    this.#onChange(before, label, steps);
    return true;
  }

  undo(): void {
    this.#turn('undo');
  }

  redo(): void {
    this.#turn('redo');
  }

  /** Sorts and filters again. The focused cell keeps the focus if it is still shown. */
  show(wish: ViewWish): void {
    const row = this.fileRow(this.selection.at.row);
    const { column } = this.selection.at;
    this.#wish = wish;
    this.#reorder();
    const place = this.placeOf(row);
    this.selection = within(onlyCell({ row: Math.max(0, place), column }), this.size);
  }

  get wish(): ViewWish {
    return this.#wish;
  }

  /** Whether later edits have made the sort or filter out of date; rows do not jump while a person types. */
  get stale(): boolean {
    return this.#stale && this.#order !== null;
  }

  get order(): readonly number[] | null {
    return this.#order;
  }

  get size(): { rows: number; columns: number } {
    return {
      rows: this.#order?.length ?? this.table.rows.length,
      columns: this.columns.shown.length,
    };
  }

  get at(): GridCell {
    return this.selection.at;
  }

  get block(): Block {
    return blockOf(this.selection);
  }

  fileRow(place: number): number {
    return this.#order ? (this.#order[place] ?? -1) : place;
  }

  fileColumn(place: number): number {
    return this.columns.shown[place] ?? -1;
  }

  /** Position of a table row on the screen; -1 when hidden. */
  placeOf(row: number): number {
    if (this.#order) return this.#order.indexOf(row);
    return row < this.table.rows.length ? row : -1;
  }

  cell(row: number, column: number): string {
    return this.textAt(this.fileRow(row), this.fileColumn(column));
  }

  /** The result column at a column index; undefined for a typed column. */
  resultOf(fileColumn: number): ResultColumn | undefined {
    return this.columns.results[fileColumn - this.table.columns.length];
  }

  resultAt(fileRow: number, fileColumn: number): ResultValue {
    const cells = this.table.rows[fileRow];
    const column = this.resultOf(fileColumn);
    return cells && column ? resultValue(column.value(fileRow, cells)) : nothingKnown;
  }

  /** Text of a cell, typed or calculated. */
  textAt(fileRow: number, fileColumn: number): string {
    return fileColumn >= this.table.columns.length
      ? this.resultAt(fileRow, fileColumn).text
      : (this.table.rows[fileRow]?.[fileColumn] ?? '');
  }

  /** Cells copied from this sheet, without the calculated ones; other cells unchanged. */
  withoutResults(cells: readonly (readonly string[])[]): readonly (readonly string[])[] {
    const { copied } = this;
    if (!copied.includes(true) || copied.length !== cells[0]?.length) return cells;
    return cells.map((row) => row.filter((_, at) => !copied[at]));
  }

  headingAt(fileColumn: number): string {
    return this.table.columns[fileColumn] ?? this.resultOf(fileColumn)?.heading ?? '';
  }

  /** Indexes of the shown typed columns, in order. */
  get typedShown(): readonly number[] {
    return this.columns.shown.filter((value) => value < this.table.columns.length);
  }

  faultsAt(row: number, column: number): readonly Fault[] | undefined {
    return this.faults.get(this.fileRow(row))?.get(this.fileColumn(column));
  }

  #turn(way: 'undo' | 'redo'): void {
    const before = this.table;
    const turned = this.history[way](before);
    if (!turned) {
      this.announcement = way === 'undo' ? this.words.nothingToUndo : this.words.nothingToRedo;
      return;
    }
    this.#put(turned.table);
    this.selection = within(turned.selected, this.size);
    this.announcement = (way === 'undo' ? this.words.undone : this.words.redone)(turned.label);
    this.#onChange(before, this.announcement);
  }

  #put(table: TableText, order?: readonly number[] | null): void {
    const before = this.table;
    this.table = table;
    this.lines.read(table);
    const wish = this.#wish;
    if (table.columns !== before.columns || table.file !== before.file)
      this.#wish = this.columns.read(table, before, wish);
    // A removed column also removes its sort or filter.
    const lost = !wish.sort !== !this.#wish.sort || wish.filters.length > this.#wish.filters.length;
    const other = table.rows.length !== before.rows.length;
    if (order !== undefined) this.#order = order;
    else if (lost || other || this.#order === null) this.#reorder();
    this.#stale = this.#order !== null;
    this.selection = within(this.selection, this.size);
  }

  #reorder(): void {
    this.#order = viewOrder(this.table, this.#wish, (row) => this.faults.has(row), {
      text: (row, column) => this.textAt(row, column),
      key: (row, column) =>
        column < this.table.columns.length ? undefined : this.resultAt(row, column).sort,
    });
    this.#stale = false;
  }
}
