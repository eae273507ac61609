import type { Fault, TableText } from '../../../src/model/index.js';
import { evenPlaces, type Places } from '../../shared/tracks.js';

export const ROW_HEIGHT = 30;
/** Row height for touch. */
export const TOUCH_ROW_HEIGHT = 40;
export const HEAD_HEIGHT = 34;

const rowsRead = 300;
/** Width of a letter in pixels, estimated high. */
export const LETTER = 7.9;
const number = /^[-+]?\d+(?:\.\d+)?$/;

/** Width of each column in pixels, from its heading and first rows. */
export function columnWidths(table: TableText): number[] {
  return table.columns.map((heading, column) => {
    let longest = heading.length + 3;
    for (const row of table.rows.slice(0, rowsRead)) {
      const size = row[column]?.length ?? 0;
      if (size > longest) longest = size;
    }
    return Math.round(Math.min(280, Math.max(64, longest * LETTER + 24)));
  });
}

/** Whether a column holds figures, which are right-aligned; judged by the first rows. */
export function isFigures(table: TableText, column: number): boolean {
  let some = false;
  for (const row of table.rows.slice(0, rowsRead)) {
    const text = row[column]?.trim() ?? '';
    if (text === '') continue;
    if (!number.test(text)) return false;
    some = true;
  }
  return some;
}

/** Rows to draw for a scroll position, with a few beyond the visible ones; half-open. */
export function rowsInView(
  scrollTop: number,
  height: number,
  count: number,
  rowHeight = ROW_HEIGHT,
): Places {
  return evenPlaces(scrollTop, scrollTop + height, rowHeight, count, 4);
}

/** Columns to draw besides the first, which is always drawn; half-open. `widths` are those of the shown columns. */
export function columnsInView(
  scrollLeft: number,
  width: number,
  widths: readonly number[],
): Places {
  const beyond = 200;
  let first = 1;
  let left = widths[0] ?? 0;
  while (first < widths.length && left + widths[first]! < scrollLeft - beyond) {
    left += widths[first]!;
    first += 1;
  }
  let end = first;
  while (end < widths.length && left < scrollLeft + width + beyond) {
    left += widths[end]!;
    end += 1;
  }
  return { first, end };
}

/** Faults by row and column. A fault without a column is put at the first. */
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
