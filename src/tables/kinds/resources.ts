import type { Availability, Resource } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { parseName } from './identity.js';
import { minuteOfDay, parseClock } from '../parse/clock.js';
import { momentParser } from '../parse/moment.js';
import { parseAmount, parseWhole } from '../parse/number.js';
import { plain, refuse, type Parsed, problemOf } from '../parse/parsed.js';
import type { DateOrder } from '../parse/written-moment.js';
import { openSheet, type SheetRow } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind, ReadResult } from './windows.js';

type Row = SheetRow<'resources'>;

export interface ResourcesResult extends ReadResult {
  readonly resources: readonly Resource[];
}

interface Gathered {
  readonly line: number;
  readonly availability: Availability[];
  readonly said: Map<Once, number>;
}

/** What is said of a resource as a whole, on any of its rows. */
const onceFields = ['rate per hour', 'least hours', 'crews'] as const;
type Once = (typeof onceFields)[number];

/** Reads a table of resources. Several rows of one name are several stretches of availability. */
export function resourcesFrom(table: Table, options: ReadOptionsOfKind): ResourcesResult {
  const sheet = openSheet(table, 'resources', options);
  const order = dateOrderOfSheet(table, sheet, ['from', 'to'], options.file, options.dateOrder);
  const gathered = new Map<string, Gathered>();
  const rowOf = new Map<string, number>();
  for (const row of sheet.rows) {
    const id = row.require('resource', parseName);
    if (id !== undefined && !rowOf.has(id)) rowOf.set(id, row.index);
    const capacity =
      row.text('capacity') === '' ? 1 : row.read('capacity', (text) => parseWhole(text, 0));
    const when = readWhen(row, options.zone, order);
    const known = (id !== undefined && gathered.get(id)) || {
      line: row.line,
      availability: [],
      said: new Map<Once, number>(),
    };
    const said = readOnce(row, known);
    if (row.isBad() || id === undefined || capacity === undefined) continue;
    known.availability.push({ capacity, ...when });
    for (const [field, value] of said) known.said.set(field, value);
    gathered.set(id, known);
  }
  const resources = [...gathered].map(([id, { availability, said }]): Resource => {
    const [rate, least, crews] = onceFields.map((field) => said.get(field));
    return {
      id,
      availability,
      ...(rate !== undefined && { ratePerHour: rate }),
      ...(least !== undefined && { leastHours: least }),
      ...(crews !== undefined && { crews }),
    };
  });
  return { resources, faults: sheet.faults, rowOf };
}

function readOnce(row: Row, known: Gathered): Map<Once, number> {
  const said = new Map<Once, number>();
  for (const field of onceFields) {
    const parse =
      field === 'crews' ? (text: string): Parsed<number> => parseWhole(text, 1) : parseAmount;
    const value = row.read(field, parse);
    if (value === undefined) continue;
    const before = known.said.get(field);
    if (before !== undefined && before !== value) {
      row.say('error', field, problemOf('resource-disagrees', { field, value, before }));
    }
    said.set(field, value);
  }
  return said;
}

/** From and to: both dates (either may be open), or both times of day. */
function readWhen(row: Row, zone: string, order: DateOrder): Omit<Availability, 'capacity'> {
  const clocks = (['from', 'to'] as const).map((field) =>
    parseClock(plain(row.text(field).slice(0, 100))),
  );
  const [from, to] = clocks;
  if (from && to) return readDaily(row);
  if (from || to) {
    const odd = from ? 'to' : 'from';
    row.say('error', odd, problemOf('daily-band-half-given'));
    return {};
  }
  const why = 'available-less';
  const start = row.read(
    'from',
    momentParser({ zone, order, dateAlone: 'start', twice: ['later', why] }),
  );
  const end = row.read(
    'to',
    momentParser({ zone, order, dateAlone: 'end', twice: ['earlier', why] }),
  );
  if (start !== undefined && end !== undefined && end <= start) {
    row.say('error', 'to', problemOf('end-not-after-start/resource'));
  }
  return { ...(start !== undefined && { from: start }), ...(end !== undefined && { to: end }) };
}

function readDaily(row: Row): Omit<Availability, 'capacity'> {
  const from = row.read('from', parseMinute);
  const to = row.read('to', parseMinute);
  if (from === undefined || to === undefined) return {};
  return { dailyFromMinute: from, dailyToMinute: to };
}

function parseMinute(text: string): Parsed<number> {
  const read = parseClock(plain(text));
  if (!read) return refuse('no-such-time/resource', { text });
  return 'problem' in read ? read : { value: minuteOfDay(read.value) };
}
