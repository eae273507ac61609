import { ListMemo, sameItems } from '../../edits/index.js';
import type { Fault } from '../../model/index.js';
import type { TableRow } from '../text/table.js';

/** What was made of one row. */
export interface MadeRow<T> {
  readonly value: T;
  readonly index: number;
  readonly line: number;
  /** Whether the row has an error, so that nothing can be made of it. */
  readonly bad: boolean;
  readonly faults: readonly Fault[];
}

/** What came of a row of a table; `null`: it is blank, or its cells cannot be told apart, so it was not read. */
export type ReadRow<T> = MadeRow<T> | null;

type Cells = readonly string[];

export function cellsOf(rows: readonly { readonly cells: Cells }[]): readonly Cells[] {
  return rows.map((row) => row.cells);
}

/** Whether two rows have the same in some columns. */
export const sameIn = (columns: readonly number[], a: TableRow, b: TableRow): boolean =>
  columns.every((at) => a.cells[at] === b.cells[at]);

interface OfColumns {
  readonly columns: readonly number[];
  readonly rows: readonly TableRow[];
  readonly key: string;
  readonly made: unknown;
}

/**
 * What was made of the rows of a table: a row that is the same array as before is not read again. For tables whose
 * rows are never changed in place.
 */
export class RowCache<T> {
  readonly rows = new ListMemo<Cells, ReadRow<T>>();
  readonly #columns = new Map<string, OfColumns>();

  /** What was made of the cells of some columns before, where every row has the same there and `key` is the same. */
  ofColumns<V>(
    name: string,
    columns: readonly number[],
    { rows, key = '' }: { readonly rows: readonly TableRow[]; readonly key?: string },
    make: () => V,
  ): V {
    const before = this.#columns.get(name);
    const holds =
      before?.key === key &&
      sameItems(columns, before.columns) &&
      sameItems(rows, before.rows, (row, other) => sameIn(columns, row, other));
    const made = holds ? (before.made as V) : make();
    this.#columns.set(name, { columns, rows, key, made });
    return made;
  }
}

/** What was made of a row, for the place it has now. */
export function movedTo<T>(made: MadeRow<T>, index: number, line: number): MadeRow<T> {
  if (made.index === index && made.line === line) return made;
  return {
    ...made,
    index,
    line,
    faults: made.faults.map((fault) => ({ ...fault, row: index, line })),
  };
}
