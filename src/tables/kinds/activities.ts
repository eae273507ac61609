import type { Activity, Link } from '../../model/index.js';
import type { Instant } from '../../calendar/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { extentReader, hasMiles } from './extent.js';
import { gatherNamed, parseName, type Named } from './identity.js';
import { parseAfter } from '../parse/after.js';
import { parseDemands } from '../parse/demands.js';
import { parseNames, withItem } from '../parse/list.js';
import { momentParser } from '../parse/moment.js';
import { once, problemOf, type Parsed } from '../parse/parsed.js';
import { parseMadeGoodBy } from '../parse/made-good.js';
import { parseSpeedLimit } from '../parse/speed-limit.js';
import { parseFlag, parseOccupies, parsePlace } from '../parse/words.js';
import type { DateOrder } from '../parse/written-moment.js';
import type { NamePlaces } from './name-places.js';
import type { RowCache } from './row-cache.js';
import { openSheet, type Sheet, type SheetRow } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind, ReadResult } from './windows.js';
import { workReader } from './work-content.js';

export interface ActivitiesResult extends ReadResult {
  readonly activities: readonly Activity[];
}

/** Reads a table of work. Names of other activities, windows and resources are not looked up: `planFrom` does that. */
export function activitiesFrom(
  table: Table,
  options: ReadOptionsOfKind & { readonly memory?: RowCache<WorkRow> | undefined },
): ActivitiesResult {
  const sheet = openSheet(table, 'work', options);
  const { file, zone, memory } = options;
  const dates = ['not before', 'key date'] as const;
  const order = dateOrderOfSheet(table, sheet, dates, file, options.dateOrder);
  const { rowOf, again, texts: named } = sheet.namesOf('activity', memory);
  const miles = hasMiles(table, sheet, memory);
  const made = sheet.eachRow(activityReader(sheet, { zone, order, named, miles }), {
    memory,
    key: JSON.stringify([table.columns, options.map, file, zone, order, miles]),
    holds: ({ among, found, missed }) =>
      among === named ||
      (found.every((name) => named.has(name)) && !missed.some((name) => named.has(name))),
  });
  const good = gatherNamed(sheet, made, 'activity', { rowOf, again, file });
  const activities: Activity[] = [];
  if (!sheet.refused) for (const { activity } of good) if (activity) activities.push(activity);
  return { activities, faults: sheet.faults, rowOf };
}

/** What is made of a row of work. */
export interface WorkRow extends Named {
  readonly activity: Activity | undefined;
  /** Texts of its `after` cell that are names of activities, and those that were taken for such and are not. */
  readonly found: readonly string[];
  readonly missed: readonly string[];
  /** The names among which they were looked up. */
  readonly among: NamePlaces['texts'];
}

type Made = { -readonly [K in keyof Activity]: Activity[K] };

/** Shared by all rows, and never changed. */
const none: never[] = [];

interface WorkContext {
  readonly zone: string;
  readonly order: DateOrder;
  readonly named: NamePlaces['texts'];
  /** Whether the table gives places in miles with chains or yards. */
  readonly miles: boolean;
}

function activityReader(
  sheet: Sheet<'work'>,
  { zone, order, named, miles }: WorkContext,
): (row: SheetRow<'work'>) => WorkRow {
  const [readWork, readExtent] = [workReader(sheet), extentReader(sheet, miles)];
  const readDates = datesReader(zone, order);
  const [names, demands] = [once(parseNames), once(parseDemands)];
  let found: string[] = none;
  let missed: string[] = none;
  const isNamed = (name: string): boolean => {
    const known = named.has(name);
    if (known) found = withItem(found, name);
    else missed = withItem(missed, name);
    return known;
  };
  const afterParser = (text: string): Parsed<Link[]> => parseAfter(text, isNamed);
  return (row) => {
    [found, missed] = [none, none];
    const id = row.require('activity', parseName);
    const owner = row.read('package', parseName);
    const after = row.read('after', afterParser) ?? none;
    const work = readWork(row);
    const extent = readExtent(row);
    const { notBefore, keyDate } = readDates(row);
    const lines = row.read('lines', names) ?? none;
    const isolation = row.read('isolation', names) ?? none;
    const resources = row.read('resources', demands) ?? none;
    const loud = row.read('loud', parseFlag) ?? false;
    const place = row.read('place', parsePlace) ?? 'inside';
    const window = row.read('window', parseName);
    const madeGoodBy = row.read('made good by', parseMadeGoodBy);
    const occupies = row.read('occupies', parseOccupies);
    const mayWait = row.read('may wait', parseFlag);
    const speedAfter = row.read('speed after', parseSpeedLimit);
    if (row.isBad() || id === undefined || !work)
      return { id, activity: undefined, found, missed, among: named };
    // What is absent is not put in, without a copy for each that might be.
    const activity: Made = {
      id,
      package: owner ?? id,
      title: row.text('title'),
      after,
      work,
      lines,
      isolation,
      resources,
      loud,
      place,
    };
    if (extent) activity.extent = extent;
    if (notBefore !== undefined) activity.notBefore = notBefore;
    if (keyDate !== undefined) activity.keyDate = keyDate;
    if (window !== undefined) activity.window = window;
    if (madeGoodBy !== undefined) activity.madeGoodBy = madeGoodBy;
    if (occupies !== undefined) activity.occupies = occupies;
    if (mayWait) activity.mayWait = mayWait;
    if (speedAfter !== undefined && speedAfter !== 'none') activity.speedAfter = speedAfter;
    return { id, activity, found, missed, among: named };
  };
}

interface Dates {
  readonly notBefore: Instant | undefined;
  readonly keyDate: Instant | undefined;
}

function datesReader(zone: string, order: DateOrder): (row: SheetRow<'work'>) => Dates {
  const usual = { zone, order } as const;
  const parseNotBefore = once(
    momentParser({ ...usual, dateAlone: 'start', twice: ['later', 'allows-less'] }),
  );
  const parseKeyDate = once(
    momentParser({ ...usual, dateAlone: 'end', twice: ['earlier', 'allows-less'] }),
  );
  return (row) => {
    const notBefore = row.read('not before', parseNotBefore);
    const keyDate = row.read('key date', parseKeyDate);
    if (notBefore !== undefined && keyDate !== undefined && keyDate <= notBefore) {
      row.say('error', 'key date', problemOf('key-date-before-not-before'));
    }
    return { notBefore, keyDate };
  };
}
