// Rows that have an error, and so are not in the plan: told with every answer that is made from the others.
import {
  tableKinds,
  type Fault,
  type NotePlace,
  type PlanNote,
  type TableKind,
} from '../model/index.js';
import type { TableRead } from './assumptions.js';
import { matchColumns } from './headings/match-columns.js';
import { needed, neededOneOf } from './headings/fields.js';
import { sayNote, type RowNames } from './note-sentences.js';

/** Codes of faults of a row that is itself good, and that something left out takes with it. */
const followOn: ReadonlySet<string> = new Set([
  'predecessor-not-used',
  'window-not-used',
  'made-good-not-used',
]);

export interface LeftOut {
  readonly faults: readonly Fault[];
  readonly tables: { readonly [K in TableKind]?: TableRead & { readonly file: string } };
}

/** A note for each table of which rows were left out. A table that is refused as a whole has a fault of its own. */
export function leftOutNotes({ faults, tables }: LeftOut): readonly PlanNote[] {
  const errors = faults.filter((fault) => fault.severity === 'error' && fault.row !== undefined);
  if (errors.length === 0) return [];
  return tableKinds.flatMap((table): PlanNote[] => {
    const read = tables[table];
    if (!read) return [];
    const own = new Set<number>();
    const all = new Set<number>();
    for (const { file, row, code } of errors) {
      if (file !== read.file) continue;
      all.add(row!);
      if (!followOn.has(code)) own.add(row!);
    }
    if (all.size === 0) return [];
    const drawn = [...all].filter((row) => !own.has(row));
    const told = { table, own: own.size, drawn: drawn.length };
    const names = { ofOwn: namesOf(table, read, [...own]), ofDrawn: namesOf(table, read, drawn) };
    const places: NotePlace[] = [{ table, rows: [...all] }];
    const said = sayNote('rows-left-out', { ...told, ...names });
    return [{ code: 'rows-left-out', ...said, count: all.size, places }];
  });
}

const shown = 8;

/** Rows by the name they bear, or by their line where they bear none. */
function namesOf(
  table: TableKind,
  { table: { columns, rows: all }, map }: TableRead,
  at: readonly number[],
): RowNames {
  const { fields } = matchColumns<TableKind>(columns, table, map);
  const first = ([...needed[table], ...(neededOneOf[table] ?? [])] as const)[0];
  const column =
    first === undefined ? undefined : (fields as ReadonlyMap<string, number>).get(first);
  const names = at.slice(0, shown).map((row) => {
    const name = column === undefined ? '' : (all[row]?.cells[column] ?? '').trim();
    return name === '' ? (all[row]?.line ?? row + 1) : name.slice(0, 60);
  });
  return { names, more: at.length - names.length };
}

const none: ReadonlyMap<string, number> = new Map();

/** How many rows of each package have an error and are not in the plan: no verdict of the rest speaks for the whole. */
export function packagesLeftOut({
  faults,
  tables: { work },
}: LeftOut): ReadonlyMap<string, number> {
  if (!work) return none;
  const bad = new Set<number>();
  for (const { severity, file, row } of faults)
    if (severity === 'error' && file === work.file && row !== undefined) bad.add(row);
  if (bad.size === 0) return none;
  const counts = new Map<string, number>();
  const { fields } = matchColumns(work.table.columns, 'work', work.map);
  const [named, own] = [fields.get('package'), fields.get('activity')];
  for (const row of bad) {
    const cell = (at: number | undefined): string =>
      at === undefined ? '' : (work.table.rows[row]?.cells[at]?.trim() ?? '');
    // As the reader has it: a row without a package is a package of its own.
    const name = cell(named) || cell(own);
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
}
