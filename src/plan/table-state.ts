// One table as it stands: what was taken in as one value, with what was changed since laid over it. Rows and columns
// have ids, so that a change finds its place whatever others put in or took out.
import type * as Y from 'yjs';
import type { TableText } from '../model/index.js';
import {
  cellAddress,
  columnOfName,
  fieldGroup,
  fieldPath,
  headAddress,
  headGroup,
  rowGroup,
  rowOfGroup,
} from './address.js';
import type { Row } from './change.js';
import type { Registers } from './registers.js';
import { isField, isRow, mostColumns, mostRows } from './table-base.js';

/** Which row and which column stands at each place of a table. */
export interface Ids {
  /** Id under which the table was taken in whole. */
  readonly table: string;
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

/** The ids of every table that was made here, for as long as somebody holds it. */
export const idsOf = new WeakMap<TableText, Ids>();

/** Cells of a row as it was taken in or added, and the column of each; cells beyond the columns have none. */
interface Start {
  readonly cells: readonly string[];
  readonly columns: readonly number[];
}

/** The order of rows or columns of a table, as an array of the doc. */
export const orderName = (table: string, of: 'rows' | 'columns'): string => `order/${table}/${of}`;
export const addedKey = (table: string, of: 'row' | 'column', id: number): string =>
  `${table}/${of}/${id.toString(36)}`;

export class TableState {
  readonly id: string;
  readonly rows: Y.Array<number>;
  readonly columns: Y.Array<number>;
  #text: TableText;
  readonly #base: TableText;
  readonly #baseColumns: readonly number[];
  readonly #registers: Registers;
  readonly #added: Y.Map<unknown>;
  #rowIds: readonly number[] = [];
  #columnIds: readonly number[] = [];
  /** Whether rows and columns stand as they were taken in, so that the id of one is its place. */
  #plainRows = false;
  #plainColumns = false;
  #places: Map<number, number> | undefined;
  /** Rows that are not those of the base, as made last. */
  #made = new Map<number, Row>();
  /** Rows with cells of their own in the registers. */
  readonly #touched = new Set<number>();

  constructor(id: string, base: TableText, doc: Y.Doc, registers: Registers) {
    this.id = id;
    this.#base = base;
    this.#baseColumns = base.columns.map((_, at) => at);
    this.#registers = registers;
    this.#added = doc.getMap('added');
    this.rows = doc.getArray(orderName(id, 'rows'));
    this.columns = doc.getArray(orderName(id, 'columns'));
    this.#text = base;
    for (const group of registers.groups()) this.#touch(group);
    this.#readColumns();
    this.#readRows();
    this.#write(this.#headings(), this.#allRows());
  }

  get text(): TableText {
    return this.#text;
  }

  get ids(): Ids {
    return { table: this.id, rows: this.#rowIds, columns: this.#columnIds };
  }

  /** Looks again at what changed: groups of registers, and the orders. */
  refresh(groups: ReadonlySet<string>, orders: { rows: boolean; columns: boolean }): void {
    const cells = new Set<number>();
    let head = false;
    for (const group of groups) {
      if (!group.startsWith(`c/${this.id}/`)) continue;
      const row = this.#touch(group);
      if (row === undefined) head = true;
      else cells.add(row);
    }
    const before = this.#made;
    if (orders.columns) {
      this.#readColumns();
      this.#made = new Map();
    }
    for (const row of cells) this.#made.delete(row);
    if (orders.rows) this.#readRows();
    let rows: readonly Row[] = this.#text.rows;
    if (orders.columns || orders.rows) rows = this.#allRows(before, cells);
    else if (cells.size > 0) rows = this.#withRows(cells);
    this.#write(head || orders.columns ? this.#headings() : this.#text.columns, rows);
  }

  /** Whether there is a row of this id, shown or taken away. */
  known(row: number): boolean {
    return this.#start(row) !== undefined;
  }

  /** Place of a row of this id; -1 where it is not shown. */
  placeOf(row: number): number {
    if (this.#plainRows) return row < this.#rowIds.length ? row : -1;
    this.#places ??= new Map(this.#rowIds.map((id, at) => [id, at]));
    return this.#places.get(row) ?? -1;
  }

  headingOf(column: number): string {
    const typed = this.#registers.standing(headAddress(this.id, column))?.value;
    if (typeof typed === 'string') return typed;
    return this.#base.columns[column] ?? this.#addedColumn(column)?.heading ?? '';
  }

  cell(row: number, column: number): string | undefined {
    const typed = this.#registers.standing(cellAddress(this.id, row, column))?.value;
    if (typeof typed === 'string') return typed;
    const start = this.#start(row);
    const at = start?.columns.indexOf(column) ?? -1;
    return at < 0 ? undefined : start!.cells[at];
  }

  #touch(group: string): number | undefined {
    if (!group.startsWith(`c/${this.id}/`)) return undefined;
    const row = rowOfGroup(group);
    if (row === undefined) return undefined;
    if (this.#registers.group(group).size > 0) this.#touched.add(row);
    else this.#touched.delete(row);
    return row;
  }

  #readColumns(): void {
    const count = this.#base.columns.length;
    const known = (id: number): boolean => id < count || this.#addedColumn(id) !== undefined;
    this.#columnIds = once(this.columns.toArray(), known, mostColumns);
    this.#plainColumns =
      this.#columnIds.length === count && this.#columnIds.every((id, at) => id === at);
  }

  #readRows(): void {
    const count = this.#base.rows.length;
    const known = (id: number): boolean => id < count || this.known(id) || this.#touched.has(id);
    this.#rowIds = once(this.rows.toArray(), known, mostRows);
    this.#plainRows = this.#rowIds.every((id, at) => id === at);
    this.#places = undefined;
  }

