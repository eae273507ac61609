import type { TableKind, TableText } from '../model/index.js';
import { matchColumns } from '../tables/headings/match-columns.js';

/** Where a table has the column of a field, by the same matching that reads it; undefined where it has none. */
export function columnOf(table: TableText, kind: TableKind, field: string): number | undefined {
  const { fields } = matchColumns(table.columns, kind, table.map);
  return (fields as ReadonlyMap<string, number>).get(field);
}
