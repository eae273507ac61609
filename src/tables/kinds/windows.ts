import { isZone } from '../../calendar/index.js';
import type { AccessWindow, Fault } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { extentReader, hasMiles } from './extent.js';
import { gatherNamed, parseName, type Named } from './identity.js';
import { parseIsolation } from '../parse/isolation.js';
import { parseNames } from '../parse/list.js';
import { momentParser } from '../parse/moment.js';
import { parsePercent } from '../parse/number.js';
import { once, refuse, type Parsed, type Parser } from '../parse/parsed.js';
import { spanOf, type ReadSpan } from '../parse/span.js';
import { parseStatus } from '../parse/words.js';
import { parseMoment, type DateOrder, type WrittenMoment } from '../parse/written-moment.js';
import type { RowCache } from './row-cache.js';
import { lengthFault } from '../links/plausible.js';
import { openSheet, type Sheet, type SheetOptions, type SheetRow } from './sheet.js';
import type { Table } from '../text/table.js';

export interface ReadOptionsOfKind extends SheetOptions {
  /** IANA zone of times that name none. */
  readonly zone: string;
  /** Default: found from all dates of the file. */
  readonly dateOrder?: DateOrder;
}

/** What came of the rows of a table. Good rows are there whatever is wrong with others. */
export interface ReadResult {
  readonly faults: readonly Fault[];
  /** Name to index of its row; rows that could not be used are in it too. */
  readonly rowOf: ReadonlyMap<string, number>;
}

export interface WindowsResult extends ReadResult {
  readonly windows: readonly AccessWindow[];
}

/** Reads a table of access windows. */
export function windowsFrom(
  table: Table,
  options: ReadOptionsOfKind & { readonly memory?: RowCache<WindowRow> | undefined },
): WindowsResult {
  const sheet = openSheet(table, 'windows', options);
  const { file, zone, memory } = options;
  const order = dateOrderOfSheet(table, sheet, ['start', 'end'], file, options.dateOrder);
  const miles = hasMiles(table, sheet, memory);
  const key = JSON.stringify([table.columns, options.map, file, zone, order, miles]);
  const made = sheet.eachRow(windowReader(sheet, zone, order, miles), { memory, key });
  const { rowOf, again } = sheet.namesOf('window', memory);
  const good = gatherNamed(sheet, made, 'window', { rowOf, again, file });
  const windows: AccessWindow[] = [];
  if (!sheet.refused) for (const { window } of good) if (window) windows.push(window);
  return { windows, faults: sheet.faults, rowOf };
}

/** What is made of a row of windows. */
export interface WindowRow extends Named {
  readonly window: AccessWindow | undefined;
}

function windowReader(
  sheet: Sheet<'windows'>,
  usual: string,
  order: DateOrder,
  miles: boolean,
): (row: SheetRow<'windows'>) => WindowRow {
  const readExtent = extentReader(sheet, miles);
  const [names, moment] = [once(parseNames), once((text) => parseMoment(text, order))];
  return (row) => {
    const id = row.require('window', parseName);
    const zone = row.text('zone') === '' ? usual : row.read('zone', parseZone);
    const span = zone === undefined ? undefined : readSpan(row, zone, moment);
    const lines = row.read('lines', names) ?? [];
    const extent = readExtent(row);
    const status = row.read('status', parseStatus) ?? 'confirmed';
    const isolation =
      (span && zone !== undefined
        ? row.read('isolation', (text) => parseIsolation(text, span, zone, order))
        : undefined) ?? [];
    const said = zone === undefined ? {} : readBooking(row, zone, order);
    if (row.isBad() || id === undefined || !span || zone === undefined)
      return { id, window: undefined };
    return {
      id,
      window: {
        id,
        title: row.text('title'),
        start: span.start,
        end: span.end,
        zone,
        lines,
        ...(extent && { extent }),
        isolation,
        status,
        trainsAfter: row.text('trains after'),
        ...said,
      },
    };
  };
}

/** What its booking dates hang on: how many of the day's trains it hits, and since when it is in the plan. */
function readBooking(
  row: SheetRow<'windows'>,
  zone: string,
  order: DateOrder,
): Pick<AccessWindow, 'trainsHitPercent' | 'addedAt'> {
  const trainsHitPercent = row.read('trains hit', parsePercent);
  const addedAt = row.read(
    'added',
    momentParser({ zone, order, dateAlone: 'start', twice: ['earlier', 'forgives-less'] }),
  );
  return {
    ...(trainsHitPercent !== undefined && { trainsHitPercent }),
    ...(addedAt !== undefined && { addedAt }),
  };
}

/** Reads the name of an IANA time zone. */
export function parseZone(text: string): Parsed<string> {
  return isZone(text) ? { value: text } : refuse('zone-not-known', { text });
}

function readSpan(
  row: SheetRow<'windows'>,
  zone: string,
  moment: Parser<WrittenMoment>,
): ReadSpan | undefined {
  const start = row.require('start', moment);
  const end = row.require('end', moment);
  if (!start || !end) return undefined;
  const span = spanOf(start, end, zone);
  if ('problem' in span) {
    row.say('error', span.of, span.problem);
    return undefined;
  }
  const long = lengthFault(span.value, zone);
  if (long) {
    row.say(long.severity, 'end', long.problem);
    if (long.severity === 'error') return undefined;
  }
  if (span.value.startWarning) row.say('warning', 'start', span.value.startWarning);
  if (span.value.endWarning) row.say('warning', 'end', span.value.endWarning);
  return span.value;
}
