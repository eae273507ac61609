import { minutesBetween } from '../../calendar/index.js';
import {
  unitsLeft,
  type Activity,
  type Fault,
  type Placement,
  type Plan,
} from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { parseName } from './identity.js';
import { momentParser } from '../parse/moment.js';
import { refuse, type Parsed, problemOf } from '../parse/parsed.js';
import { openSheet, type SheetRow } from './sheet.js';
import type { Table } from '../text/table.js';
import type { DateOrder } from '../parse/written-moment.js';

export interface PlacementsResult {
  readonly placements: readonly Placement[];
  readonly faults: readonly Fault[];
}

type Row = SheetRow<'placements'>;

/** What stands in the window's cell of work that needs none. */
export const outsideText = 'outside';

/**
 * Reads a plan of work, a row a piece of it: activity, window (blank or `outside` for work that needs none), from, to,
 * units. A time without an offset is local to its window, or to the plan for outside work. A row in which only a note
 * stands is passed over.
 *
 * What the files have no activity or window for, and units beyond what is left, are faults; whether the plan still holds
 * in them is not asked here.
 */
export function placementsFrom(
  table: Table,
  plan: Pick<Plan, 'zone' | 'activities' | 'windows'>,
  { file, dateOrder }: { readonly file: string; readonly dateOrder?: DateOrder },
): PlacementsResult {
  const sheet = openSheet(table, 'placements', { file });
  const order = dateOrderOfSheet(table, sheet, ['from', 'to'], file, dateOrder);
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const windows = new Map(plan.windows.map((window) => [window.id, window]));
  const left = new Map(plan.activities.map((activity) => [activity.id, unitsLeft(activity.work)]));
  const placements = sheet.rows.flatMap((row): Placement[] => {
    if (['activity', 'window', 'from', 'to'].every((text) => row.text(text as 'from') === ''))
      return [];
    const id = row.require('activity', parseName);
    const activity = activityOf(row, id, activities);
    const inside = row.text('window').toLowerCase() !== outsideText;
    const where = inside ? row.read('window', parseName) : undefined;
    const window = where === undefined ? undefined : windows.get(where);
    if (where !== undefined && !window)
      row.say('error', 'window', problemOf('window-not-known/placement', { where, outsideText }));
    const moment = momentParser({
      zone: window?.zone ?? plan.zone,
      order,
      dateAlone: 'start',
      twice: ['earlier', 'first-shown'],
    });
    const from = row.require('from', moment);
    const to = row.require('to', moment);
    if (from !== undefined && to !== undefined && to < from)
      row.say('error', 'to', problemOf('ends-before-start', { minutes: minutesBetween(to, from) }));
    const units = row.read('units', parseCount);
    if (activity) countUnits(row, activity, units, left);
    if (!activity || from === undefined || to === undefined || row.isBad()) return [];
    return [
      {
        activity: activity.id,
        window: where ?? null,
        from,
        to,
        ...(activity.work.kind === 'units' && { units: units! }),
      },
    ];
  });
  return { placements, faults: sheet.faults };
}

function activityOf(
  row: Row,
  id: string | undefined,
  activities: ReadonlyMap<string, Activity>,
): Activity | undefined {
  const activity = id === undefined ? undefined : activities.get(id);
  if (id !== undefined && !activity)
    row.say('error', 'activity', problemOf('activity-not-known/placement', { id }));
  return activity;
}

/** Takes the units of a row off those that are left of its activity. */
function countUnits(
  row: Row,
  { id, work }: Activity,
  units: number | undefined,
  left: Map<string, number>,
): void {
  if (work.kind === 'whole') {
    if (units !== undefined && units !== 1)
      row.say('error', 'units', problemOf('units-of-whole-work', { id }));
    return;
  }
  if (row.text('units') === '') {
    row.say('error', 'units', problemOf('cell-blank/units', { id }));
    return;
  }
  const still = left.get(id)!;
  if (units === undefined) return;
  left.set(id, still - units);
  if (units > still)
    row.say(
      'error',
      'units',
      problemOf('units-beyond-left', { units, id, still: Math.max(0, still) }),
    );
}

function parseCount(text: string): Parsed<number> {
  return /^[1-9]\d{0,5}$/.test(text)
    ? { value: Number(text) }
    : refuse('not-a-whole-number/planned', { text });
}
