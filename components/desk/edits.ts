import {
  tableIn,
  type PlanDocument,
  type TableKind,
  type TableText,
} from '../../src/model/index.js';
import { columnOf } from '../../src/engine/index.js';
import { rowWith, valueIn } from './table-lookup.js';

/** The table with one cell written anew; a column is added where the field has none. */
function withCell(
  table: TableText,
  kind: TableKind,
  row: number,
  field: string,
  text: string,
): TableText {
  const known = columnOf(table, kind, field);
  const columns = known === undefined ? [...table.columns, field] : table.columns;
  const column = known ?? columns.length - 1;
  const rows = table.rows.map((cells, index) => {
    // In a table that gets a column every row gets its cell: a row that is too short would be complained of.
    if (index !== row && (known !== undefined || cells.length !== column)) return cells;
    const next = [...cells];
    while (next.length <= column) next.push('');
    if (index === row) next[column] = text;
    return next;
  });
  return { ...table, columns, rows };
}

/** The document with one more window: the cells given, and for the rest those of the window it is like. */
export function withWindow(
  document: PlanDocument,
  like: string,
  cells: Readonly<Record<string, string>>,
): PlanDocument {
  const { windows } = document.tables;
  const from = rowWith(windows, 'windows', 'window', like);
  const start: TableText = { ...windows, rows: [...windows.rows, [...(windows.rows[from] ?? [])]] };
  const table = Object.entries(cells).reduce(
    (made, [field, text]) => withCell(made, 'windows', start.rows.length - 1, field, text),
    start,
  );
  return { ...document, tables: { ...document.tables, windows: table } };
}

/**
 * The document with cells of one row written anew.
 *
 * `id` is what the row holds under `key`. The document itself when there is no such row.
 * `onlyEmpty`: cells that hold something stay as they are.
 */
export function withCells(
  document: PlanDocument,
  kind: TableKind,
  key: string,
  id: string,
  cells: Readonly<Record<string, string>>,
  { onlyEmpty = false }: { readonly onlyEmpty?: boolean } = {},
): PlanDocument {
  const table = tableIn(document, kind);
  const row = rowWith(table, kind, key, id);
  if (row < 0) return document;
  const next = Object.entries(cells).reduce(
    (made, [field, text]) =>
      onlyEmpty && valueIn(made, kind, row, field) !== ''
        ? made
        : withCell(made, kind, row, field, text),
    table,
  );
  return { ...document, tables: { ...document.tables, [kind]: next } };
}
