import { columnOf } from '../../../src/engine/index.js';
import {
  tableIn,
  type PlanDocument,
  type TableKind,
  type TableText,
} from '../../../src/model/index.js';
import {
  applySteps,
  type CellText,
  type TableChange,
  type TableStep,
} from '../../../src/plan/index.js';
import { rowWith, valueIn } from '../frame/table-lookup.js';

type Cells = Readonly<Record<string, string>>;

/** Cells of one table to be written anew, row by row, as one change. */
export class CellEdits {
  readonly #document: PlanDocument;
  readonly #kind: TableKind;
  readonly #steps: TableStep[] = [];
  #table: TableText;

  constructor(document: PlanDocument, kind: TableKind) {
    this.#document = document;
    this.#kind = kind;
    this.#table = tableIn(document, kind);
  }

  /**
   * Cells of the row that holds `id` under `key`; a column is added where a field has none. False where there is no
   * such row.
   *
   * `onlyEmpty`: cells that hold something stay as they are.
   */
  set(key: string, id: string, cells: Cells, { onlyEmpty = false } = {}): boolean {
    const row = rowWith(this.#table, this.#kind, key, id);
    if (row >= 0) this.#write(row, cells, onlyEmpty);
    return row >= 0;
  }

  /** One more row: the cells given, and for the rest those of the row that holds `like` under `key`. */
  add(key: string, like: string, cells: Cells): void {
    const { rows } = this.#table;
    const from = rows[rowWith(this.#table, this.#kind, key, like)] ?? [];
    this.#make({ addRows: [from], at: rows.length });
    this.#write(rows.length, cells, false);
  }

  get change(): TableChange {
    return { table: this.#kind, of: tableIn(this.#document, this.#kind), steps: this.#steps };
  }

  /** The document with the cells written; the very same where none differs. */
  get document(): PlanDocument {
    const { tables } = this.#document;
    if (this.#table === tables[this.#kind]) return this.#document;
    return { ...this.#document, tables: { ...tables, [this.#kind]: this.#table } };
  }

  #write(row: number, cells: Cells, onlyEmpty: boolean): void {
    const typed: CellText[] = [];
    for (const [field, text] of Object.entries(cells)) {
      if (onlyEmpty && valueIn(this.#table, this.#kind, row, field) !== '') continue;
      const known = columnOf(this.#table, this.#kind, field);
      const column = known ?? this.#table.columns.length;
      // Every row gets its cell of a new column: a row that is too short would be complained of.
      if (known === undefined) this.#make({ addColumn: field, at: column, fill: true });
      typed.push({ row, column, text });
    }
    if (typed.length > 0) this.#make({ cells: typed });
  }

  #make(step: TableStep): void {
    this.#steps.push(step);
    this.#table = applySteps(this.#table, [step]);
  }
}

/** What writing cells of one row anew changes. */
export function cellsOf(
  document: PlanDocument,
  kind: TableKind,
  key: string,
  id: string,
  cells: Cells,
): TableChange {
  const edits = new CellEdits(document, kind);
  edits.set(key, id, cells);
  return edits.change;
}
