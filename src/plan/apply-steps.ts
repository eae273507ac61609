import type { TableText } from '../model/index.js';
import type { CellText, TableField, TableStep } from './change.js';

/**
 * The table with steps made. A row that already holds what it is given stays the same array, and so does the table when
 * nothing changes.
 *
 * Throws `RangeError` for a place that the table does not have.
 */
export function applySteps(table: TableText, steps: readonly TableStep[]): TableText {
  return steps.reduce(applyStep, table);
}

function applyStep(table: TableText, step: TableStep): TableText {
  if ('cells' in step) return withCells(table, step.cells);
  if ('addRows' in step) {
    if (step.addRows.length === 0) return table;
    checkPlace(step.at, table.rows.length + 1, 'row');
    const added = step.addRows.map((row) => [...row]);
    return { ...table, rows: table.rows.toSpliced(step.at, 0, ...added) };
  }
  if ('removeRows' in step) {
    const gone = new Set(step.removeRows);
    for (const row of gone) checkPlace(row, table.rows.length, 'row');
    return gone.size === 0
      ? table
      : { ...table, rows: table.rows.filter((_, row) => !gone.has(row)) };
  }
  if ('moveRows' in step) return withMoved(table, step.moveRows, step.to);
  if ('addColumn' in step) return withColumn(table, step.addColumn, step.at, step.fill ?? false);
  if ('removeColumn' in step) return withoutColumn(table, step.removeColumn);
  if ('heading' in step) {
    checkPlace(step.column, table.columns.length, 'column');
    return { ...table, columns: table.columns.with(step.column, step.heading) };
  }
  return withField(table, step.field, step.value);
}

function withCells(table: TableText, cells: readonly CellText[]): TableText {
  const changed = new Map<number, string[]>();
  let { length } = table.rows;
  for (const { row, column, text } of cells) {
    checkPlace(row, Infinity, 'row');
    checkPlace(column, table.columns.length, 'column');
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

function withMoved(table: TableText, moved: readonly number[], to: number): TableText {
  const { rows } = table;
  const set = new Set(moved);
  for (const row of set) checkPlace(row, rows.length, 'row');
  checkPlace(to, rows.length + 1, 'row');
  const stay = (from: number, end: number): string[][] =>
    rows.slice(from, end).filter((_, at) => !set.has(from + at));
  return {
    ...table,
    rows: [...stay(0, to), ...[...set].map((row) => rows[row]!), ...stay(to, rows.length)],
  };
}

function withColumn(table: TableText, heading: string, at: number, fill: boolean): TableText {
  checkPlace(at, table.columns.length + 1, 'column');
  const reaches = (row: readonly string[]): boolean =>
    row.length > at || (fill && row.length === at);
  return {
    ...table,
    columns: table.columns.toSpliced(at, 0, heading),
    rows: table.rows.map((row) => (reaches(row) ? row.toSpliced(at, 0, '') : row)),
  };
}

function withoutColumn(table: TableText, at: number): TableText {
  checkPlace(at, table.columns.length, 'column');
  return {
    ...table,
    columns: table.columns.toSpliced(at, 1),
    rows: table.rows.map((row) => (row.length > at ? row.toSpliced(at, 1) : row)),
  };
}

function withField(table: TableText, field: TableField, value: unknown): TableText {
  const { [field]: _, ...rest } = table;
  return (value === undefined ? rest : { ...rest, [field]: value }) as TableText;
}

function checkPlace(place: number, below: number, what: string): void {
  if (!Number.isInteger(place) || place < 0 || place >= below)
    throw new RangeError(`The table has no ${what} at ${place}.`);
}
