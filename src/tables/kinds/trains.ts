import { localTimeOf, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Train } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { parseName } from './identity.js';
import { minuteOfDay } from '../parse/clock.js';
import { candidatesAt, candidatesOf, dayAfter, settle } from '../parse/local-moment.js';
import { parseDecimal } from '../parse/number.js';
import { refuse, type Parsed, problemOf } from '../parse/parsed.js';
import { parseMoment, type DateOrder } from '../parse/written-moment.js';
import { openSheet } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind, ReadResult } from './windows.js';

export interface TrainsResult extends ReadResult {
  readonly trains: readonly Train[];
}

export interface TrainOptions extends ReadOptionsOfKind {
  /** With these, a train of a named window may give a time alone: its first occurrence at or after the window's end. */
  readonly windows?: readonly AccessWindow[];
}

/** Reads a table of trains due after windows. A train may run on several days: a row each. */
export function trainsFrom(table: Table, options: TrainOptions): TrainsResult {
  const sheet = openSheet(table, 'trains', options);
  const order = dateOrderOfSheet(table, sheet, ['passes at'], options.file, options.dateOrder);
  const windows = new Map(options.windows?.map((window) => [window.id, window]));
  const trains: Train[] = [];
  const rowOf = new Map<string, number>();
  const seen = new Map<string, number>();
  for (const row of sheet.rows) {
    const id = row.require('train', parseName);
    const window = row.read('window', parseName);
    const after = window === undefined ? undefined : windows.get(window);
    const passesAt = row.require('passes at', (text) =>
      parsePasses(text, order, options.zone, after),
    );
    const weight = row.read('weight', parseWeight) ?? 1;
    if (id === undefined || passesAt === undefined) continue;
    const key = JSON.stringify([id, passesAt, window]);
    const before = seen.get(key);
    if (before !== undefined) {
      row.say('error', 'train', problemOf('name-twice/train', { id, before }));
    }
    seen.set(key, row.line);
    if (!rowOf.has(id)) rowOf.set(id, row.index);
    if (row.isBad()) continue;
    trains.push({ id, passesAt, weight, ...(window !== undefined && { window }) });
  }
  return { trains, faults: sheet.faults, rowOf };
}

function parseWeight(text: string): Parsed<number> {
  const read = parseDecimal(text);
  if ('problem' in read || read.value >= 0) return read;
  return refuse('number-too-small/train', { text });
}

const why = 'delayed-more';

function parsePasses(
  text: string,
  order: DateOrder,
  zone: string,
  window: AccessWindow | undefined,
): Parsed<Instant> {
  const read = parseMoment(text, order);
  if ('problem' in read) return read;
  const { date, time } = read.value;
  if (!time && !read.value.serial) {
    return refuse('time-missing/train', { text });
  }
  const clock = time ?? { hour: 0, minute: 0 };
  if (date) {
    const found = candidatesOf({ ...read.value, time: clock }, zone);
    return 'problem' in found ? found : settle(found.value, 'earlier', zone, why);
  }
  if (!window) {
    return refuse('date-missing/train', { text });
  }
  const shown = localTimeOf(window.end, window.zone);
  const days = minuteOfDay(clock) >= minuteOfDay(shown) ? 0 : 1;
  const found = candidatesAt(dayAfter(shown, days), clock, window.zone);
  if ('problem' in found) return found;
  return settle(
    { ...found, instants: found.value.filter((at) => at >= window.end) },
    'earlier',
    window.zone,
    why,
  );
}
