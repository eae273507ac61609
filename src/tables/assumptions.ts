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

/** What was made of the same things before, else what `make` makes of them. */
type Remember = <T>(name: string, from: readonly unknown[], make: () => T) => T;

/** The notes on a plan that was read. O(rows), or the rows of the tables that are not as they were before. */
export function assumptionsOf(
  read: Assumed,
  remember: Remember = (_name, _from, make) => make(),
): readonly PlanNote[] {
  const { plan, tables } = read;
  const ofWindows = [plan.windows, ...keysOf(tables.windows)];
  const ofWork = [plan.activities, ...keysOf(tables.work)];
  const ofResources = [plan.resources, tables.resources === undefined];
  return [
    ...ruleNotes(read),
    ...remember('notes on windows', ofWindows, () => windowNotes(read)),
    ...remember('notes on work', ofWork, () => workNotes(read)),
    ...unmetNotes(read, (kind) => ({
      windows: remember(`${kind} of windows`, ofWindows, () => namesOf(kind, liveOf(plan))),
      work: remember(`${kind} of work`, ofWork, () => namesOf(kind, insideOf(plan))),
    })),
    ...remember('notes on resources', [...ofResources, ...ofWork], () => resourceNotes(read)),
    ...headingNotes(read),
  ];
}

const keysOf = (read: TableRead | undefined): readonly unknown[] => [
  read?.table,
  read?.map,
  read?.rowOf,
];

const liveOf = ({ windows }: Assumed['plan']): AccessWindow[] =>
  windows.filter((window) => window.status !== 'withdrawn');
const insideOf = ({ activities }: Assumed['plan']): Activity[] =>
  activities.filter((activity) => activity.place === 'inside');

function ruleNotes({ plan: { rules } }: Assumed): PlanNote[] {
  const deducts =
    rules.leadIn.length + rules.leadOut.length + rules.curfews.length + rules.margin.minutes > 0 ||
    rules.shifts !== undefined;
  if (deducts) return [];
  const words = sayNote('rules-deduct-nothing', { rules: rules.name });
  return [{ code: 'no-rules', ...words, count: 1, places: [] }];
}

function windowNotes({ plan, tables }: Assumed): PlanNote[] {
  const { windows: read } = tables;
  if (!read) return [];
  const { notes, match } = noter('windows', read, liveOf(plan));
  const statusAt = match.fields.get('status');
  const unsaid = (window: AccessWindow): boolean => {
    if (statusAt === undefined) return true;
    const row = read.rowOf?.get(window.id);
    return row !== undefined && (read.table.rows[row]?.cells[statusAt] ?? '').trim() === '';
  };
  return notes([
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

function workNotes({ plan, tables }: Assumed): PlanNote[] {
  const { work: read } = tables;
  if (!read) return [];
  const { notes } = noter('work', read, insideOf(plan));
  const opened = openedBefore(plan.activities);
  return notes([
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
  { tables: { windows, work } }: Assumed,
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

function resourceNotes({ plan, tables }: Assumed): PlanNote[] {
  const { work, resources } = tables;
  if (!work) return [];
  const listed = new Set(plan.resources.map((resource) => resource.id));
  const missing = new Set<string>();
  const rows: number[] = [];
  for (const { id, resources: needs } of plan.activities) {
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

function headingNotes({ tables }: Assumed): PlanNote[] {
  return Object.entries(tables).flatMap(([kind, read]): PlanNote[] => {
    const table = kind as TableKind;
    const said = new Set(read.unread);
    const { columns } = read.table;
    const headings = matchColumns(columns, table, read.map)
      .unmatched.map((at) => columns[at]!)
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

interface Noter<K extends TableKind, T> {
  readonly match: ColumnMatch<K>;
  /** A note on each that there are any of. All are looked for in one go through the things, which may be very many. */
  readonly notes: (asked: readonly Open<K, T>[]) => PlanNote[];
}

function noter<K extends TableKind, T extends { readonly id: string }>(
  table: K,
  read: TableRead,
  things: readonly T[],
): Noter<K, T> {
  const match = matchColumns(read.table.columns, table, read.map);
  return {
    match,
    notes(asked) {
      const found = asked.map(() => ({ ids: [] as string[], rows: [] as number[] }));
      for (const thing of things) {
        const row = read.rowOf?.get(thing.id);
        asked.forEach(({ leavesOpen }, at) => {
          if (!leavesOpen(thing)) return;
          found[at]!.ids.push(thing.id);
          if (row !== undefined) found[at]!.rows.push(row);
        });
      }
      return asked.flatMap(({ code, field, key }, at) => {
        const { ids, rows } = found[at]!;
        if (ids.length === 0) return [];
        const count = ids.length;
        const words = sayNote(key, { count, of: things.length, ...firstNames(ids) });
        const column = headingOf(read, table, field);
        return [{ code, ...words, count, places: [{ table, column, rows }] }];
      });
    },
  };
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
