import type { LitElement } from 'lit';
import type { TableText } from '../../src/model/index.js';
import type { GridCell } from '../shared/grid-keys.js';
import { performs, type Act, type ActHost } from './edit/acts.js';
import { pasteCells, selectedCells, clearCells } from './edit/cell-acts.js';
import { CellSelectEvent } from './cell-select-event.js';
import { CellTyping, type TypingHost } from './edit/cell-typing.js';
import { readCells, writeCells } from './edit/clipboard-port.js';
import { Finder } from './bars/find-bar.js';
import { openMenu, type MenuPlace } from './bars/menu.js';
import { RedoEvent } from './redo-event.js';
import { ResultAskEvent } from './result-ask-event.js';
import { ResultsChoiceEvent } from './results-choice-event.js';
import { nameColumn } from './edit/row-acts.js';
import { onlyCell, within, type Selection } from './grid/selection.js';
import { SheetState } from './sheet-state.js';
import type { SheetView } from './grid/sheet-view.js';
import { defaultStrings } from './strings.js';
import { TableChangeEvent } from './table-change-event.js';
import { UndoEvent } from './undo-event.js';
import { unfilter } from './grid/view-acts.js';

/** The part of the element that the control uses. */
export interface SheetElement extends LitElement {
  table: TableText;
  readonly: boolean;
  choices: Readonly<Record<string, readonly string[]>>;
  resultsShown: readonly string[] | null;
}

/** Handles all actions of a person on the sheet, by keys, pointer, toolbar or menu. */
export class SheetControl implements ActHost, TypingHost {
  readonly state: SheetState;
  readonly finder = new Finder();
  view: SheetView | undefined;
  menu: MenuPlace | undefined;
  help = false;
  finding = false;
  filtering = false;
  /** Whether the list of result columns is open. */
  choosing = false;
  filterColumn = 0;
  /** Whether the next tapped cell ends the selected block. */
  ranging = false;
  /** Index of the column whose heading is being edited; -1: none. */
  renaming = -1;
  readonly #element: SheetElement;
  readonly #typing: CellTyping = new CellTyping(this);

  constructor(element: SheetElement) {
    this.#element = element;
    this.state = new SheetState(defaultStrings, (before, label, steps) => {
      const { table } = this.state;
      element.table = table;
      element.dispatchEvent(new TableChangeEvent(table, before, label, steps));
    });
  }

  get readonly(): boolean {
    return this.#element.readonly;
  }

  /** The cell being edited, by its position in the view. */
  get typing(): GridCell | undefined {
    return this.#typing.place;
  }

  run(act: Act): void {
    this.state.announcement = '';
    this.#closeMenu();
    performs[act](this);
    this.refresh(true);
  }

  /** Runs an action that is in no menu, and updates the view. */
  updateState(act: (state: SheetState) => void): void {
    act(this.state);
    this.refresh(true);
  }

  refresh(show = false): void {
    if (show) this.view?.update(this.typing, this.readonly);
    if (show && this.state.size.rows > 0) this.view?.show(this.state.at);
    this.#element.requestUpdate();
  }

  /** Moves to a cell or selects a block. */
  select(to: Selection, show = true): void {
    const before = this.state.at;
    this.state.selection = within(to, this.state.size);
    this.state.announcement = '';
    this.refresh(show);
    const { row, column } = this.state.at;
    if (before.row !== row || before.column !== column) this.sendPosition();
  }

  /** Sends the event for the current cell: a typed one, or a calculated one to be explained. */
  sendPosition(): void {
    if (this.askResult()) return;
    const { state } = this;
    const heading = state.headingAt(state.fileColumn(state.at.column));
    const value = state.cell(state.at.row, state.at.column);
    const row = state.fileRow(state.at.row);
    this.#element.dispatchEvent(new CellSelectEvent(row, heading, value));
  }

  /** Shows a cell of the file; clears filters that hide it. */
  goTo(row: number, column: number): void {
    const { state } = this;
    const last = state.table.rows.length - 1;
    const wanted = Math.max(0, Math.min(row, last));
    state.columns.reveal(column);
    if (state.placeOf(wanted) < 0 && last >= 0) {
      unfilter(state);
      state.announcement = state.words.liftedToShow;
    }
    const at = {
      row: Math.max(0, state.placeOf(wanted)),
      column: Math.max(0, state.columns.shown.indexOf(column)),
    };
    state.selection = onlyCell(at);
    this.refresh(true);
  }

  choicesOf(heading: string): readonly string[] {
    return this.#element.choices[heading] ?? [];
  }

  /** `text`: initial text instead of the cell's. For a calculated cell, asks for its explanation instead. */
  openEditor(text?: string): void {
    const { state } = this;
    const result = state.resultOf(state.fileColumn(state.at.column));
    if (result && text === undefined && state.size.rows > 0) this.askResult();
    else this.#typing.open(text);
  }

