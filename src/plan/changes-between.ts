import { rowsBetween } from '../edits/index.js';
import type { PlanDocument, TableText } from '../model/index.js';
import { tooLong } from '../model/too-long.js';
import type { CellText, Change, Row, TableField, TableStep } from './change.js';

type Parts = Readonly<Record<string, unknown>>;

/**
 * The changes that lead from one document to another, for a file that is taken into an open plan: who types or fills in
 * a form knows what they changed, and need not ask.
 *
 * Rows are told apart by what they hold. A row that keeps its first cell or half of its cells is the same row retyped.
 */
export function changesBetween(before: PlanDocument, after: PlanDocument): Change[] {
  const old = before as unknown as Parts;
  const now = after as unknown as Parts;
  const parts = keysOf(old, now).flatMap((key): Change[] =>
    key === 'tables' || old[key] === now[key]
      ? []
      : [{ part: [key], from: old[key], value: now[key] }],
  );
  const tables = keysOf(before.tables, after.tables).flatMap((name) =>
    tableChanges(
      name,
      (before.tables as Parts)[name] as TableText | undefined,
      (after.tables as Parts)[name] as TableText | undefined,
    ),
  );
  return [...parts, ...tables];
}

function tableChanges(
  table: string,
  before: TableText | undefined,
  after: TableText | undefined,
): Change[] {
  if (before === after) return [];
  const whole: Change = { table, whole: after };
  if (!before || !after) return [whole];
  const kept = before.columns.every((heading, at) => after.columns[at] === heading);
  if (!kept || before.columns.length === 0) return [whole];
  const steps = [...fieldSteps(before, after), ...columnSteps(before, after)];
  const cells = rowSteps(before, after);
  // Where hardly a row is as it was, it is another table.
  if (cells.length > 1_000 && cells.length > after.rows.length) return [whole];
  // A file may hold a longer text than is ever typed: such a table is taken whole.
  if (tooLong([cells, steps]) !== undefined) return [whole];
  steps.push(...cells);
  return steps.length === 0 ? [] : [{ table, of: before, steps }];
}

function fieldSteps(before: TableText, after: TableText): TableStep[] {
  const old = before as unknown as Parts;
  const now = after as unknown as Parts;
  return keysOf(old, now)
    .filter((key) => key !== 'rows' && key !== 'columns' && old[key] !== now[key])
    .map((key) => ({ field: key as TableField, value: now[key] }));
}

function columnSteps(before: TableText, after: TableText): TableStep[] {
  const first = before.columns.length;
  return after.columns
    .slice(first)
    .map((heading, k): TableStep => ({ addColumn: heading, at: first + k }));
}

/** From the last row to the first, so that places before a step are those of the table as it was. */
function rowSteps(before: TableText, after: TableText): TableStep[] {
  const width = after.columns.length;
  return rowsBetween(before.rows, after.rows)
    .toReversed()
    .flatMap(({ at, removed, added }): TableStep[] => {
      const pairs = Math.min(removed.length, added.length);
      const steps: TableStep[] = [];
      if (added.length > pairs) steps.push({ addRows: added.slice(pairs), at: at + pairs });
      if (removed.length > pairs)
        steps.push({ removeRows: removed.slice(pairs).map((_, k) => at + pairs + k) });
      for (let k = pairs - 1; k >= 0; k -= 1) {
        const [row, next] = [removed[k]!, added[k]!];
        if (isRetyped(row, next, width)) steps.push({ cells: cellsBetween(row, next, at + k) });
        else steps.push({ removeRows: [at + k] }, { addRows: [next], at: at + k });
      }
      return steps;
    });
}

function isRetyped(row: Row, next: Row, width: number): boolean {
  // Cells beyond the columns, and a row that grows shorter, can only be told by the row as a whole.
  if (next.length < row.length || next.length > width || row.length > width) return false;
  const same = next.filter((text, at) => (row[at] ?? '') === text).length;
  return (row[0] ?? '') === next[0] || 2 * same >= next.length;
}

function cellsBetween(row: Row, next: Row, at: number): CellText[] {
  return next.flatMap((text, column) =>
    (row[column] ?? '') === text ? [] : [{ row: at, column, text }],
  );
}

function keysOf(a: object, b: object): string[] {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])];
}
