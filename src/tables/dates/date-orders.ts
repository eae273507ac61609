// The order of day and month over all tables of a plan together: whoever writes one table day first does not write
// another month first without saying so.
import { tableKinds, type Fault, type TableKind, type Problem } from '../../model/index.js';
import { dateColumns } from './date-finding.js';
import type { ColumnMap } from '../headings/match-columns.js';
import { doubtfulNumbers, parseMoment, type DateOrder } from '../parse/written-moment.js';
import { faultAt } from '../text/place.js';
import type { Table } from '../text/table.js';
import { problemOf } from '../parse/parsed.js';

interface GivenTable {
  readonly table: Table;
  readonly file: string;
  readonly map?: ColumnMap;
  readonly dateOrder?: DateOrder;
}

/** What the dates of one table say of their order. */
export interface OrderSigns {
  readonly dayFirst: boolean;
  readonly monthFirst: boolean;
  /** Column of the first date that can only be month first. */
  readonly monthFirstAt?: number;
  /** First row with a date that reads both ways, and how many there are. */
  readonly either?: { readonly row: number; readonly column: number; readonly count: number };
  /** Days between the first two dates of the rows, by either order, where both are there and read both ways. */
  readonly spans: readonly (readonly [dayFirst: number, monthFirst: number])[];
}

const startsWithYear = /^\s*\d{3}/;
const startsWithDate = /\d{1,2}[-/. ]\d{1,2}[-/. ]\d{4}/;

/** Whether day and month of a cell may read both ways. */
const isDoubtful = (cell: string): boolean =>
  cell.length >= '1/2/2027'.length &&
  cell.length <= 100 &&
  !startsWithYear.test(cell) &&
  startsWithDate.test(cell);

/** Looks over the dates of a table. O(rows). */
export function orderSigns({ table, map }: GivenTable, kind: TableKind): OrderSigns {
  const at = dateColumns(table.columns, kind, map);
  let dayFirst = false;
  let monthFirstAt: number | undefined;
  let either: { row: number; column: number; count: number } | undefined;
  const spans: (readonly [number, number])[] = [];
  table.rows.forEach(({ cells }, row) => {
    let doubtful = 0;
    for (const column of at) {
      const cell = cells[column] ?? '';
      if (!isDoubtful(cell)) continue;
      doubtful += 1;
      const numbers = doubtfulNumbers(cell);
      if (!numbers) continue;
      const [first, second] = numbers;
      if (first > 12) dayFirst = true;
      else if (second > 12) monthFirstAt ??= column;
      else if (first !== second) {
        if (either) either.count += 1;
        else either = { row, column, count: 1 };
      }
    }
    if (at.length === 2 && doubtful === 2 && spans.length < 500) {
      const days = (order: DateOrder): number | undefined => daysBetween(cells, at, order);
      const [dayFirst, monthFirst] = [days('day-first'), days('month-first')];
      if (dayFirst !== undefined && monthFirst !== undefined && dayFirst !== monthFirst)
        spans.push([dayFirst, monthFirst]);
    }
  });
  return {
    dayFirst,
    monthFirst: monthFirstAt !== undefined,
    ...(monthFirstAt !== undefined && { monthFirstAt }),
    ...(either && { either }),
    spans,
  };
}

function daysBetween(
  cells: readonly string[],
  at: readonly number[],
  order: DateOrder,
): number | undefined {
  const days = at.map((column) => {
    const read = parseMoment(cells[column]!, order);
    if ('problem' in read || !read.value.date) return undefined;
    const { year, month, day } = read.value.date;
    return Date.UTC(year, month - 1, day) / 86_400_000;
  });
  return days[0] === undefined || days[1] === undefined ? undefined : days[1] - days[0];
}

/** No window lasts longer by far, so an order that makes one so long is not the one meant. */
const longDays = 10;
const unlikely = (days: number): boolean => days < 0 || days > longDays;

export interface Orders {
  readonly orders: { readonly [K in TableKind]?: DateOrder };
  readonly faults: readonly Fault[];
}

