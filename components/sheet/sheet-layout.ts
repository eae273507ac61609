import type { Fault, TableText } from '../../src/model/index.js';

export const ROW_HEIGHT = 30;
export const HEAD_HEIGHT = 34;

/** Pixels for each column, from the text of the heading and of the first rows. */
export function columnWidths(table: TableText): number[] {
  return table.columns.map((heading, column) => {
    let longest = heading.length + 1;
    for (const row of table.rows.slice(0, 300)) {
      const size = row[column]?.length ?? 0;
      if (size > longest) longest = size;
    }
    return Math.round(Math.min(280, Math.max(56, longest * 8 + 28)));
  });
}

/** Rows to draw for a scroll position, a few beyond what is seen; half-open. */
export function rowsInView(
  scrollTop: number,
  height: number,
  count: number,
): { first: number; end: number } {
  const first = Math.max(0, Math.floor(scrollTop / ROW_HEIGHT) - 4);
  const end = Math.min(count, Math.ceil((scrollTop + height) / ROW_HEIGHT) + 4);
  return { first: Math.min(first, count), end };
}

/** Faults by row and column. A fault that names no column stands at the first. */
export function faultsByCell(faults: readonly Fault[], columns: readonly string[]) {
  const found = new Map<number, Map<number, Fault[]>>();
  for (const fault of faults) {
    if (fault.row === undefined) continue;
    const column = Math.max(0, columns.indexOf(fault.column ?? ''));
    let row = found.get(fault.row);
    if (!row) found.set(fault.row, (row = new Map<number, Fault[]>()));
    const cell = row.get(column);
    if (cell) cell.push(fault);
    else row.set(column, [fault]);
  }
  return found;
}
