// What a plan was taken to mean where nobody said: each with its count and the cells it is about.
import {
  boundsOf,
  unitsLeft,
  type Activity,
  type AccessWindow,
  type NotePlace,
  type Plan,
  type PlanNote,
  type TableKind,
} from '../model/index.js';
import type { FieldOf } from './headings/fields.js';
import { matchColumns, type ColumnMap, type ColumnMatch } from './headings/match-columns.js';
import { someNames } from './some-names.js';
import type { Table } from './text/table.js';
import { lineNames, sectionNames, unmetNames } from './links/unmet-names.js';

/** A table that was read, with where its names stand. */
export interface TableRead {
  readonly table: Table;
  readonly map?: ColumnMap;
  /** Headings that a person said are to stay unread. */
  readonly unread?: readonly string[];
  /** Name to index of row. */
  readonly rowOf?: ReadonlyMap<string, number>;
}

export interface Assumed {
  readonly plan: Pick<Plan, 'windows' | 'activities' | 'rules' | 'resources'>;
  readonly tables: { readonly [K in TableKind]?: TableRead };
}

/** The notes on a plan that was read. O(rows). */
export function assumptionsOf(read: Assumed): readonly PlanNote[] {
  return [
    ...ruleNotes(read),
    ...windowNotes(read),
    ...workNotes(read),
    ...unmetNotes(read),
    ...resourceNotes(read),
    ...headingNotes(read),
  ];
}

function ruleNotes({ plan: { rules } }: Assumed): PlanNote[] {
  const deducts =
    rules.leadIn.length + rules.leadOut.length + rules.curfews.length + rules.margin.minutes > 0 ||
    rules.shifts !== undefined;
  if (deducts) return [];
  const text = `The rule set "${rules.name}" deducts nothing: no lead-in, no lead-out and no handback margin are held in any window.`;
  return [{ code: 'no-rules', text, count: 1, places: [] }];
}

function windowNotes({ plan, tables }: Assumed): PlanNote[] {
  const { windows: read } = tables;
  if (!read) return [];
  const live = plan.windows.filter((window) => window.status !== 'withdrawn');
  const { note, match } = noter('windows', read, 'window');
  const statusAt = match.fields.get('status');
  const unsaid = (window: AccessWindow): boolean => {
    if (statusAt === undefined) return true;
    const row = read.rowOf?.get(window.id);
    return row !== undefined && (read.table.rows[row]?.cells[statusAt] ?? '').trim() === '';
  };
  const of = live.length;
  return [
    ...note(
      'lines-blank',
      'lines',
      live.filter((window) => window.lines.length === 0),
      of,
      [
        'names no line that is blocked, so it is taken to serve work on any line',
        'name no line that is blocked, so they are taken to serve work on any line',
      ],
    ),
    ...note(
      'isolation-blank',
      'isolation',
      live.filter((window) => window.isolation.length === 0),
      of,
      [
        'names no isolation, so nothing is taken to be dead in it',
        'name no isolation, so nothing is taken to be dead in them',
      ],
    ),
    ...note('status-blank', 'status', live.filter(unsaid), of, [
      'has no status and is taken as confirmed',
      'have no status and are taken as confirmed',
    ]),
    ...note(
      'window-requested',
      'status',
      live.filter((window) => window.status === 'requested'),
      of,
      ['is only requested: it may not be granted', 'are only requested: they may not be granted'],
    ),
    ...note(
      'window-offered',
      'status',
      live.filter((window) => window.status === 'offered'),
      of,
      ['is offered and not confirmed', 'are offered and not confirmed'],
    ),
  ];
}

function workNotes({ plan, tables }: Assumed): PlanNote[] {
  const { work: read } = tables;
  if (!read) return [];
  const inside = plan.activities.filter((activity) => activity.place === 'inside');
  const { note } = noter('work', read, 'activity');
  const of = inside.length;
  const where = (test: (activity: Activity) => boolean): Activity[] => inside.filter(test);
  return [
    ...note(
      'lines-blank',
      'lines',
      where((activity) => activity.lines.length === 0),
      of,
      [
        'names no line that must be blocked, so any window is taken to serve it',
        'name no line that must be blocked, so any window is taken to serve them',
      ],
    ),
    ...note(
      'isolation-blank',
      'isolation',
      where((activity) => activity.isolation.length === 0),
      of,
      [
        'names no isolation and is taken to need none',
        'name no isolation and are taken to need none',
      ],
    ),
    ...note(
      'made-good-blank',
      'made good by',
      where((activity) => activity.madeGoodBy === undefined),
      of,
      [
        'does not say what makes the line fit to run again after it',
        'do not say what makes the line fit to run again after them',
      ],
    ),
    ...note('opened-before', 'made good by', openedBefore(plan.activities), of, [
      'is done and what makes it good is not: unless it was made good some other way, the line is not fit to run now',
      'are done and what makes them good is not: unless they were made good some other way, the line is not fit to run now',
    ]),
    ...note(
      'occupies-blank',
      'occupies',
      where((activity) => activity.occupies === undefined),
      of,
      [
        'does not say whether others may be in the same place, and is taken as shared',
        'do not say whether others may be in the same place, and are taken as shared',
      ],
    ),
  ];
}