  #addedColumn(id: number): { heading: string; fill: boolean } | undefined {
    const held = this.#added.get(addedKey(this.id, 'column', id));
    if (!Array.isArray(held) || typeof held[0] !== 'string') return undefined;
    return { heading: held[0], fill: held[1] === true };
  }

  /** What a row was before anything was typed into it; undefined where nothing is known of it. */
  #start(id: number): Start | undefined {
    const taken = this.#base.rows[id];
    if (taken) return { cells: taken, columns: this.#baseColumns };
    const held = this.#added.get(addedKey(this.id, 'row', id));
    if (!Array.isArray(held)) return undefined;
    const [columns, cells] = held as unknown[];
    if (!Array.isArray(columns) || columns.length > mostColumns || !isRow(cells)) return undefined;
    return { columns: columns as number[], cells };
  }

  #headings(): readonly string[] {
    const plain = this.#plainColumns && this.#registers.group(headGroup(this.id)).size === 0;
    const made = plain ? this.#base.columns : this.#columnIds.map((id) => this.headingOf(id));
    return sameTexts(made, this.#text.columns) ? this.#text.columns : made;
  }

  #allRows(
    before: ReadonlyMap<number, Row> = new Map(),
    changed: ReadonlySet<number> = new Set(),
  ): readonly Row[] {
    if (this.#plainRows && this.#plainColumns && this.#touched.size === 0) {
      const { rows } = this.#base;
      return this.#rowIds.length === rows.length ? rows : rows.slice(0, this.#rowIds.length);
    }
    return this.#rowIds.map((id) => this.#row(id, changed.has(id) ? undefined : before.get(id)));
  }

  #withRows(changed: ReadonlySet<number>): readonly Row[] {
    const rows: Row[] = this.#text.rows.slice();
    let same = true;
    for (const id of changed) {
      const place = this.placeOf(id);
      if (place < 0) continue;
      const row = this.#row(id, rows[place]);
      same &&= row === rows[place];
      rows[place] = row;
    }
    return same ? this.#text.rows : rows;
  }

  /** The cells of a row; the array given where they are the same. */
  #row(id: number, before?: Row): Row {
    const taken = this.#plainColumns && !this.#touched.has(id) ? this.#base.rows[id] : undefined;
    if (taken) return taken;
    const held = this.#made.get(id);
    if (held) return held;
    const made = this.#makeRow(id);
    const row = before && sameTexts(before, made) ? before : made;
    this.#made.set(id, row);
    return row;
  }

  #makeRow(id: number): Row {
    const start = this.#start(id) ?? { cells: [], columns: [] };
    const typed = new Map<number, string>();
    for (const [name, [entry]] of this.#registers.group(rowGroup(this.id, id)))
      if (typeof entry?.value === 'string') typed.set(columnOfName(name), entry.value);
    const startAt = new Map(start.columns.map((column, at) => [column, at]));
    const made: string[] = [];
    let length = 0;
    let reached = true;
    for (const [place, column] of this.#columnIds.entries()) {
      const at = startAt.get(column);
      let text = typed.get(column);
      if (text === undefined && at !== undefined) text = start.cells[at];
      if (text === undefined && at === undefined && reached && this.#addedColumn(column)?.fill)
        text = '';
      reached = text !== undefined;
      made.push(text ?? '');
      if (reached) length = place + 1;
    }
    const beyond = start.cells.slice(start.columns.length);
    return beyond.length > 0 ? [...made, ...beyond] : made.slice(0, length);
  }

  #write(columns: readonly string[], rows: readonly Row[]): void {
    const before = this.#text;
    const fields = new Map<string, unknown>(Object.entries(this.#base));
    for (const [name, [entry]] of this.#registers.group(fieldGroup(this.id))) {
      const [field = ''] = fieldPath(name);
      if (entry!.value === undefined && field !== 'file') fields.delete(field);
      else if (isField(field, entry!.value)) fields.set(field, entry!.value);
    }
    const next: Record<string, unknown> = { ...Object.fromEntries(fields), columns, rows };
    const keys = Object.keys(next);
    const held = before as unknown as Record<string, unknown>;
    const same =
      keys.length === Object.keys(held).length && keys.every((key) => next[key] === held[key]);
    if (!same) this.#text = next as unknown as TableText;
    idsOf.set(this.#text, this.ids);
  }
}

/** Each id the first time it comes, where it is known. */
function once(ids: number[], known: (id: number) => boolean, most: number): readonly number[] {
  const seen = new Set<number>();
  const kept = ids.filter((id) => {
    if (seen.has(id) || !Number.isSafeInteger(id) || id < 0 || !known(id)) return false;
    seen.add(id);
    return true;
  });
  return kept.length > most ? kept.slice(0, most) : kept;
}

function sameTexts(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && a.every((text, at) => text === b[at]));
}
