import type { Activity } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { extentReader, hasMiles } from './extent.js';
import { gatherNamed, parseName, type Named } from './identity.js';
import { parseAfter } from '../parse/after.js';
import { parseDemands } from '../parse/demands.js';
import { parseNames } from '../parse/list.js';
import { momentParser } from '../parse/moment.js';
import { once, problemOf } from '../parse/parsed.js';
import { parseMadeGoodBy } from '../parse/made-good.js';
import { parseSpeedLimit } from '../parse/speed-limit.js';
import { parseFlag, parseOccupies, parsePlace } from '../parse/words.js';
import type { DateOrder } from '../parse/written-moment.js';
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
  const order = dateOrderOfSheet(table, sheet, dates, file, options.dateOrder, memory);
  const texts = sheet.textsOf('activity');
  const named = memory ? memory.named('activity', texts, () => new Set(texts)) : new Set(texts);
  const miles = hasMiles(table, sheet, memory);
  const made = sheet.eachRow(activityReader(sheet, { zone, order, named, miles }), {
    memory,
    key: JSON.stringify([table.columns, options.map, file, zone, order, miles]),
    holds: ({ among, asked }) =>
      among === named || asked.every(([name, known]) => named.has(name) === known),
  });
  const { good, rowOf } = gatherNamed(sheet, made, 'activity', { file, memory });
  const activities: Activity[] = [];
  if (!sheet.refused) for (const { activity } of good) if (activity) activities.push(activity);
  return { activities, faults: sheet.faults, rowOf };
}

/** What is made of a row of work. */
export interface WorkRow extends Named {
  readonly activity: Activity | undefined;
  /** Texts of its `after` cell that were looked up as names of activities, and whether they were. */
  readonly asked: readonly (readonly [name: string, known: boolean])[];
  /** The names among which they were looked up. */
  readonly among: ReadonlySet<string>;
}

interface WorkContext {
  readonly zone: string;
  readonly order: DateOrder;
  readonly named: ReadonlySet<string>;
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
  return (row) => {
    const asked: [string, boolean][] = [];
    const isNamed = (name: string): boolean => {
      const known = named.has(name);
      asked.push([name, known]);
      return known;
    };
    const id = row.require('activity', parseName);
    const owner = row.read('package', parseName);
    const after = row.read('after', (text) => parseAfter(text, isNamed)) ?? [];
    const work = readWork(row);
    const extent = readExtent(row);
    const dates = readDates(row);
    const rest = {
      lines: row.read('lines', names) ?? [],
      isolation: row.read('isolation', names) ?? [],
      resources: row.read('resources', demands) ?? [],
      loud: row.read('loud', parseFlag) ?? false,
      place: row.read('place', parsePlace) ?? 'inside',
    } as const;
    const window = row.read('window', parseName);
    const state = readLineState(row);
    if (row.isBad() || id === undefined || !work)
      return { id, activity: undefined, asked, among: named };
    return {
      id,
      asked,
      among: named,
      activity: {
        id,
        package: owner ?? id,
        title: row.text('title'),
        after,
        work,
        ...rest,
        ...(extent && { extent }),
        ...dates,
        ...(window !== undefined && { window }),
        ...state,
      },
    };
  };
}

type LineState = Pick<Activity, 'madeGoodBy' | 'occupies' | 'mayWait' | 'speedAfter'>;

/** What the row says of the state in which it leaves the line, and of who may be beside it. */
function readLineState(row: SheetRow<'work'>): LineState {
  const madeGoodBy = row.read('made good by', parseMadeGoodBy);
  const occupies = row.read('occupies', parseOccupies);
  const mayWait = row.read('may wait', parseFlag);
  const speedAfter = row.read('speed after', parseSpeedLimit);
  return {
    ...(madeGoodBy !== undefined && { madeGoodBy }),
    ...(occupies !== undefined && { occupies }),
    ...(mayWait === true && { mayWait }),
    ...(speedAfter !== undefined && speedAfter !== 'none' && { speedAfter }),
  };
}

type Dates = Pick<Activity, 'notBefore' | 'keyDate'>;

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
    return {
      ...(notBefore !== undefined && { notBefore }),
      ...(keyDate !== undefined && { keyDate }),
    };
  };
}
