import { localTimeOf } from '../../calendar/index.js';
import type { AccessWindow, Fault, TableKind } from '../../model/index.js';
import { matchColumns } from '../headings/match-columns.js';
import { parseMoment } from '../parse/written-moment.js';
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

/**
 * Warnings of dates that lie years away from every window, as a slip in a year does. O(cells of dates); only those with
 * such a year are read whole.
 */
export function farDateFaults(
  kind: TableKind,
  { table, file, map, dateOrder = 'day-first' }: Given,
  windows: readonly AccessWindow[],
): readonly Fault[] {
  const names = dated[kind];
  if (!names || windows.length === 0) return [];
  let [first, last] = [Infinity, -Infinity];
  for (const { start, end, zone } of windows) {
    first = Math.min(first, localTimeOf(start, zone).year);
    last = Math.max(last, localTimeOf(end, zone).year);
  }
  const isNear = (year: number): boolean =>
    year >= first - yearsAround && year <= last + yearsAround;
  const fields: ReadonlyMap<string, number> = matchColumns(table.columns, kind, map).fields;
  return names.flatMap((name) => {
    const at = fields.get(name);
    if (at === undefined) return [];
    const faults: Fault[] = [];
    table.rows.forEach(({ cells, line }, row) => {
      const text = cells[at]?.trim() ?? '';
      // Most cells are blank: a loop that makes nothing of them.
      const years = text === '' ? null : text.match(yearText);
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
