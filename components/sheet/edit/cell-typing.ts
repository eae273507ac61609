import type { GridCell } from '../../shared/grid-keys.js';
import { typeCell } from './cell-acts.js';
import { CellEditor, type Onward } from './cell-editor.js';
import { onlyCell, type Selection } from '../grid/selection.js';
import type { SheetState } from '../sheet-state.js';
import type { SheetView } from '../grid/sheet-view.js';

/** What an edit needs from the sheet. */
export interface TypingHost {
  readonly state: SheetState;
  readonly view: SheetView | undefined;
  readonly readonly: boolean;
  /** Suggested texts for a column, by heading. */
  choicesOf(heading: string): readonly string[];
  focus(): void;
  refresh(): void;
  select(to: Selection): void;
}

interface Typing {
  /** Indexes in the table, which identify the cell even when the view changes. */
  row: number;
  readonly column: number;
  readonly cells: readonly string[] | undefined;
  readonly place: GridCell;
  readonly editor: CellEditor;
}

/** The edit of a cell, from opening the field until it is saved or discarded. */
export class CellTyping {
  readonly #host: TypingHost;
  #typing: Typing | undefined;

  constructor(host: TypingHost) {
    this.#host = host;
  }

  /** The cell being edited, by its position in the view. */
  get place(): GridCell | undefined {
    return this.#typing?.place;
  }

  /** `text`: initial text instead of the cell's. */
  open(text?: string): void {
    this.close();
    const { state, view } = this.#host;
    if (this.#host.readonly || !view || state.size.rows === 0) return;
    if (state.resultOf(state.fileColumn(state.at.column))) {
      state.announcement = state.words.workedOutCell;
      this.#host.refresh();
      return;
    }
    const place = state.at;
    state.selection = onlyCell(place);
    view.update(place, false);
    view.show(place);
    const cell = view.pool.cell(place.row, place.column);
    if (!cell) return;
    const row = state.fileRow(place.row);
    const column = state.fileColumn(place.column);
    const heading = state.table.columns[column] ?? '';
    const editor = new CellEditor(cell, {
      text: text ?? state.cell(place.row, place.column),
      label: `${heading}, ${state.words.line(state.lines.of(row))}`,
      choices: this.#host.choicesOf(heading),
      keep: (typed, onward) => this.#keep(typed, onward),
      leave: () => {
        this.#typing = undefined;
        this.#host.focus();
        this.#host.refresh();
      },
    });
    this.#typing = { row, column, cells: state.table.rows[row], place, editor };
    this.#host.refresh();
  }

  /** Saves the edit. */
  close(): void {
    this.#typing?.editor.close();
  }

  /** The table was replaced during an edit: the edit continues in its original row. */
  followRow(): void {
    const typing = this.#typing;
    const { rows } = this.#host.state.table;
    if (!typing?.cells || rows[typing.row] === typing.cells) return;
    const moved = rows.findIndex((row) => row === typing.cells);
    if (moved >= 0) typing.row = moved;
  }

  #keep(typed: string, onward: Onward): void {
    const typing = this.#typing;
    if (!typing) return;
    this.#typing = undefined;
    const { state } = this.#host;
    typeCell(state, typing.row, typing.column, typed);
    if (onward === 'stay') {
      this.#host.refresh();
      return;
    }
    const { row, column } = typing.place;
    const moves = { down: [1, 0], up: [-1, 0], on: [0, 1], back: [0, -1] } as const;
    const [down, along] = moves[onward];
    const { announcement } = state;
    this.#host.focus();
    this.#host.select(onlyCell({ row: row + down, column: column + along }));
    state.announcement = announcement;
  }
}
