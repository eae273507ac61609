import type { Extent } from '../../model/index.js';
import { parseChainage, type ChainageUnit } from '../parse/chainage.js';
import { RowCache } from './row-cache.js';
import type { Table } from '../text/table.js';
import { once, plain, type Parser, problemOf } from '../parse/parsed.js';
import type { Sheet, SheetRow } from './sheet.js';

const chainageUnits: readonly string[] = ['m', 'km', 'mi', 'ch', 'yd'] satisfies ChainageUnit[];

/**
 * Reads the extent of a row, its ends in rising order: written from high to low it is the same stretch. One end alone
 * is an error.
 *
 * @param miles Whether the table gives places in miles with chains or yards: `13m` alone then has two meanings.
 */
export function extentReader<K extends 'windows' | 'work'>(
  sheet: Sheet<K>,
  miles: boolean,
): (row: SheetRow<K>) => Extent | undefined {
  const parserOf = (field: 'from' | 'to'): Parser<number> => {
    const unit = sheet.unitOf(field);
    const bare = unit !== undefined && chainageUnits.includes(unit) ? (unit as ChainageUnit) : 'm';
    return once((text) => parseChainage(text, bare));
  };
  const parsers = { from: parserOf('from'), to: parserOf('to') };
  return (row) => readExtent(row, parsers, miles);
}

const inMiles = /\d ?(?:mi|miles?|ch|chains?|c|y|yds?|yards?)$/i;
/** What nearly all cells without miles are like, seen without making them plain. */
const noMiles = /^\d*(?:[.,]\d+)? ?(?:k?m)?$/i;
const bareMetres = /^\d{1,3} ?m$/i;

/** Whether any place of a table is in miles with chains or yards. */
export function hasMiles<K extends 'windows' | 'work'>(
  table: Table,
  sheet: Sheet<K>,
  memory: RowCache<never> | RowCache<object> = new RowCache<never>(),
): boolean {
  const at = (['from', 'to'] as const).flatMap((field) => sheet.match.fields.get(field) ?? []);
  const isIn = (cell: string): boolean =>
    !noMiles.test(cell) && inMiles.test(plain(cell.slice(0, 100)));
  return memory.ofColumns('miles', at, { rows: table.rows }, () =>
    table.rows.some(({ cells }) => at.some((column) => isIn(cells[column] ?? ''))),
  );
}

/** Refuses `13m` in a table of `12m 34ch`: 13 metres, or 13 miles. Whether it did. */
function sayTwoWays<K extends 'windows' | 'work'>(row: SheetRow<K>): boolean {
  for (const field of ['from', 'to'] as const) {
    const own = row.text(field);
    if (!bareMetres.test(plain(own))) continue;
    const number = plain(own).replace(/ ?m$/i, '');
    row.say('error', field, problemOf('place-reads-two-ways', { own, number }));
    return true;
  }
  return false;
}

function readExtent<K extends 'windows' | 'work'>(
  row: SheetRow<K>,
  parsers: { readonly from: Parser<number>; readonly to: Parser<number> },
  miles: boolean,
): Extent | undefined {
  const [from, to] = [row.read('from', parsers.from), row.read('to', parsers.to)];
  for (const field of from === undefined || to === undefined ? (['from', 'to'] as const) : []) {
    const other = field === 'from' ? 'to' : 'from';
    if (row.text(field) !== '' || row.text(other) === '') continue;
    row.say('error', field, problemOf('extent-half-given', { other, field }));
  }
  if ((miles && sayTwoWays(row)) || from === undefined || to === undefined) return undefined;
  return { from: Math.min(from, to), to: Math.max(from, to) };
}
