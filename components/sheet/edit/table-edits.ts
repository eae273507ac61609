import type { TableText } from '../../../src/model/index.js';
import type { TableStep } from '../../../src/plan/change.js';

/** The step that inserts empty rows before row `at`; at the end when `at` is the number of rows. */
export function emptyRows(table: TableText, at: number, count: number): TableStep {
  return { addRows: Array.from({ length: count }, () => table.columns.map(() => '')), at };
}

/** `heading`, with the next free number if it exists already: headings must be unique. */
export function freeHeading(columns: readonly string[], heading: string): string {
  const taken = new Set(columns.map((column) => column.toLowerCase()));
  if (!taken.has(heading.toLowerCase())) return heading;
  let number = 2;
  while (taken.has(`${heading} ${number}`.toLowerCase())) number += 1;
  return `${heading} ${number}`;
}

/** The steps that remove a column and its manual match. */
export function withoutColumn(table: TableText, at: number): readonly TableStep[] {
  const heading = table.columns[at];
  if (heading === undefined) return [];
  const columns = table.columns.toSpliced(at, 1);
  return [
    { removeColumn: at },
    ...mapped(table, (to) => (to === heading && !columns.includes(heading) ? undefined : to)),
  ];
}

/** The steps that rename a column; a manual match of the old heading is kept. */
export function renamedColumn(
  table: TableText,
  column: number,
  heading: string,
): readonly TableStep[] {
  const old = table.columns[column];
  if (old === undefined || old === heading) return [];
  const columns = table.columns.with(column, heading);
  return [
    { heading, column },
    ...mapped(table, (to) => (to === old && !columns.includes(old) ? heading : to)),
  ];
}

function mapped(
  { map }: TableText,
  turn: (heading: string) => string | undefined,
): readonly TableStep[] {
  if (!map) return [];
  const next = Object.entries(map).flatMap(([field, to]) => {
    const turned = turn(to);
    return turned === undefined ? [] : [[field, turned] as const];
  });
  return [{ field: 'map', value: Object.fromEntries(next) }];
}
