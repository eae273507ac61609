import {
  tableIn,
  type PlanDocument,
  type TableKind,
  type TableText,
} from '../../src/model/index.js';
import { headingOf, rowWith, valueIn } from './table-lookup.js';

/** The table with one cell written anew; a column is added where the field has none. */
function withCell(table: TableText, row: number, field: string, text: string): TableText {
  const heading = headingOf(table, field);
  const columns = heading === undefined ? [...table.columns, field] : table.columns;
  const column = heading === undefined ? columns.length - 1 : columns.indexOf(heading);
  const rows = table.rows.map((cells, index) => {
    if (index !== row) return cells;
    const next = [...cells];
    while (next.length <= column) next.push('');
    next[column] = text;
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
  const from = rowWith(windows, 'window', like);
  const start: TableText = { ...windows, rows: [...windows.rows, [...(windows.rows[from] ?? [])]] };
  const table = Object.entries(cells).reduce(
    (made, [field, text]) => withCell(made, start.rows.length - 1, field, text),
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
  const row = rowWith(table, key, id);
  if (row < 0) return document;
  const next = Object.entries(cells).reduce(
    (made, [field, text]) =>
      onlyEmpty && valueIn(made, row, field) !== '' ? made : withCell(made, row, field, text),
    table,
  );
  return { ...document, tables: { ...document.tables, [kind]: next } };
}
