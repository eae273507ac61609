import type { Fault, PlanDocument } from '../model/index.js';
import type { FitVerdict } from '../planner/fit/types.js';
import { matchColumns } from '../tables/index.js';

const none: ReadonlyMap<string, number> = new Map();

/** How many rows of each package have an error and are not in the plan. */
export function rowsLeftOut(
  document: PlanDocument,
  faults: readonly Fault[],
): ReadonlyMap<string, number> {
  const { work } = document.tables;
  const rows = new Set(
    faults.flatMap((fault) =>
      fault.severity === 'error' && fault.file === work.file && fault.row !== undefined
        ? [fault.row]
        : [],
    ),
  );
  if (rows.size === 0) return none;
  const counts = new Map<string, number>();
  const { fields } = matchColumns(work.columns, 'work', work.map);
  const [named, own] = [fields.get('package'), fields.get('activity')];
  for (const row of rows) {
    const cell = (at: number | undefined): string =>
      at === undefined ? '' : (work.rows[row]?.[at]?.trim() ?? '');
    // As the reader has it: a row without a package is a package of its own.
    const name = cell(named) || cell(own);
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
}

/** The verdict on what could be read of a package, which never says that the whole fits. */
export function doubted(verdict: FitVerdict, rows: number): FitVerdict {
  const text = `${rows} ${rows === 1 ? 'row' : 'rows'} of ${verdict.package} could not be read: what is judged is the rest`;
  return {
    ...verdict,
    fits: false,
    spareMinutes: null,
    reasons: [{ code: 'rows-left-out', text }, ...verdict.reasons],
  };
}
