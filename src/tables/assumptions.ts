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
import { sameItems, sameJson } from '../edits/index.js';
import type { FieldOf } from './headings/fields.js';
import { matchColumns, unreadHeadings, type ColumnMap } from './headings/match-columns.js';
import { PlanCache } from './plan-cache.js';
import { sayNote, type noteSentences } from './note-sentences.js';
import { firstNames } from './some-names.js';
import type { Table } from './text/table.js';
import { namesOf, unmetNames, type NameKind, type Names } from './links/unmet-names.js';

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

/** The notes on a plan that was read. O(rows), or the rows of the tables that are not as they were before. */
export function assumptionsOf(read: Assumed, memory = new PlanCache()): readonly PlanNote[] {
  const { plan, tables } = read;
  const statuses =
    tables.windows && memory.cells('windows', tables.windows.table, [statusColumn(tables.windows)]);
  const windows = memory.list('windows as noted', plan.windows, sameWindow);
  const activities = memory.list('work as noted', plan.activities, sameWork);
  const ofWindows = [windows, statuses, ...keysOf(tables.windows)];
  const ofWork = [activities, ...keysOf(tables.work)];
  const ofResources = [plan.resources, tables.resources === undefined, ...ofWork];
  const live = memory.of('live windows', [windows], () =>
    windows.filter((window) => window.status !== 'withdrawn'),
  );
  const inside = memory.of('inside work', [activities], () =>
    activities.filter((activity) => activity.place === 'inside'),
  );
  return [
    ...ruleNotes(read),
    ...memory.of('notes on windows', ofWindows, () => windowNotes(live, tables.windows)),
    ...memory.of('notes on work', ofWork, () => workNotes(inside, activities, tables.work)),
    ...memory.of('unmet names', [...ofWindows, ...ofWork], () =>
      unmetNotes(tables, (kind) => ({
        windows: memory.of(`${kind} of windows`, [live], () => namesOf(kind, live)),
        work: memory.of(`${kind} of work`, [inside], () => namesOf(kind, inside)),
      })),
    ),
    ...memory.of('notes on resources', ofResources, () =>
      resourceNotes(activities, plan.resources, tables),
    ),
    ...headingNotes(read, memory),
  ];
}

const keysOf = (read: TableRead | undefined): readonly unknown[] => [
  read?.table.columns,
  read?.map,
  read?.rowOf,
];

const statusColumn = ({ table, map }: TableRead): number =>
  matchColumns(table.columns, 'windows', map).fields.get('status') ?? -1;

/** Whether no note could tell one window from the other, its status as written apart. */
const sameWindow = (a: AccessWindow, b: AccessWindow): boolean =>
  a.id === b.id &&
  a.status === b.status &&
  sameItems(a.lines, b.lines) &&
  sameItems(a.isolation, b.isolation, (one, other) => one.section === other.section);

/** Whether no note could tell one piece of work from the other. */
const sameWork = (a: Activity, b: Activity): boolean =>
  a.id === b.id &&
  a.package === b.package &&
  a.place === b.place &&
  a.occupies === b.occupies &&
  unitsLeft(a.work) === unitsLeft(b.work) &&
  sameItems(a.lines, b.lines) &&
  sameItems(a.isolation, b.isolation) &&
  sameJson(a.madeGoodBy, b.madeGoodBy) &&
  sameJson(a.after, b.after) &&
  sameItems(a.resources, b.resources, (need, other) => need.resource === other.resource);

function ruleNotes({ plan: { rules } }: Assumed): PlanNote[] {
  const deducts =
    rules.leadIn.length + rules.leadOut.length + rules.curfews.length + rules.margin.minutes > 0 ||
    rules.shifts !== undefined;
  if (deducts) return [];
  const words = sayNote('rules-deduct-nothing', { rules: rules.name });
  return [{ code: 'no-rules', ...words, count: 1, places: [] }];
}

function windowNotes(live: readonly AccessWindow[], read: TableRead | undefined): PlanNote[] {
  if (!read) return [];
  const statusAt = statusColumn(read);
  const unsaid = (window: AccessWindow): boolean => {
    if (statusAt < 0) return true;
    const row = read.rowOf?.get(window.id);
    return row !== undefined && (read.table.rows[row]?.cells[statusAt] ?? '').trim() === '';
  };
  return notesOn('windows', read, live, [
    {
      code: 'lines-blank',
      field: 'lines',
      leavesOpen: ({ lines }) => lines.length === 0,
      key: 'windows-lines-blank',
    },
    {
      code: 'isolation-blank',
      field: 'isolation',
      leavesOpen: ({ isolation }) => isolation.length === 0,
      key: 'windows-isolation-blank',
    },
    { code: 'status-blank', field: 'status', leavesOpen: unsaid, key: 'status-blank' },
    {
      code: 'window-requested',
      field: 'status',
      leavesOpen: ({ status }) => status === 'requested',
      key: 'window-requested',
    },
    {
      code: 'window-offered',
      field: 'status',
      leavesOpen: ({ status }) => status === 'offered',
      key: 'window-offered',
    },
  ]);
}

