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