  /** Asks where the value of the focused cell comes from. Returns whether it is a calculated cell. */
  askResult(): boolean {
    const { state } = this;
    const result = state.resultOf(state.fileColumn(state.at.column));
    if (!result) return false;
    this.#element.dispatchEvent(new ResultAskEvent(state.fileRow(state.at.row), result.id));
    return true;
  }

  chooseResults(ids: readonly string[]): void {
    this.state.columns.showResults(ids);
    this.select(this.state.selection, false);
    this.#element.resultsShown = ids;
    this.#element.dispatchEvent(new ResultsChoiceEvent(ids));
    this.refresh(true);
  }

  closeEditor(): void {
    this.#typing.close();
  }

  followRow(): void {
    this.#typing.followRow();
  }

  openHeading(column: number): void {
    if (this.readonly || column < 0 || this.state.resultOf(column)) return;
    this.renaming = column;
    this.refresh();
    void this.#element.updateComplete.then(() => {
      const field = this.#find<HTMLInputElement>('.rename');
      field?.focus();
      field?.select();
    });
  }

  nameHeading(column: number, heading: string | undefined): void {
    if (this.renaming !== column) return;
    this.renaming = -1;
    if (heading !== undefined) nameColumn(this.state, column, heading);
    this.focus();
    this.refresh(true);
  }

  openFilter(column: number): void {
    this.filtering = true;
    this.filterColumn = Math.max(0, column);
    this.refresh();
    void this.#element.updateComplete.then(() =>
      this.#find<HTMLInputElement>('.filters input.text')?.focus(),
    );
  }

  openFind(): void {
    this.finding = true;
    this.refresh();
    void this.#element.updateComplete.then(() => {
      const field = this.#find<HTMLInputElement>('.finder input');
      field?.focus();
      field?.select();
    });
  }

  findNext(step: 1 | -1): void {
    const at = this.finder.next(this.state, step);
    if (at) this.select(onlyCell(at));
    else this.refresh();
  }

  openMenu(place: MenuPlace): void {
    this.closeEditor();
    this.menu = place;
    this.refresh();
    void this.#element.updateComplete.then(() => {
      const menu = this.#find('.menu');
      if (menu) openMenu(menu, place);
    });
  }

  /** An action chosen from the menu has already closed it and set the focus. */
  menuClosed(): void {
    if (!this.menu) return;
    this.menu = undefined;
    this.focus();
    this.refresh();
  }

  openHelp(): void {
    this.help = true;
    this.refresh();
    void this.#element.updateComplete.then(() =>
      this.#find<HTMLDialogElement>('.help')?.showModal(),
    );
  }

  helpClosed(): void {
    this.help = false;
    this.focus();
    this.refresh();
  }

  chooseRange(): void {
    this.ranging = !this.ranging;
    this.state.announcement = this.ranging ? this.state.words.rangeHint : '';
    this.refresh();
  }

  undo(): void {
    if (this.#element.dispatchEvent(new UndoEvent())) this.state.undo();
    this.refresh(true);
  }

  redo(): void {
    if (this.#element.dispatchEvent(new RedoEvent())) this.state.redo();
    this.refresh(true);
  }

  copyCells(cut: boolean): void {
    const cells = selectedCells(this.state);
    void writeCells(cells).then((done) => {
      if (done) this.copied(cells, cut);
      else this.state.announcement = this.state.words.noClipboard;
      this.refresh();
    });
  }

  /** Called after cells were copied; a cut clears them. */
  copied(cells: readonly (readonly string[])[], cut: boolean): void {
    const { state } = this;
    const count = cells.length * (cells[0]?.length ?? 0);
    if (cut) clearCells(state);
    state.announcement = (cut ? state.words.cut : state.words.copied)(count);
    this.refresh();
  }

  pasteCells(): void {
    void readCells().then((cells) => {
      if (!cells) this.state.announcement = this.state.words.noClipboard;
      else this.pasted(cells);
      this.refresh();
    });
  }

  pasted(cells: readonly (readonly string[])[] | undefined): void {
    if (!cells || cells.length === 0) this.state.announcement = this.state.words.noCells;
    else pasteCells(this.state, cells);
    this.refresh(true);
  }

  focus(): void {
    this.view?.scroller.focus({ preventScroll: true });
  }

  #closeMenu(): void {
    const menu = this.#find('.menu');
    if (menu?.matches(':popover-open')) menu.hidePopover();
    this.menu = undefined;
    this.focus();
  }

  #find<E extends HTMLElement = HTMLElement>(selector: string): E | null {
    return this.#element.renderRoot.querySelector<E>(selector);
  }
}