/**
 * The order of the dates of each table. What a table says for itself holds for it; a table that does not say takes what
 * the others say. Where they say both, a date that reads both ways is refused. Where nothing says anything, day first,
 * unless that makes a window of many days of what would be a night the other way round.
 *
 * @param signsOf `orderSigns`, perhaps remembered.
 */
export function dateOrders(
  tables: { readonly [K in TableKind]?: GivenTable },
  signsOf: (given: GivenTable, kind: TableKind) => OrderSigns,
): Orders {
  const kinds = tableKinds.filter((kind) => tables[kind]);
  const found = kinds.map((kind) => ({
    kind,
    given: tables[kind]!,
    signs: signsOf(tables[kind]!, kind),
  }));
  const says = (order: DateOrder): typeof found =>
    found.filter(({ given, signs }) =>
      given.dateOrder
        ? given.dateOrder === order
        : order === 'day-first'
          ? signs.dayFirst
          : signs.monthFirst && !signs.dayFirst,
    );
  const [day, month] = [says('day-first'), says('month-first')];
  const orders: { [K in TableKind]?: DateOrder } = {};
  const faults: Fault[] = [];
  const report = (
    item: (typeof found)[number],
    severity: Fault['severity'],
    problem: Problem,
  ): void => {
    const { given, signs } = item;
    const { row = 0, column = 0 } = signs.either ?? {};
    const line = given.table.rows[row]?.line ?? given.table.line;
    const at = {
      line: signs.either ? line : given.table.line,
      column: given.table.columns[column]!,
    };
    faults.push({
      ...faultAt(
        at,
        severity,
        problem,
        signs.either ? given.table.rows[row]?.cells[column] : undefined,
      ),
      file: given.file,
    });
  };
  for (const item of found) {
    const { kind, given, signs } = item;
    if (given.dateOrder) orders[kind] = given.dateOrder;
    else if (signs.dayFirst) orders[kind] = 'day-first';
    else if (signs.monthFirst) {
      orders[kind] = 'month-first';
      const column = given.table.columns[signs.monthFirstAt!]!;
      const fault = faultAt(
        { line: given.table.line, column },
        'warning',
        problemOf('dates-month-first'),
      );
      faults.push({ ...fault, file: given.file });
      if (day.length === 0 || !signs.either) continue;
      report(item, 'warning', problemOf('dates-in-two-orders', { dayFirst: filesOf(day) }));
    } else if (!signs.either) orders[kind] = 'day-first';
    else if (day.length > 0 && month.length > 0) {
      orders[kind] = 'day-first';
      report(
        item,
        'error',
        problemOf('dates-read-two-ways', {
          dates: signs.either?.count ?? 0,
          dayFirst: filesOf(day),
          monthFirst: filesOf(month),
        }),
      );
    } else if (month.length > 0) {
      orders[kind] = 'month-first';
      report(
        item,
        'warning',
        problemOf('dates-month-first/told', {
          dates: signs.either?.count ?? 0,
          monthFirst: filesOf(month),
        }),
      );
    } else if (day.length > 0) orders[kind] = 'day-first';
    else orders[kind] = undecided(found, item, report);
  }
  return { orders, faults };
}

/** Nothing says anything: what makes nights of the windows. */
function undecided<T extends { readonly signs: OrderSigns }>(
  found: readonly T[],
  item: T,
  told: (item: T, severity: Fault['severity'], problem: Problem) => void,
): DateOrder {
  const spans = found.flatMap(({ signs }) => signs.spans);
  const odd = spans.filter(([days]) => unlikely(days)).length;
  const oddOther = spans.filter(([, days]) => unlikely(days)).length;
  const order: DateOrder = odd > oddOther ? 'month-first' : 'day-first';
  told(
    item,
    'warning',
    problemOf(order === 'month-first' ? 'dates-month-first/guessed' : 'dates-day-first', {
      dates: item.signs.either?.count ?? 0,
      odd,
      oddOther,
      longDays,
    }),
  );
  return order;
}

const filesOf = (tables: readonly { readonly given: GivenTable }[]): readonly string[] =>
  tables.map(({ given }) => given.file);
