// What is wrong between the tables of a plan, said at the cells it stands in.
import type { Fault } from '../../model/index.js';
import type { FieldOf } from '../headings/fields.js';
import type { SayOfActivity } from './link-context.js';
import { matchColumns, type ColumnMatch } from '../headings/match-columns.js';
import { faultAt } from '../text/place.js';
import type { Given } from '../plan-sources.js';
import type { OddWindow } from './plausible.js';
import { problemOf } from '../parse/parsed.js';

/** Codes of faults that follow from a window that is not there. */
const ofWindows: ReadonlySet<string> = new Set([
  'window-not-known',
  'window-not-used',
  'predecessor-not-used',
]);

/** What is wrong between the tables; where no window at all could be read, that alone is told of windows. */
export function linkFaults(links: readonly Fault[], windows: readonly Fault[]): readonly Fault[] {
  const unreadable = windows.some(
    (window) => window.severity === 'error' && window.row === undefined,
  );
  return unreadable ? links.filter((link) => !ofWindows.has(link.code)) : links;
}

export const byLine = (a: Fault, b: Fault): number => (a.line ?? 0) - (b.line ?? 0);

/** What is said of windows that stand apart from the others, at the cell of their start. */
export function oddFaults(
  odd: readonly OddWindow[],
  { table, file, map }: Given,
  windowRows: ReadonlyMap<string, number>,
): readonly Fault[] {
  const at = matchColumns(table.columns, 'windows', map).fields.get('start')!;
  return odd.map(({ window, severity, problem }) => {
    const row = windowRows.get(window.id)!;
    const { cells, line } = table.rows[row]!;
    const place = { line, row, column: table.columns[at]! };
    return { ...faultAt(place, severity, problem, cells[at]?.trim()), file };
  });
}

/** Trains that name a window there is no row of. They are kept, and count after no window. */
export function trainWindowFaults(
  given: Given | undefined,
  windowRows: ReadonlyMap<string, number>,
): Fault[] {
  if (!given) return [];
  const field: FieldOf<'trains'> = 'window';
  const at = matchColumns(given.table.columns, 'trains', given.map).fields.get(field);
  if (at === undefined) return [];
  return given.table.rows.flatMap(({ cells, line }, row) => {
    const name = cells[at]?.trim() ?? '';
    if (name === '' || windowRows.has(name)) return [];
    const place = { line, row, column: given.table.columns[at]! };
    const problem = problemOf('window-not-known/train', { name });
    return [{ ...faultAt(place, 'warning', problem, name), file: given.file }];
  });
}

/** Says something at a cell of the work table, of the activity named there. */
export function sayOfWork(given: Given, rowOf: ReadonlyMap<string, number>): SayOfActivity {
  const { table, file, map } = given;
  let match: ColumnMatch<'work'> | undefined;
  return (id, field, severity, problem) => {
    match ??= matchColumns(table.columns, 'work', map);
    const row = rowOf.get(id)!;
    const at = match.fields.get(field);
    const { cells, line } = table.rows[row]!;
    const column = at === undefined ? field : table.columns[at]!;
    return {
      ...faultAt(
        { line, row, column },
        severity,
        problem,
        at === undefined ? '' : cells[at]?.trim(),
      ),
      file,
    };
  };
}
