import * as z from 'zod/mini';
import { sizeLimits, tableTextSchema, type TableText } from '../model/index.js';

/** Most rows and columns of a table, and most characters of a cell: no less than a file may hold. */
export const mostRows = 1_000_000;
export const mostColumns = sizeLimits.columns;
const mostCharacters = sizeLimits.bytes;

/** A table without its rows: large tables are looked through by hand, and stay the same objects. */
const frameSchema = z.extend(z.omit(tableTextSchema, { rows: true }), { rows: z.unknown() });

const isCell = (value: unknown): value is string =>
  typeof value === 'string' && value.length <= mostCharacters;

export const isRow = (value: unknown): value is string[] =>
  Array.isArray(value) && value.length <= mostColumns && value.every(isCell);

/** Whether the value is a table, within the limits. */
export function isTable(value: unknown): value is TableText {
  const frame = frameSchema.safeParse(value);
  if (!frame.success) return false;
  const { columns, rows } = value as { columns: string[]; rows: unknown };
  return (
    columns.length <= mostColumns &&
    Array.isArray(rows) &&
    rows.length <= mostRows &&
    rows.every(isRow)
  );
}

const fields = tableTextSchema.shape;

/** Whether the value may stand in a field of a table. */
export function isField(field: string, value: unknown): boolean {
  if (field === 'columns' || field === 'rows' || !Object.hasOwn(fields, field)) return false;
  return fields[field as keyof typeof fields].safeParse(value).success;
}

const tables = new WeakMap<object, unknown>();

/**
 * A table as the doc holds it: its rows as one JSON text, since a library that reads hundreds of thousands of cells one
 * by one takes ten times as long.
 */
export function packed(table: TableText): object {
  const held = { ...table, rows: JSON.stringify(table.rows) };
  tables.set(held, table);
  return held;
}

/** What `packed` was given, the same object each time; any other value, a table with its rows as a list too, as it is. */
export function unpacked(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('rows' in value)) return value;
  if (typeof value.rows !== 'string') return value;
  if (!tables.has(value)) tables.set(value, { ...value, rows: listIn(value.rows) });
  return tables.get(value);
}

function listIn(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
