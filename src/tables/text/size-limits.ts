import { sizeLimits, type Problem } from '../../model/index.js';
import type { TableRow } from './table.js';
import { problemOf } from '../parse/parsed.js';

/** What is wrong with a file of more bytes than are read; `undefined` for any other. */
export function tooManyBytes(bytes: number): Problem | undefined {
  if (bytes <= sizeLimits.bytes) return undefined;
  const mb = sizeLimits.bytes / 1024 / 1024;
  return problemOf('file-too-large', { mb });
}

/** What is wrong with a table of more rows or columns than are read. */
export function tooManyCells(rows: readonly TableRow[]): Problem | undefined {
  const { rows: mostRows, columns: mostColumns } = sizeLimits;
  if (rows.length > mostRows) {
    return problemOf('too-many-rows', { length: rows.length, mostRows });
  }
  const wide = rows.find(({ cells }) => cells.length > mostColumns);
  return (
    wide &&
    problemOf('too-many-columns', { line: wide.line, length: wide.cells.length, mostColumns })
  );
}
