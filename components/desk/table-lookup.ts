import type { TableText } from '../../src/model/index.js';

/** The heading that carries a field: the one chosen by hand, else the one that reads the same. */
export function headingOf(table: TableText, field: string): string | undefined {
  const plain = (text: string): string =>
    text
      .trim()
      .toLowerCase()
      .replaceAll(/[\s_-]+/g, ' ');
  return table.map?.[field] ?? table.columns.find((heading) => plain(heading) === field);
}

/** The first row whose cell under a field holds a text; -1 when none does. */
export function rowWith(table: TableText, field: string, text: string): number {
  const column = table.columns.indexOf(headingOf(table, field) ?? '');
  return column < 0 ? -1 : table.rows.findIndex((row) => row[column]?.trim() === text);
}

/** What a row holds under a field; empty when the field has no column. */
export function valueIn(table: TableText, row: number, field: string): string {
  const column = table.columns.indexOf(headingOf(table, field) ?? '');
  return table.rows[row]?.[column]?.trim() ?? '';
}
