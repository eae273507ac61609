import type { TableText } from '../../../src/model/index.js';
import type { TableStep } from '../../../src/plan/change.js';

/** Empty rows before the row at `at`; at the end where `at` is the number of rows. */
export function emptyRows(table: TableText, at: number, count: number): TableStep {
  return { addRows: Array.from({ length: count }, () => table.columns.map(() => '')), at };
}

/** `heading`, or with the next free number where the table has it: two columns of one name cannot be told apart. */
export function freeHeading(columns: readonly string[], heading: string): string {
  const taken = new Set(columns.map((column) => column.toLowerCase()));
  if (!taken.has(heading.toLowerCase())) return heading;
  let number = 2;
  while (taken.has(`${heading} ${number}`.toLowerCase())) number += 1;
  return `${heading} ${number}`;
}

/** The steps that take a column away, with what was matched to it by hand. */
export function withoutColumn(table: TableText, at: number): readonly TableStep[] {
  const heading = table.columns[at];
  if (heading === undefined) return [];
  const columns = table.columns.toSpliced(at, 1);
  return [
    { removeColumn: at },
    ...mapped(table, (to) => (to === heading && !columns.includes(heading) ? undefined : to)),
  ];
}

/** The steps that put a column under another heading; what was matched to the old heading by hand stays matched. */
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
