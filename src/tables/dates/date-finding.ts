import type { TableKind } from '../../model/index.js';
import type { FieldOf } from '../headings/fields.js';
import { matchColumns, type ColumnMap } from '../headings/match-columns.js';
import { dateOrderOf } from '../parse/date-order.js';
import { doubtfulNumbers, type DateOrder } from '../parse/written-moment.js';
import type { Table } from '../text/table.js';

const dateFieldsByKind: { readonly [K in TableKind]: readonly FieldOf<K>[] } = {
  windows: ['start', 'end'],
  work: ['not before', 'key date'],
  resources: ['from', 'to'],
  trains: ['passes at'],
  roster: ['start', 'end'],
  temperatures: ['time'],
  forecast: ['time'],
  plant: [],
};

/** What the dates of a table tell of the order they are written in. */
export interface DateFinding {
  /** The order that all dates together settle, or the usual one here where none does. */
  readonly order: DateOrder;
  /** Whether some date can be read one way only. */
  readonly settled: boolean;
  /** Rows with a date that can only be day first, or only month first: `28/03/2027`, `03/28/2027`. */
  readonly dayFirstOnly: number;
  readonly monthFirstOnly: number;
  /** Rows with a date that means another day the other way round: they change meaning with the order. */
  readonly eitherWay: number;
  /** The first such cell. */
  readonly example?: { readonly line: number; readonly text: string };
}

/** The columns of a table that hold dates, by index. */
export function dateColumns(
  columns: readonly string[],
  kind: TableKind,
  map: ColumnMap = {},
): readonly number[] {
  const { fields } = matchColumns(columns, kind, map);
  return (dateFieldsByKind[kind] as readonly FieldOf<typeof kind>[]).flatMap((field) => {
    const at = fields.get(field);
    return at === undefined ? [] : [at];
  });
}

/** Looks at every date of a table. */
export function findDates(table: Table, kind: TableKind, map: ColumnMap = {}): DateFinding {
  const at = dateColumns(table.columns, kind, map);
  const counts = { dayFirstOnly: 0, monthFirstOnly: 0, eitherWay: 0 };
  let example: DateFinding['example'];
  const texts: string[] = [];
  for (const { cells, line } of table.rows) {
    let seen: Set<keyof typeof counts> | undefined;
    for (const column of at) {
      const text = (cells[column] ?? '').slice(0, 100);
      const kindOf = readingsOf(text);
      if (kindOf === undefined) continue;
      texts.push(text);
      if (kindOf === 'same') continue;
      (seen ??= new Set()).add(kindOf);
      if (kindOf === 'eitherWay') example ??= { line, text };
    }
    if (seen) for (const text of seen) counts[text] += 1;
  }
  return {
    order: dateOrderOf(texts),
    settled: counts.dayFirstOnly + counts.monthFirstOnly > 0,
    ...counts,
    ...(example && { example }),
  };
}

function readingsOf(
  text: string,
): 'dayFirstOnly' | 'monthFirstOnly' | 'eitherWay' | 'same' | undefined {
  const numbers = doubtfulNumbers(text);
  if (!numbers) return undefined;
  const [first, second] = numbers;
  if (first > 12) return 'dayFirstOnly';
  if (second > 12) return 'monthFirstOnly';
  return first === second ? 'same' : 'eitherWay';
}

const numbersOfDate = /(^|[^\d])(\d{1,2})([-/. ])(\d{1,2})\3(\d{4})(?!\d)/;

/** A cell with its date written year first, so that it means the same in any table: `3/4/2027 23:00` as `2027-04-03 23:00`. */
export function yearFirst(text: string, order: DateOrder): string {
  if (!doubtfulNumbers(text)) return text;
  return text.replace(
    numbersOfDate,
    (_, before: string, a: string, __, b: string, year: string) => {
      const [day, month] = order === 'day-first' ? [a, b] : [b, a];
      return `${before}${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
    },
  );
}
