import type { PlanDocument } from '../model/index.js';
import { isRowsChange, type Edit, type Row, type Splice } from './edit.js';
import { sameJson, sameRow } from './same.js';

type Parts = Readonly<Record<string, unknown>>;

/**
 * Applies an edit. What it does not touch is shared with the document given.
 *
 * @throws {RangeError} Where the document does not have what the edit replaces, so that no other rows are changed.
 */
export function applyEdit(document: PlanDocument, edit: Edit): PlanDocument {
  let made: Parts = { ...document };
  for (const change of edit.changes) {
    if (isRowsChange(change)) {
      const path = ['tables', change.table, 'rows'];
      const rows = valueIn(made, path);
      if (!Array.isArray(rows)) throw misfit(edit, path);
      made = withValue(made, path, splicedRows(edit, change.table, rows, change.splices));
    } else {
      if (!sameJson(valueIn(made, change.part), change.before)) throw misfit(edit, change.part);
      made = withValue(made, change.part, change.after);
    }
  }
  return made as PlanDocument;
}

function splicedRows(
  edit: Edit,
  table: string,
  rows: readonly Row[],
  splices: readonly Splice[],
): Row[] {
  const made: Row[] = [];
  let from = 0;
  for (const { at, removed, added } of splices) {
    const fits =
      at >= from &&
      at + removed.length <= rows.length &&
      removed.every((row, index) => sameRow(row, rows[at + index]));
    if (!fits) throw misfit(edit, ['tables', table, 'rows', String(at)]);
    for (let index = from; index < at; index += 1) made.push(rows[index]!);
    made.push(...added);
    from = at + removed.length;
  }
  for (let index = from; index < rows.length; index += 1) made.push(rows[index]!);
  return made;
}

function misfit(edit: Edit, part: readonly string[]): RangeError {
  return new RangeError(
    `The edit "${edit.label}" does not fit: ${part.join('.')} is not what it was made for.`,
  );
}

function valueIn(from: unknown, path: readonly string[]): unknown {
  let at = from;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Parts)[key];
  }
  return at;
}

function withValue(from: Parts, path: readonly string[], value: unknown): Parts {
  const [key, ...rest] = path;
  if (key === undefined) return from;
  const held = Object.hasOwn(from, key) ? from[key] : undefined;
  const next = rest.length === 0 ? value : withValue((held ?? {}) as Parts, rest, value);
  if (next !== undefined) return { ...from, [key]: next };
  return Object.fromEntries(Object.entries(from).filter(([name]) => name !== key));
}
