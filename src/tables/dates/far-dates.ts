import { localTimeOf } from '../../calendar/index.js';
import type { AccessWindow, Fault, TableKind } from '../../model/index.js';
import { matchColumns } from '../headings/match-columns.js';
import { parseMoment } from '../parse/written-moment.js';
import { trimmed } from '../text/blank.js';
import { faultAt } from '../text/place.js';
import type { Given } from '../plan-sources.js';
import { problemOf } from '../parse/parsed.js';

/** Columns of dates that belong to the time of the windows. */
const dated: { readonly [K in TableKind]?: readonly string[] } = {
  work: ['not before', 'key date'],
  resources: ['from', 'to'],
  trains: ['passes at'],
  roster: ['start', 'end'],
  temperatures: ['time'],
  forecast: ['time'],
};
/** Years before the first and after the last window within which a date is nothing unlikely. */
const yearsAround = 2;
/** A stock that is always there is often written from or until such a year. */
const forEver = { from: 2010, to: 2090 } as const;
const yearText = /(?<!\d)\d{4}(?!\d)/g;
const yearFirst = /^\d{4}(?!\d)/;

/** The first and the last year of all windows. */
export type Years = readonly [first: number, last: number];

/** Undefined where there is no window. Asks the clocks of each zone twice, however many windows there are. */
export function yearsOf(windows: readonly AccessWindow[]): Years | undefined {
  const zones = new Map<string, { first: number; last: number }>();
  for (const { start, end, zone } of windows) {
    const known = zones.get(zone);
    if (!known) zones.set(zone, { first: start, last: end });
    else if (start < known.first) known.first = start;
    if (known && end > known.last) known.last = end;
  }
  if (zones.size === 0) return undefined;
  const years = [...zones].flatMap(([zone, { first, last }]) =>
    [first, last].map((at) => localTimeOf(at, zone).year),
  );
  return [Math.min(...years), Math.max(...years)];
}

/**
 * Warnings of dates that lie years away from every window, as a slip in a year does. O(cells of dates); only those with
 * such a year are read whole.
 */
export function farDateFaults(
  kind: TableKind,
  { table, file, map, dateOrder = 'day-first' }: Given,
  [first, last]: Years,
): readonly Fault[] {
  const names = dated[kind];
  if (!names) return [];
  const isNear = (year: number): boolean =>
    year >= first - yearsAround && year <= last + yearsAround;
  const fields: ReadonlyMap<string, number> = matchColumns(table.columns, kind, map).fields;
  return names.flatMap((name) => {
    const at = fields.get(name);
    if (at === undefined) return [];
    const faults: Fault[] = [];
    table.rows.forEach(({ cells, line }, row) => {
      const text = trimmed(cells[at] ?? '');
      // Most cells are blank, and most others begin with their year.
      if (text === '' || (yearFirst.test(text) && isNear(Number(text.slice(0, 4))))) return;
      const years = text.match(yearText);
      if (!years || years.some((year) => isNear(Number(year)))) return;
      const read = parseMoment(text, dateOrder);
      const year = 'problem' in read ? undefined : read.value.date?.year;
      if (year === undefined || isNear(year) || isForEver(kind, name, year)) return;
      const away = year < first ? first - year : year - last;
      const problem = problemOf('date-far-off', {
        text,
        away,
        maybe: first === last ? first : undefined,
      });
      const place = { line, row, column: table.columns[at]! };
      faults.push({ ...faultAt(place, 'warning', problem, text), file });
    });
    return faults;
  });
}

const isForEver = (kind: TableKind, name: string, year: number): boolean =>
  kind === 'resources' && (name === 'from' ? year < forEver.from : year > forEver.to);
