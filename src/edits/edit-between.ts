import type { PlanDocument } from '../model/index.js';
import type { Edit, PartChange, Row, RowsChange } from './edit.js';
import { rowsBetween } from './rows-between.js';
import { sameJson } from './same.js';

type Parts = Readonly<Record<string, unknown>>;

/**
 * The edit that turns one document into the next. Parts that are the same object in both count as unchanged, so the cost
 * is that of the change, not of the document.
 *
 * Tables and entries are found by name, so a table added to the model needs no change here.
 */
export function editBetween(before: PlanDocument, after: PlanDocument, label: string): Edit {
  const old: Parts = { ...before };
  const now: Parts = { ...after };
  const changes = keysOf(old, now).flatMap((key) =>
    key === 'tables'
      ? tablesBetween(before.tables, after.tables)
      : partBetween([key], old[key], now[key]),
  );
  return { label, changes };
}

function tablesBetween(before: Parts, after: Parts): (RowsChange | PartChange)[] {
  return keysOf(before, after).flatMap((table) => {
    const old = before[table] as Parts | undefined;
    const now = after[table] as Parts | undefined;
    if (old === now) return [];
    if (old === undefined || now === undefined) return partBetween(['tables', table], old, now);
    return keysOf(old, now).flatMap((key): (RowsChange | PartChange)[] =>
      key === 'rows'
        ? rowsChange(table, old[key] as readonly Row[], now[key] as readonly Row[])
        : partBetween(['tables', table, key], old[key], now[key]),
    );
  });
}

function rowsChange(table: string, before: readonly Row[], after: readonly Row[]): RowsChange[] {
  if (before === after) return [];
  const splices = rowsBetween(before, after);
  return splices.length === 0 ? [] : [{ table, splices }];
}

function partBetween(part: readonly string[], before: unknown, after: unknown): PartChange[] {
  if (before === after || sameJson(before, after)) return [];
  return [{ part, ...(before !== undefined && { before }), ...(after !== undefined && { after }) }];
}

function keysOf(a: Parts, b: Parts): string[] {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])];
}
