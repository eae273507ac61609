import type { TableKind, TableText } from '../model/index.js';
import { dateColumns, findDates, yearFirst } from './dates/date-finding.js';
import type { FieldOf } from './headings/fields.js';
import { unitOfHeading } from './headings/heading-units.js';
import { entryOf, matchColumns } from './headings/match-columns.js';
import type { DateOrder } from './parse/written-moment.js';
import { tableOf } from './text/table.js';

/** What becomes of the table that is there: it is replaced, added to at the end, or brought up to date row by row. */
export const takes = ['replace', 'append', 'update'] as const;
export type Take = (typeof takes)[number];

/** How many rows a taking of a table touches. */
export interface Effect {
  readonly before: number;
  readonly after: number;
  /** Rows that were not there. */
  readonly added: number;
  /** Rows of a name that was there, with a cell that differs. */
  readonly changed: number;
  /** Rows of a name that was there, every cell the same. */
  readonly unchanged: number;
  /** Rows that were there and are gone. */
  readonly removed: number;
  /** Rows that would bear a name that stands already. */
  readonly twice: number;
}

export interface Merge {
  readonly table: TableText;
  readonly effect: Effect;
  /** Cells written anew so that they keep their meaning beside the others: dates year first, numbers with their unit. */
  readonly rewritten: number;
}

/** The fields that tell one row of a table from another. */
const nameFields: { readonly [K in TableKind]: readonly FieldOf<K>[] } = {
  windows: ['window'],
  work: ['activity'],
  resources: ['resource', 'from'],
  trains: ['train', 'window'],
  roster: ['turn', 'crew', 'person', 'start'],
  temperatures: ['time'],
  forecast: ['time'],
  plant: ['plant'],
};

/**
 * Takes a table into one that is there. `append` and `update` never delete: columns of both are kept, and in `update` a
 * blank cell leaves what stands. Rows go by their names, the second of a name to the second of that name.
 */
export function mergeTables(
  kind: TableKind,
  before: TableText,
  incoming: TableText,
  take: Take,
): Merge {
  if (take === 'replace' && before.rows.length === 0) return allNew(incoming);
  const pairs = pairColumns(kind, before, incoming);
  const { rows, rewritten } = rowsUnder(kind, before, incoming, pairs);
  const matched = matchRows(kind, { ...before, ...pairs.table }, rows);
  const changes = rows.map((cells, index) => {
    const at = matched[index];
    return at !== undefined && differs(before.rows[at]!, cells);
  });
  const named = matched.filter((at) => at !== undefined).length;
  const changed = changes.filter(Boolean).length;
  const effect: Effect = {
    before: before.rows.length,
    after: before.rows.length + rows.length - (take === 'update' ? named : 0),
    added: rows.length - named,
    changed,
    unchanged: named - changed,
    removed: 0,
    twice: 0,
  };
  switch (take) {
    case 'replace': {
      const removed = before.rows.length - named;
      return {
        table: incoming,
        effect: { ...effect, after: rows.length, removed },
        rewritten: 0,
      };
    }
    case 'append': {
      const table = { ...pairs.table, rows: [...before.rows, ...rows] };
      return {
        table,
        effect: { ...effect, added: rows.length, changed: 0, unchanged: 0, twice: named },
        rewritten,
      };
    }
    case 'update': {
      const updated = before.rows.map((row) => [...row]);
      rows.forEach((cells, index) => {
        const at = matched[index];
        if (at === undefined) updated.push(cells);
        else if (changes[index]) updated[at] = overwritten(updated[at]!, cells);
      });
      return { table: { ...pairs.table, rows: updated }, effect, rewritten };
    }
  }
}

/** A table in the place of one without rows: nothing stands that a name could be met in. */
const allNew = (table: TableText): Merge => ({
  table,
  effect: {
    before: 0,
    after: table.rows.length,
    added: table.rows.length,
    changed: 0,
    unchanged: 0,
    removed: 0,
    twice: 0,
  },
  rewritten: 0,
});

interface Pairs {
  /** The table before with the columns of both. */
  readonly table: TableText;
  /** Incoming column to column of the table. */
  readonly to: readonly number[];
}

/** Columns go together by what they hold, else by their heading, the second of a heading to the second. */
function pairColumns(kind: TableKind, before: TableText, incoming: TableText): Pairs {
  const held = matchColumns(before.columns, kind, before.map).fields;
  const comes = matchColumns(incoming.columns, kind, incoming.map).fields;
  const fieldAt = new Map([...comes].map(([field, at]) => [at, field]));
  const columns = [...before.columns];
  const map: Record<string, string> = { ...before.map };
  const taken = new Set<number>([...comes.keys()].flatMap((field) => held.get(field) ?? []));
  const to = incoming.columns.map((heading, at) => {
    const field = fieldAt.get(at);
    const same = field === undefined ? undefined : held.get(field);
    if (same !== undefined) return same;
    const free = before.columns.findIndex(
      (column, index) => column === heading && !taken.has(index),
    );
    const place = free >= 0 ? free : columns.push(heading) - 1;
    taken.add(place);
    const chosen = incoming.map?.[field ?? ''];
    if (field !== undefined && chosen !== undefined) map[field] = entryOf(columns, place);
    return place;
  });
  const keepsMap = Object.keys(map).length > 0;
  const unread = [...new Set([...(before.unread ?? []), ...(incoming.unread ?? [])])];
  return {
    table: {
      ...before,
      columns,
      ...(keepsMap && { map }),
      ...(unread.length > 0 && { unread }),
    },
    to,
  };
}

