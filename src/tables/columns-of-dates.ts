import type { TableKind } from '../model/index.js';
import type { FieldOf } from './fields.js';
import { dateOrderOf } from './parse/date-order.js';
import { doubtfulNumbers, type DateOrder } from './parse/written-moment.js';
import { faultAt } from './place.js';
import type { Sheet } from './sheet.js';
import type { Table } from './table.js';

/**
 * The order of the dates of a sheet, from all its date columns together. Month first, which no reader here expects,
 * is said once, at the heading of the first such column.
 */
export function dateOrderOfSheet<K extends TableKind>(
  table: Table,
  sheet: Sheet<K>,
  columns: readonly FieldOf<K>[],
  file: string,
  chosen?: DateOrder,
): DateOrder {
  if (chosen) return chosen;
  const order = dateOrderOf(sheet.cellsOf(columns));
  if (order === 'month-first') {
    const column = columns.find((one) =>
      sheet.cellsOf([one]).some((cell) => (doubtfulNumbers(cell)?.[1] ?? 0) > 12),
    );
    const heading = column === undefined ? {} : { column: sheet.headingOf(column) };
    const fault = faultAt({ line: table.line, ...heading }, 'warning', {
      code: 'dates-month-first',
      message:
        'All dates of this file are read month first: some have a second number above 12, and none a first.',
      mend: 'Write dates as 2027-03-28 to leave no doubt.',
    });
    sheet.faults.push({ ...fault, file });
  }
  return order;
}
