import type { TableText } from '../../src/model/index.js';

/** One cell of a table: index of the data row, index of the column, and what it is to hold. */
export interface CellText {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/**
 * The table with cells set. Rows are added below where a cell lies beyond the last; a row that already holds what it
 * is given stays the same array, and so does the table when nothing changes.
 *
 * Throws `RangeError` for a cell outside the columns or above the first row.
 */
export function setCells(table: TableText, cells: readonly CellText[]): TableText {
  const changed = new Map<number, string[]>();
  let length = table.rows.length;
  for (const { row, column, text } of cells) {
    if (row < 0 || column < 0 || column >= table.columns.length)
      throw new RangeError(`No cell at row ${row}, column ${column}.`);
    length = Math.max(length, row + 1);
    const held = changed.get(row) ?? table.rows[row] ?? [];
    if ((held[column] ?? '') === text) continue;
    const next = changed.get(row) ?? [...held];
    while (next.length < column) next.push('');
    next[column] = text;
    changed.set(row, next);
  }
  if (changed.size === 0 && length === table.rows.length) return table;
  const rows = table.rows.slice();
  while (rows.length < length) rows.push([]);
  for (const [row, next] of changed) rows[row] = next;
  return { ...table, rows };
}

/** Empty rows before the row at `at`; at the end where `at` is the number of rows. */
export function insertRows(table: TableText, at: number, count: number): TableText {
  if (count < 1) return table;
  const added = Array.from({ length: count }, () => table.columns.map(() => ''));
  return { ...table, rows: [...table.rows.slice(0, at), ...added, ...table.rows.slice(at)] };
}

export function deleteRows(table: TableText, rows: readonly number[]): TableText {
  const gone = new Set(rows);
  const kept = table.rows.filter((_, row) => !gone.has(row));
  return kept.length === table.rows.length ? table : { ...table, rows: kept };
}

/** `heading`, or with the next free number where the table has it: two columns of one name cannot be told apart. */
export function freeHeading(columns: readonly string[], heading: string): string {
  const taken = new Set(columns.map((one) => one.toLowerCase()));
  if (!taken.has(heading.toLowerCase())) return heading;
  let number = 2;
  while (taken.has(`${heading} ${number}`.toLowerCase())) number += 1;
  return `${heading} ${number}`;
}

/** An empty column before the column at `at`. A row too short to reach it stays as it is. */
export function insertColumn(table: TableText, at: number, heading: string): TableText {
  return {
    ...table,
    columns: table.columns.toSpliced(at, 0, heading),
    rows: table.rows.map((row) => (row.length > at ? row.toSpliced(at, 0, '') : row)),
  };
}

export function deleteColumn(table: TableText, at: number): TableText {
  const heading = table.columns[at];
  if (heading === undefined) return table;
  const columns = table.columns.toSpliced(at, 1);
  const rows = table.rows.map((row) => (row.length > at ? row.toSpliced(at, 1) : row));
  return mapped({ ...table, columns, rows }, (to) =>
    to === heading && !columns.includes(heading) ? undefined : to,
  );
}

/** The column under another heading; what was matched to the old heading by hand stays matched. */
export function renameColumn(table: TableText, at: number, heading: string): TableText {
  const old = table.columns[at];
  if (old === undefined || old === heading) return table;
  const columns = table.columns.with(at, heading);
  return mapped({ ...table, columns }, (to) =>
    to === old && !columns.includes(old) ? heading : to,
  );
}

function mapped(table: TableText, turn: (heading: string) => string | undefined): TableText {
  if (!table.map) return table;
  const map = Object.entries(table.map).flatMap(([field, to]) => {
    const next = turn(to);
    return next === undefined ? [] : [[field, next] as const];
  });
  return { ...table, map: Object.fromEntries(map) };
}
