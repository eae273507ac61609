/** A row of a table: cells as text. */
export type Row = readonly string[];

/** Replaces the rows `removed`, from index `at` on, by `added`. Either may be empty. */
export interface Splice {
  /** Index in the table before the edit. */
  readonly at: number;
  readonly removed: readonly Row[];
  readonly added: readonly Row[];
}

/** Changed rows of one table. The splices are in order and do not overlap; all indexes are those before the edit. */
export interface RowsChange {
  readonly table: string;
  readonly splices: readonly Splice[];
}

/**
 * Replaces one value of the document: `['rules']`, `['tables', 'windows', 'columns']`. Without `before` the document has
 * no such entry yet; without `after` the entry is removed.
 */
export interface PartChange {
  readonly part: readonly string[];
  readonly before?: unknown;
  readonly after?: unknown;
}

/**
 * The difference between two plan documents, as plain JSON. It holds both sides, so it can be undone without the first
 * document, and is applied only to a document that still has what the edit replaces.
 */
export interface Edit {
  /** What was done, for a person: "Cut window W3". */
  readonly label: string;
  readonly changes: readonly (RowsChange | PartChange)[];
}

export function isRowsChange(change: RowsChange | PartChange): change is RowsChange {
  return 'table' in change;
}
