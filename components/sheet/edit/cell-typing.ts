import type { GridCell } from '../../shared/grid-keys.js';
import { typeCell } from './cell-acts.js';
import { CellEditor, type Onward } from './cell-editor.js';
import { onlyCell, type Selection } from '../grid/selection.js';
import type { SheetState } from '../sheet-state.js';
import type { SheetView } from '../grid/sheet-view.js';

/** What typing asks of the sheet around it. */
export interface TypingHost {
  readonly state: SheetState;
  readonly view: SheetView | undefined;
  readonly readonly: boolean;
  /** Texts to offer for a column, by its heading. */
  choicesOf(heading: string): readonly string[];
  focus(): void;
  refresh(): void;
  select(to: Selection): void;
}

interface Typing {
  /** Indexes in the table, which keep meaning the same cell when the view changes. */
  row: number;
  readonly column: number;
  readonly cells: readonly string[] | undefined;
  readonly place: GridCell;
  readonly editor: CellEditor;
}

/** The cell that is typed in, from the field's opening until what was typed is kept or left. */
export class CellTyping {
  readonly #host: TypingHost;
  #typing: Typing | undefined;

  constructor(host: TypingHost) {
    this.#host = host;
  }

  /** The cell that is typed in, by its place in the view. */
  get place(): GridCell | undefined {
    return this.#typing?.place;
  }

  /** `text`: what stands in the field instead of what the cell holds. */
  open(text?: string): void {
    this.close();
    const { state, view } = this.#host;
    if (this.#host.readonly || !view || state.size.rows === 0) return;
    if (state.resultOf(state.fileColumn(state.at.column))) {
      state.told = state.words.workedOutCell;
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

  /** Keeps what is typed. */
  close(): void {
    this.#typing?.editor.close();
  }

  /** Another table came while a cell was typed in: the typing goes on in the row it was begun in. */
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
    const { told } = state;
    this.#host.focus();
    this.#host.select(onlyCell({ row: row + down, column: column + along }));
    state.told = told;
  }
}
