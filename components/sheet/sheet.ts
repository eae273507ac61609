import { loadProblems, problemText } from '../shared/problem-words.js';
import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Fault, TableKind, TableText } from '../../src/model/index.js';
import { FromDocument } from './from-document.js';
import { base } from '../shared/base.js';
import { Words } from '../shared/words.js';
import { offered } from './edit/acts.js';
import { onCopy, onGridKey, onPaste } from './grid/grid-input.js';
import { headRow } from './grid/head-row.js';
import { keyHelp } from './grid/key-help.js';
import { menu } from './bars/menu.js';
import { PointerActs } from './grid/pointer-acts.js';
import { addColumn, addRows } from './edit/row-acts.js';
import { onlyCell } from './grid/selection.js';
import { othersByCell, type OtherAt } from './other-at.js';
import { printStyles } from './paper/print.styles.js';
import type { ResultColumn } from './result-column.js';
import { SheetControl } from './sheet-control.js';
import { SheetPrint } from './paper/sheet-print.js';
import { SheetView } from './grid/sheet-view.js';
import { cellStyles } from './cell.styles.js';
import { styles } from './sheet.styles.js';
import { bars, type UndoState } from './bars/sheet-bars.js';
import { statusLine } from './bars/status-line.js';
import { defaultStrings, type SheetStrings } from './strings.js';
import { toolStyles } from './bars/tool.styles.js';
import { refreshView } from './grid/view-acts.js';

/**
 * An editable table that keeps every column and marks faults in their cells. Sorting, filtering and hiding change only
 * the view, never the table.
 *
 * Keyboard: ARIA grid pattern with one tab stop; the focus stays on the grid and points at the current cell, so it
 * survives rows that are drawn and dropped while scrolling. `?` lists the keys.
 * @summary A sheet of any length, made for pasting.
 * @tag possession-sheet
 * @event {CellSelectEvent} possession-cell-select - A person goes to a cell.
 * @event {TableChangeEvent} possession-table-change - A person changed the table.
 * @event {ResultAskEvent} possession-result-ask - A person asks where a worked-out value comes from.
 * @event {ResultsChoiceEvent} possession-results-choice - A person chose which worked-out columns are shown.
 * @event {UndoEvent} possession-undo - A person asks to take a change back; cancel it to do so yourself.
 * @event {RedoEvent} possession-redo - A person asks to do a change again; cancel it to do so yourself.
 * @csspart cell - One cell.
 */
export class PossessionSheet extends LitElement {
  static override readonly styles = [...base, styles, cellStyles, toolStyles, printStyles];
  static override readonly properties: PropertyDeclarations = {
    table: { attribute: false },
    faults: { attribute: false },
    unread: { attribute: false },
    label: { type: String },
    readonly: { type: Boolean, reflect: true },
    others: { attribute: false },
    of: { type: String },
    results: { type: Boolean },
    choices: { attribute: false },
    resultColumns: { attribute: false },
    resultsShown: { attribute: false },
    undoState: { attribute: false },
    strings: { attribute: false },
  };

  declare table: TableText;
  /** Faults; those of other tables are ignored. */
  declare faults: readonly Fault[];
  /** Columns that are kept but not read by the plan. */
  declare unread: readonly string[];
  /** Accessible name; the file's name when empty. */
  declare label: string;
  declare readonly: boolean;
  /** Cells that other people are at, when several people edit the table. */
  declare others: readonly OtherAt[];
  /** Inside a `<possession-document>`: the table to show; empty: none. */
  declare of: TableKind | '';
  /** Inside a `<possession-document>`: shows calculated columns, for windows and work. */
  declare results: boolean;
  /** Suggested texts for a cell, by heading; other texts are allowed. */
  declare choices: Readonly<Record<string, readonly string[]>>;
  /**
   * Calculated columns, shown beside the typed ones: sorted, filtered, copied and printed with the rows, never written
   * to the table. A new list means new values.
   */
  declare resultColumns: readonly ResultColumn[];
  /** Ids of the result columns to show, in order; null: all, until a person chooses. */
  declare resultsShown: readonly string[] | null;
  /** Labels of undo and redo, for a host that keeps the history. Null: the sheet keeps its own. */
  declare undoState: UndoState | null;
  /** Texts that override the defaults. */
  declare strings: Partial<SheetStrings>;

  readonly #words = new Words<SheetStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });
  readonly #control: SheetControl;
  readonly #pointer: PointerActs;

