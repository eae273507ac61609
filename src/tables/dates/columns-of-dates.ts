import type { FieldOf, SheetKind } from '../headings/fields.js';
import { dateOrderOf } from '../parse/date-order.js';
import { doubtfulNumbers, type DateOrder } from '../parse/written-moment.js';
import { faultAt } from '../text/place.js';
import type { Sheet } from '../kinds/sheet.js';
import type { Table } from '../text/table.js';
import { problemOf } from '../parse/parsed.js';

/**
 * The order of the dates of a sheet, from all its date columns together. Month first, which no reader here expects,
 * is said once, at the heading of the first such column.
 */
export function dateOrderOfSheet<K extends SheetKind>(
  table: Table,
  sheet: Sheet<K>,
  columns: readonly FieldOf<K>[],
  file: string,
  chosen?: DateOrder,
): DateOrder {
  if (chosen) return chosen;
  const order = dateOrderOf(sheet.cellsOf(columns));
  if (order === 'month-first') {
    const column = columns.find((item) =>
      sheet.cellsOf([item]).some((cell) => (doubtfulNumbers(cell)?.[1] ?? 0) > 12),
    );
    const heading = column === undefined ? {} : { column: sheet.headingOf(column) };
    const fault = faultAt(
      { line: table.line, ...heading },
      'warning',
      problemOf('dates-month-first'),
    );
    sheet.faults.push({ ...fault, file });
  }
  return order;
}
