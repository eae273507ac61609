/** A row of a table: cells as text. */
export type Row = readonly string[];

/** `removed.length` rows from place `at` on give way to `added`. Either may be empty. */
export interface Splice {
  /** Place in the table before the edit, 0 for the first row. */
  readonly at: number;
  readonly removed: readonly Row[];
  readonly added: readonly Row[];
}

/** Rows of one table. The splices are in order and do not overlap; all places are those before the edit. */
export interface RowsChange {
  readonly table: string;
  readonly splices: readonly Splice[];
}

/**
 * One value of the document replaced whole: `['rules']`, `['tables', 'windows', 'columns']`. An absent `before` or
 * `after` means that the document has, or is to have, no such entry.
 */
export interface PartChange {
  readonly part: readonly string[];
  readonly before?: unknown;
  readonly after?: unknown;
}

/**
 * The difference between two plan documents, plain JSON. It holds both sides, so it can be undone without the
 * document it was made from, and put on a document only where that still holds what the edit replaces.
 */
export interface Edit {
  /** What was done, for a person: "Cut window W3". */
  readonly label: string;
  readonly changes: readonly (RowsChange | PartChange)[];
}

export function isRowsChange(change: RowsChange | PartChange): change is RowsChange {
  return 'table' in change;
}
