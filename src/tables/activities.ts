import type { Activity } from '../model/index.js';
import { dateOrderOfSheet } from './columns-of-dates.js';
import { readExtent } from './extent.js';
import { parseName, readId } from './identity.js';
import { parseAfter } from './parse/after.js';
import { parseDemands } from './parse/demands.js';
import { parseNames } from './parse/list.js';
import { momentParser } from './parse/moment.js';
import { parseFlag, parsePlace } from './parse/words.js';
import type { DateOrder } from './parse/written-moment.js';
import { openSheet, type SheetRow } from './sheet.js';
import type { Table } from './table.js';
import type { ReadOptionsOfKind, ReadResult } from './windows.js';
import { readWork } from './work-content.js';

export interface ActivitiesResult extends ReadResult {
  readonly activities: readonly Activity[];
}

/** Reads a table of work. Names of other activities, windows and resources are not looked up: `planFrom` does that. */
export function activitiesFrom(table: Table, options: ReadOptionsOfKind): ActivitiesResult {
  const sheet = openSheet(table, 'work', options);
  const order = dateOrderOfSheet(
    table,
    sheet,
    ['not before', 'key date'],
    options.file,
    options.dateOrder,
  );
  const named = new Set(sheet.rows.map((row) => row.text('activity')));
  const activities: Activity[] = [];
  const rowOf = new Map<string, number>();
  const seen = new Map<string, number>();
  for (const row of sheet.rows) {
    const id = readId(row, 'activity', seen);
    if (id !== undefined) rowOf.set(id, row.index);
    const owner = row.read('package', parseName);
    const after = row.read('after', (text) => parseAfter(text, (one) => named.has(one))) ?? [];
    const work = readWork(sheet, row);
    const extent = readExtent(sheet, row);
    const dates = readDates(row, options.zone, order);
    const rest = {
      lines: row.read('lines', parseNames) ?? [],
      isolation: row.read('isolation', parseNames) ?? [],
      resources: row.read('resources', parseDemands) ?? [],
      loud: row.read('loud', parseFlag) ?? false,
      place: row.read('place', parsePlace) ?? 'inside',
    } as const;
    const window = row.read('window', parseName);
    if (row.isBad() || id === undefined || !work) continue;
    activities.push({
      id,
      package: owner ?? id,
      title: row.text('title'),
      after,
      work,
      ...rest,
      ...(extent && { extent }),
      ...dates,
      ...(window !== undefined && { window }),
    });
  }
  return { activities, faults: sheet.faults, rowOf };
}

function readDates(
  row: SheetRow<'work'>,
  zone: string,
  order: DateOrder,
): Pick<Activity, 'notBefore' | 'keyDate'> {
  const notBefore = row.read(
    'not before',
    momentParser({ zone, order, dateAlone: 'start', twice: ['later', 'it allows less'] }),
  );
  const keyDate = row.read(
    'key date',
    momentParser({ zone, order, dateAlone: 'end', twice: ['earlier', 'it allows less'] }),
  );
  if (notBefore !== undefined && keyDate !== undefined && keyDate <= notBefore) {
    row.say('error', 'key date', {
      code: 'key-date-before-not-before',
      message: 'The key date leaves no time after the work may begin.',
      mend: 'Correct the key date or "not before".',
    });
  }
  return {
    ...(notBefore !== undefined && { notBefore }),
    ...(keyDate !== undefined && { keyDate }),
  };
}
