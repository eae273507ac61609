import { columnOf } from '../../../src/engine/index.js';
import type { TableKind, TableText } from '../../../src/model/index.js';

/** The heading that carries a field, by the matching that the table is read with. */
export function headingOf(table: TableText, kind: TableKind, field: string): string | undefined {
  const column = columnOf(table, kind, field);
  return column === undefined ? undefined : table.columns[column];
}

/** The first row whose cell under a field holds a text; -1 when none does. */
export function rowWith(table: TableText, kind: TableKind, field: string, text: string): number {
  const column = columnOf(table, kind, field);
  return column === undefined ? -1 : table.rows.findIndex((row) => row[column]?.trim() === text);
}

/** What a row holds under a field; empty when the field has no column. */
export function valueIn(table: TableText, kind: TableKind, row: number, field: string): string {
  const column = columnOf(table, kind, field);
  return column === undefined ? '' : (table.rows[row]?.[column]?.trim() ?? '');
}
