import { ListMemo } from '../../edits/index.js';
import type { Fault } from '../../model/index.js';
import type { DateOrder } from '../parse/written-moment.js';

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

/** What was made of the names in a table. */
interface Names {
  readonly list: readonly (string | undefined)[];
  readonly made: unknown;
}

/**
 * What was made of the rows of a table: a row that is the same array as before is not read again. For tables whose
 * rows are never changed in place.
 */
export class RowCache<T> {
  readonly rows = new ListMemo<Cells, ReadRow<T>>();
  /** The order of day and month that the dates of the row settle. */
  readonly dates = new ListMemo<Cells, DateOrder | 'either'>();
  /** Whether a place of the row is in miles with chains or yards. */
  readonly miles = new ListMemo<Cells, boolean>();
  readonly #names = new Map<string, Names>();

  /** What was made of the same names in the same order before, else what `make` makes of them. */
  named<V>(what: string, list: readonly (string | undefined)[], make: () => V): V {
    const before = this.#names.get(what);
    if (before?.list.length === list.length && before.list.every((item, at) => item === list[at]))
      return before.made as V;
    const made = make();
    this.#names.set(what, { list, made });
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