function workNotes(
  inside: readonly Activity[],
  all: readonly Activity[],
  read: TableRead | undefined,
): PlanNote[] {
  if (!read) return [];
  const opened = openedBefore(all);
  return notesOn('work', read, inside, [
    {
      code: 'lines-blank',
      field: 'lines',
      leavesOpen: ({ lines }) => lines.length === 0,
      key: 'work-lines-blank',
    },
    {
      code: 'isolation-blank',
      field: 'isolation',
      leavesOpen: ({ isolation }) => isolation.length === 0,
      key: 'work-isolation-blank',
    },
    {
      code: 'made-good-blank',
      field: 'made good by',
      leavesOpen: ({ madeGoodBy }) => madeGoodBy === undefined,
      key: 'made-good-blank',
    },
    {
      code: 'opened-before',
      field: 'made good by',
      leavesOpen: ({ id }) => opened.has(id),
      key: 'opened-before',
    },
    {
      code: 'occupies-blank',
      field: 'occupies',
      leavesOpen: ({ occupies }) => occupies === undefined,
      key: 'occupies-blank',
    },
  ]);
}

/** Lines and sections that inside work needs and no window has. */
function unmetNotes(
  { windows, work }: Assumed['tables'],
  names: (kind: NameKind) => { readonly windows: Names; readonly work: Names },
): PlanNote[] {
  if (!windows || !work) return [];
  return (['lines', 'isolation'] as const).flatMap((kind) => {
    const named = names(kind);
    const placeIn = (table: 'windows' | 'work', read: TableRead) => (ids: readonly string[]) => ({
      table,
      column: headingOf(read, table, kind),
      rows: rowsOf(read, ids),
    });
    return unmetNames(
      kind,
      { place: placeIn('windows', windows), of: named.windows },
      { place: placeIn('work', work), of: named.work },
    );
  });
}

/** Names of inside activities that were done before of which something that makes them good is still to be done. */
function openedBefore(activities: readonly Activity[]): ReadonlySet<string> {
  const bounds = boundsOf(activities);
  if (bounds.length === 0) return new Set();
  const left = new Map(activities.map((activity) => [activity.id, unitsLeft(activity.work)]));
  return new Set(
    bounds
      .filter(
        ({ activity, members }) =>
          left.get(activity) === 0 && members.some((id) => left.get(id)! > 0),
      )
      .map(({ activity }) => activity),
  );
}

function resourceNotes(
  activities: readonly Activity[],
  stock: Assumed['plan']['resources'],
  { work, resources }: Assumed['tables'],
): PlanNote[] {
  if (!work) return [];
  const listed = new Set(stock.map((resource) => resource.id));
  const missing = new Set<string>();
  const rows: number[] = [];
  for (const { id, resources: needs } of activities) {
    if (needs.every((need) => listed.has(need.resource))) continue;
    for (const { resource } of needs) if (!listed.has(resource)) missing.add(resource);
    const row = work.rowOf?.get(id);
    if (row !== undefined) rows.push(row);
  }
  if (missing.size === 0) return [];
  const column = headingOf(work, 'work', 'resources');
  const places: NotePlace[] = [{ table: 'work', column, rows }];
  const count = missing.size;
  const code = resources ? 'resource-not-listed' : 'no-resources';
  return [{ code, ...sayNote(code, { count, ...firstNames([...missing]) }), count, places }];
}

function headingNotes({ tables }: Assumed, memory: PlanCache): PlanNote[] {
  return Object.entries(tables).flatMap(([kind, read]): PlanNote[] => {
    const table = kind as TableKind;
    const said = new Set(read.unread);
    const { columns } = read.table;
    const headings = memory
      .of(`unread headings of ${kind}`, [columns, read.map], () =>
        unreadHeadings(columns, table, read.map),
      )
      .filter((item) => item.trim() !== '' && !said.has(item));
    if (headings.length === 0) return [];
    const count = headings.length;
    const words = sayNote('headings-not-read', { count, table, ...firstNames(headings) });
    const places = headings.map((column): NotePlace => ({ table, column, rows: [] }));
    return [{ code: 'headings-not-read', ...words, count, places }];
  });
}

/** The sentences of so many things of so many. */
type KeyOfSome = {
  [K in keyof typeof noteSentences]: 'of' extends keyof Parameters<(typeof noteSentences)[K]>[0]
    ? K
    : never;
}[keyof typeof noteSentences];

/** What a note is about: things whose cell of a field leaves something open. */
interface Open<K extends TableKind, T> {
  readonly code: string;
  readonly field: FieldOf<K>;
  readonly leavesOpen: (thing: T) => boolean;
  readonly key: KeyOfSome;
}

/** A note on each of what is asked that there are any of. */
function notesOn<K extends TableKind, T extends { readonly id: string }>(
  table: K,
  read: TableRead,
  things: readonly T[],
  asked: readonly Open<K, T>[],
): PlanNote[] {
  const rowAt = things.map(({ id }) => read.rowOf?.get(id));
  return asked.flatMap(({ code, field, leavesOpen, key }) => {
    const ids: string[] = [];
    const rows: number[] = [];
    things.forEach((thing, at) => {
      if (!leavesOpen(thing)) return;
      ids.push(thing.id);
      if (rowAt[at] !== undefined) rows.push(rowAt[at]);
    });
    if (ids.length === 0) return [];
    const count = ids.length;
    const words = sayNote(key, { count, of: things.length, ...firstNames(ids) });
    const column = headingOf(read, table, field);
    return [{ code, ...words, count, places: [{ table, column, rows }] }];
  });
}

/** The rows in which the names stand; a loop, as a table may have very many. */
function rowsOf({ rowOf }: TableRead, ids: readonly string[]): number[] {
  const rows: number[] = [];
  for (const id of ids) {
    const row = rowOf?.get(id);
    if (row !== undefined) rows.push(row);
  }
  return rows;
}

function headingOf<K extends TableKind>(read: TableRead, kind: K, field: FieldOf<K>): string {
  const at = matchColumns(read.table.columns, kind, read.map).fields.get(field);
  return at === undefined ? field : read.table.columns[at]!;
}