  constructor() {
    super();
    this.table = { file: '', columns: [], rows: [] };
    this.faults = [];
    this.unread = [];
    this.label = '';
    this.readonly = false;
    this.others = [];
    this.of = '';
    this.results = false;
    this.choices = {};
    this.resultColumns = [];
    this.resultsShown = null;
    this.undoState = null;
    this.strings = {};
    this.#control = new SheetControl(this);
    this.#pointer = new PointerActs(this.#control);
    new SheetPrint(this, this.#control.state);
    new FromDocument(this);
  }

  override disconnectedCallback(): void {
    this.#control.closeEditor();
    super.disconnectedCallback();
    this.#control.view?.dispose();
    this.#control.view = undefined;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.requestUpdate();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { state } = this.#control;
    state.words = this.#words.now;
    if (changed.has('table')) {
      state.take(this.table);
      this.#control.followRow();
    }
    if (changed.has('resultColumns')) state.takeResults(this.resultColumns);
    if (this.resultsShown && (changed.has('resultsShown') || changed.has('resultColumns')))
      state.columns.showResults(this.resultsShown);
    if (changed.has('table') || changed.has('faults')) state.takeFaults(this.faults);
    if (changed.has('others')) state.others = othersByCell(this.others);
    if (changed.has('readonly') && this.readonly) this.#control.closeEditor();
  }

  protected override updated(changed: PropertyValues<this>): void {
    const control = this.#control;
    const scroller = this.renderRoot.querySelector<HTMLElement>('.scroller');
    if (control.view?.scroller !== scroller) {
      control.view?.dispose();
      control.view = scroller ? new SheetView(scroller, control.state) : undefined;
    }
    if (changed.has('table') && changed.get('table')?.file !== this.table.file)
      control.view?.toTop();
    control.view?.update(control.typing, this.readonly);
  }

  /** Index of the table row of the current cell. */
  get currentRow(): number {
    return this.#control.state.fileRow(this.#control.state.at.row);
  }

  /** Moves to a cell and scrolls it into view; the first column when the heading is not found. Sends no event. */
  goTo(row: number, column = ''): void {
    this.#control.goTo(row, Math.max(0, this.table.columns.indexOf(column)));
  }

  /** The rows and columns as shown, with calculated columns, for saving or sending. */
  get shownTable(): {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly string[])[];
  } {
    const { state } = this.#control;
    const { shown } = state.columns;
    return {
      columns: shown.map((column) => state.headingAt(column)),
      rows: Array.from({ length: state.size.rows }, (_, place) =>
        shown.map((column) => state.textAt(state.fileRow(place), column)),
      ),
    };
  }

  override render(): TemplateResult {
    const control = this.#control;
    const { state } = control;
    const { words } = state;
    if (state.table.columns.length === 0) return this.#renderEmpty();
    const pointer = this.#pointer;
    return html`${bars(control, this.undoState)}
      <div
        class=${`scroller${control.ranging ? ' ranging' : ''}`}
        role="grid"
        tabindex="0"
        aria-label=${this.label || state.table.file}
        aria-readonly=${this.readonly}
        aria-multiselectable="true"
        aria-rowcount=${state.size.rows + 1}
        aria-colcount=${state.columns.order.length}
        @keydown=${(event: KeyboardEvent) => onGridKey(control, event)}
        @copy=${(event: ClipboardEvent) => onCopy(control, event)}
        @cut=${(event: ClipboardEvent) => onCopy(control, event)}
        @paste=${(event: ClipboardEvent) => onPaste(control, event)}
        @pointerdown=${pointer.down}
        @pointermove=${pointer.move}
        @pointerup=${pointer.up}
        @pointercancel=${pointer.up}
        @click=${pointer.click}
        @dblclick=${pointer.doubleClick}
        @contextmenu=${pointer.menu}
        @pointerover=${this.#nameCell}
      >
        <div class="canvas" role="presentation">
          ${headRow(state, {
            unread: this.unread,
            renaming: control.renaming,
            openMenu: (place, button) => this.#openColumnMenu(place, button),
            rename: (column, heading) => control.nameHeading(column, heading),
            cancelRename: () => control.nameHeading(control.renaming, undefined),
          })}
          <div class="body" role="presentation"></div>
        </div>
      </div>
      ${statusLine(
        state,
        (row) => this.#toFault(row),
        () => control.updateState(refreshView),
      )}
      ${
        control.menu
          ? menu(
              offered(state, this.readonly, control.menu.column),
              words,
              (act) => control.run(act),
              () => control.menuClosed(),
            )
          : nothing
      }
      ${control.help ? keyHelp(words, this.readonly, () => control.helpClosed()) : nothing}`;
  }

  #renderEmpty(): TemplateResult {
    const { words } = this.#control.state;
    if (this.readonly) return html`<p class="none">${words.emptyReadonly}</p>`;
    return html`<div
      class="none"
      tabindex="0"
      role="group"
      aria-label=${this.label || this.table.file || words.tools}
      @paste=${(event: ClipboardEvent) => onPaste(this.#control, event)}
    >
      ${words.empty}
      <button
        type="button"
        class="plain"
        @click=${() =>
          this.#control.updateState((state) => {
            addColumn(state, 'after');
            addRows(state, 'below');
          })}
      >
        ${words.start}</button
      >.
    </div>`;
  }

  #openColumnMenu(place: number, button: HTMLElement): void {
    const { state } = this.#control;
    const { start, end } = state.block;
    if (place < start || place > end)
      this.#control.select(onlyCell({ row: state.at.row, column: place }), false);
    const box = button.getBoundingClientRect();
    this.#control.openMenu({ x: box.left, y: box.bottom + 2, column: true });
  }

  #toFault(row: number): void {
    const column = this.#control.state.faults.get(row)?.keys().next().value ?? 0;
    this.#control.goTo(row, column);
    this.#control.focus();
    this.#control.sendPosition();
  }

  /** Tooltip with the whole text or fault of a cell, set only on hover: most cells are never pointed at. */
  readonly #nameCell = (event: Event): void => {
    const cell = (event.target as Element).closest<HTMLElement>('[data-row]');
    if (!cell) return;
    const { state } = this.#control;
    const [row, column] = [Number(cell.dataset['row']), Number(cell.dataset['column'])];
    const faults = state.faultsAt(row, column);
    if (!faults) {
      cell.title = state.cell(row, column);
      return;
    }
    void this.#words
      .speaking(() => loadProblems())
      .then(() => {
        cell.title = this.#words.speaking(() => faults.map(problemText).join(' '));
      });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-sheet': PossessionSheet;
  }
}
