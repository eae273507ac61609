// What a person says that a heading holds, for all tables of a plan at once.
import { tableKinds, type Fault, type TableKind } from '../../model/index.js';
import { headingsOf } from './fields.js';
import { entryOf, matchColumns, type ColumnMap } from './match-columns.js';
import { faultAt } from '../text/place.js';
import type { Table } from '../text/table.js';
import { problemOf } from '../parse/parsed.js';

export interface ChosenColumn {
  /** Absent: every table that has the heading, and the field. */
  readonly table?: TableKind;
  readonly heading: string;
  /** Our own heading; empty: the column is to stay unread. */
  readonly field: string;
}

const unreadWords = new Set(['', 'not read', 'unread']);

/**
 * Reads `heading=field;heading2=field2`, a table's name before a heading where it is of that table alone:
 * `work:Ort=place`. Nothing after the sign, or `not read`, leaves a column unread.
 *
 * @throws {RangeError} Where a part is not of this shape, or names no column known here.
 */
export function chosenColumns(text: string): readonly ChosenColumn[] {
  return text
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
      const sign = part.lastIndexOf('=');
      if (sign <= 0) throw new RangeError(`"${part}" is not HEADING=COLUMN`);
      const before = part.slice(0, sign).trim();
      const word = part
        .slice(sign + 1)
        .trim()
        .toLowerCase();
      const colon = before.indexOf(':');
      const table = tableKinds.find((kind) => kind === before.slice(0, colon).trim());
      const field = unreadWords.has(word) ? '' : word;
      const kinds = table ? [table] : tableKinds;
      if (field !== '' && !kinds.some((kind) => fieldIn(kind, field)))
        throw new RangeError(`"${field}" is no column of ${table ?? 'any table'}`);
      return table
        ? { table, heading: before.slice(colon + 1).trim(), field }
        : { heading: before, field };
    });
}

const fieldIn = (kind: TableKind, field: string): boolean =>
  (headingsOf(kind) as readonly string[]).includes(field);

/** Where a heading stands among columns: letter for letter, else whatever its case, else by its place, `column 3`. */
function placeOf(columns: readonly string[], heading: string): number {
  const exact = columns.findIndex((column) => column.trim() === heading);
  if (exact >= 0) return exact;
  const lower = heading.toLowerCase();
  const loose = columns.findIndex((column) => column.trim().toLowerCase() === lower);
  if (loose >= 0) return loose;
  const place = Number(/^column (\d{1,5})$/.exec(lower)?.[1] ?? 0);
  return place >= 1 && place <= columns.length ? place - 1 : -1;
}

/** The map and the unread headings of one table, with what was chosen for it. */
export function withChosen(
  table: Table,
  kind: TableKind,
  chosen: readonly ChosenColumn[],
  map: ColumnMap = {},
): { readonly map: ColumnMap; readonly unread: readonly string[] } {
  const made: Record<string, string> = { ...map };
  const unread: string[] = [];
  for (const { table: only, heading, field } of chosen) {
    const at = only === undefined || only === kind ? placeOf(table.columns, heading) : -1;
    if (at < 0) continue;
    const entry = entryOf(table.columns, at);
    if (field !== '') {
      if (fieldIn(kind, field)) made[field] = entry;
      continue;
    }
    unread.push(table.columns[at]!.trim() || entry);
    for (const [held, column] of matchColumns(table.columns, kind, made).fields)
      if (column === at) made[held] = '';
  }
  return { map: made, unread };
}

/** Headings chosen that no table has. */
export function chosenFaults(
  chosen: readonly ChosenColumn[],
  tables: readonly { readonly kind: TableKind; readonly table: Table; readonly file: string }[],
): readonly Fault[] {
  return chosen.flatMap(({ table: only, heading, field }) => {
    const where = tables.filter(
      ({ kind }) => (only ?? kind) === kind && (field === '' || fieldIn(kind, field)),
    );
    if (where.some(({ table }) => placeOf(table.columns, heading) >= 0)) return [];
    const fault = faultAt(
      { line: where[0]?.table.line ?? 1, column: heading },
      'error',
      problemOf('mapped-column-missing/chosen', {
        heading,
        field,
        files: where.map((item) => item.file),
      }),
    );
    return [{ ...fault, file: where[0]?.file ?? 'command line' }];
  });
}
