import type { TableText } from '../model/index.js';

/** A row of a table: cells as text. */
export type Row = readonly string[];

/** One cell of a table: index of the data row, index of the column, and what it is to hold. */
export interface CellText {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/**
 * One thing done to a table. Places are those of the table as the steps before have left it, 0 for the first row and
 * column.
 */
export type TableStep =
  /** Cells set; rows are added below where a cell lies beyond the last. */
  | { readonly cells: readonly CellText[] }
  /** Rows put in before the row at `at`; below the last where `at` is their number. */
  | { readonly addRows: readonly Row[]; readonly at: number }
  | { readonly removeRows: readonly number[] }
  /** The rows named, in the order named, stand before the row that was at `to`; at the end where `to` is their number. */
  | { readonly moveRows: readonly number[]; readonly to: number }
  /** A column put in. `fill`: rows that reach it get an empty cell there; else rows that end before it stay as they are. */
  | { readonly addColumn: string; readonly at: number; readonly fill?: boolean }
  | { readonly removeColumn: number }
  | { readonly heading: string; readonly column: number }
  /** What a table holds beside columns and rows: `map`, `unread`, `file` …; `undefined` takes it away. */
  | { readonly field: TableField; readonly value: unknown };

export type TableField = Exclude<keyof TableText, 'columns' | 'rows'>;

/** What was done to one table. */
export interface TableChange {
  readonly table: string;
  /** The table that the person saw: rows are found again where others changed it since. Absent: as it stands. */
  readonly of?: TableText;
  readonly steps: readonly TableStep[];
  /** What the steps made of `of`, where the maker goes on working with it. */
  readonly made?: TableText;
}

/** A table taken whole in place of another, as an import does; `undefined` takes it away. */
export interface WholeTable {
  readonly table: string;
  readonly whole: TableText | undefined;
}

/**
 * One value of the plan set: `['name']`, `['rules', 'margin']`, `['prices']`. Of an object or a list only what
 * differs from `from` is set, so that two people who change two rules both keep theirs.
 */
export interface PartChange {
  readonly part: readonly string[];
  /** What the person saw there; absent: what stands there. */
  readonly from?: unknown;
  /** `undefined` takes the value away. */
  readonly value: unknown;
}

/** A change of the plan, made by whoever makes it: a sheet, a form, an import, an agreement. */
export type Change = TableChange | WholeTable | PartChange;