/** The rows that come, under the columns of the table and with the meaning they had. */
function rowsUnder(
  kind: TableKind,
  before: TableText,
  incoming: TableText,
  { table, to }: Pairs,
): { readonly rows: string[][]; readonly rewritten: number } {
  const width = table.columns.length;
  const dates = new Set(dateColumns(incoming.columns, kind, incoming.map));
  const [ours, theirs] = [orderOf(kind, before), orderOf(kind, incoming)];
  const fieldAt = new Map(
    [...matchColumns(incoming.columns, kind, incoming.map).fields].map(([field, at]) => [
      at,
      field,
    ]),
  );
  const units = incoming.columns.map((heading, at) =>
    unitToSay(countedIn(kind, fieldAt.get(at) ?? ''), heading, table.columns[to[at]!]!),
  );
  let rewritten = 0;
  const rows = incoming.rows.map((cells) => {
    const row = Array.from({ length: width }, () => '');
    cells.forEach((cell, at) => {
      const place = to[at];
      // Cells beyond the headings stay beyond them.
      if (place === undefined) {
        row.push(cell);
        return;
      }
      const dated = dates.has(at) && ours !== theirs ? yearFirst(cell, theirs) : cell;
      const written = units[at] && bareNumber.test(dated) ? `${dated.trim()} ${units[at]}` : dated;
      if (written !== cell) rewritten += 1;
      row[place] = written;
    });
    return row;
  });
  return { rows, rewritten };
}

const bareNumber = /^\s*\d+(?:[.,]\d+)?\s*$/;
const unitWords: Readonly<Record<string, string>> = { minutes: 'min', hours: 'h', days: 'd' };

/** What a bare number counts where the heading names no unit, in the fields whose headings may name one. */
function countedIn(kind: TableKind, field: string): 'minutes' | 'm' | undefined {
  if (kind === 'work' && workDurations.has(field)) return 'minutes';
  if (kind === 'roster' && field === 'travel') return 'minutes';
  return (kind === 'work' || kind === 'windows') && (field === 'from' || field === 'to')
    ? 'm'
    : undefined;
}

const workDurations: ReadonlySet<string> = new Set<FieldOf<'work'>>([
  'minutes',
  'minutes low',
  'minutes high',
  'minutes per unit',
  'set up',
  'make safe',
]);

/** The unit a bare number must carry where the two headings of a field count in different ones. */
function unitToSay(
  usual: 'minutes' | 'm' | undefined,
  comes: string,
  stands: string,
): string | undefined {
  if (usual === undefined) return undefined;
  const [theirs, ours] = [unitOfHeading(comes) ?? usual, unitOfHeading(stands) ?? usual];
  return theirs === ours ? undefined : (unitWords[theirs] ?? theirs);
}

const orderOf = (kind: TableKind, text: TableText): DateOrder =>
  text.dateOrder ?? findDates(tableOf(text), kind, text.map).order;

/** For each row that comes, the row of its name that stands. */
function matchRows(
  kind: TableKind,
  table: TableText,
  rows: readonly (readonly string[])[],
): readonly (number | undefined)[] {
  const { fields } = matchColumns(table.columns, kind, table.map);
  const names = nameFields[kind] as readonly FieldOf<typeof kind>[];
  const at = names.map((field) => fields.get(field));
  const nameOf = (cells: readonly string[]): string | undefined => {
    const parts = at.map((column) => (column === undefined ? '' : (cells[column] ?? '').trim()));
    if (kind === 'roster' && parts[0] !== '') return parts[0];
    return parts.every((part) => part === '') || (kind !== 'roster' && parts[0] === '')
      ? undefined
      : JSON.stringify(parts);
  };
  const standing = new Map<string, number[]>();
  table.rows.forEach((cells, index) => {
    const name = nameOf(cells);
    if (name === undefined) return;
    const list = standing.get(name);
    if (list) list.push(index);
    else standing.set(name, [index]);
  });
  const used = new Map<string, number>();
  return rows.map((cells) => {
    const name = nameOf(cells);
    if (name === undefined) return undefined;
    const turn = used.get(name) ?? 0;
    used.set(name, turn + 1);
    return standing.get(name)?.[turn];
  });
}

const differs = (stands: readonly string[], comes: readonly string[]): boolean =>
  comes.some((cell, at) => cell !== '' && cell !== (stands[at] ?? ''));

function overwritten(stands: readonly string[], comes: readonly string[]): string[] {
  const length = Math.max(stands.length, comes.findLastIndex((cell) => cell !== '') + 1);
  return Array.from({ length }, (_, at) => (comes[at] ? comes[at] : (stands[at] ?? '')));
}