/** Lines and sections that inside work needs and no window has. */
function unmetNotes({ plan, tables: { windows, work } }: Assumed): PlanNote[] {
  if (!windows || !work) return [];
  const live = plan.windows.filter((window) => window.status !== 'withdrawn');
  const inside = plan.activities.filter((activity) => activity.place === 'inside');
  return (['lines', 'isolation'] as const).flatMap((kind) => {
    const names = kind === 'lines' ? lineNames : sectionNames;
    const placeIn = (table: 'windows' | 'work', read: TableRead) => (ids: readonly string[]) => ({
      table,
      column: headingOf(read, table, kind),
      rows: ids.flatMap((id) => read.rowOf?.get(id) ?? []),
    });
    return unmetNames(
      kind,
      { place: placeIn('windows', windows), of: names(live) },
      { place: placeIn('work', work), of: names(inside) },
    );
  });
}

/** Activities that were done before of which something that makes them good is still to be done. */
function openedBefore(activities: readonly Activity[]): Activity[] {
  const left = new Map(activities.map((activity) => [activity.id, unitsLeft(activity.work)]));
  const open = new Set(
    boundsOf(activities)
      .filter(
        ({ activity, members }) =>
          left.get(activity) === 0 && members.some((id) => left.get(id)! > 0),
      )
      .map(({ activity }) => activity),
  );
  return activities.filter((activity) => open.has(activity.id));
}

function resourceNotes({ plan, tables }: Assumed): PlanNote[] {
  const { work, resources } = tables;
  if (!work) return [];
  const listed = new Set(plan.resources.map((resource) => resource.id));
  const missing = new Set<string>();
  const rows: number[] = [];
  for (const { id, resources: needs } of plan.activities) {
    const unlisted = needs.filter((need) => !listed.has(need.resource));
    for (const { resource } of unlisted) missing.add(resource);
    const row = work.rowOf?.get(id);
    if (unlisted.length > 0 && row !== undefined) rows.push(row);
  }
  if (missing.size === 0) return [];
  const names = someNames([...missing]);
  const column = headingOf(work, 'work', 'resources');
  const places: NotePlace[] = [{ table: 'work', column, rows }];
  const count = missing.size;
  const limit = `${count === 1 ? 'It is' : 'They are'} taken to be without limit.`;
  return resources
    ? [
        {
          code: 'resource-not-listed',
          text: `${counted(count, 'resource')} that work names ${count === 1 ? 'is' : 'are'} not listed: ${names}. ${limit}`,
          count,
          places,
        },
      ]
    : [
        {
          code: 'no-resources',
          text: `No resources are listed, and work names ${counted(count, 'resource')}: ${names}. ${limit}`,
          count,
          places,
        },
      ];
}

function headingNotes({ tables }: Assumed): PlanNote[] {
  return Object.entries(tables).flatMap(([kind, read]): PlanNote[] => {
    const table = kind as TableKind;
    const said = new Set(read.unread);
    const { columns } = read.table;
    const headings = matchColumns(columns, table, read.map)
      .unmatched.map((at) => columns[at]!)
      .filter((item) => item.trim() !== '' && !said.has(item));
    if (headings.length === 0) return [];
    const text = `${counted(headings.length, 'heading')} of ${table} ${headings.length === 1 ? 'is' : 'are'} kept and not read: ${someNames(headings)}.`;
    const places = headings.map((column): NotePlace => ({ table, column, rows: [] }));
    return [{ code: 'headings-not-read', text, count: headings.length, places }];
  });
}

interface Noter<K extends TableKind> {
  readonly match: ColumnMatch<K>;
  /** A note on the things whose cell of a field leaves something open; none where there are none. */
  readonly note: (
    code: string,
    field: FieldOf<K>,
    things: readonly { readonly id: string }[],
    of: number,
    said: readonly [singular: string, plural: string],
  ) => PlanNote[];
}

function noter<K extends TableKind>(table: K, read: TableRead, noun: string): Noter<K> {
  const match = matchColumns(read.table.columns, table, read.map);
  return {
    match,
    note(code, field, things, of, [singular, plural]) {
      if (things.length === 0) return [];
      const count = things.length;
      const rows = things.flatMap(({ id }) => read.rowOf?.get(id) ?? []);
      const who = `${count} of ${counted(of, noun)}`;
      const text = `${who} ${count === 1 ? singular : plural}: ${someNames(things.map((thing) => thing.id))}.`;
      const column = headingOf(read, table, field);
      return [{ code, text, count, places: [{ table, column, rows }] }];
    },
  };
}

function headingOf<K extends TableKind>(read: TableRead, kind: K, field: FieldOf<K>): string {
  const at = matchColumns(read.table.columns, kind, read.map).fields.get(field);
  return at === undefined ? field : read.table.columns[at]!;
}

const plurals: Readonly<Record<string, string>> = { activity: 'activities' };

const counted = (count: number, noun: string): string =>
  `${count} ${count === 1 ? noun : (plurals[noun] ?? `${noun}s`)}`;
