import { guarded } from './guard.js';

/** A cell to write. A number is written as it is; text is guarded. */
export type Cell = string | number | null | undefined;

export interface WriteOptions {
  /** Whether text that another program could run as a formula gets a leading '. Default: yes. */
  readonly guard?: boolean;
  /** Default: a comma. */
  readonly delimiter?: string;
}

// Every delimiter a program may split at is quoted, not only ours: a cell must stay one cell wherever it is opened.
const needsQuotes = /[",;\t|\r\n]|^[\s\uFEFF]|\s$|^$/;

/**
 * The table as CSV text: a heading line, then the rows, each ended by CR LF (RFC 4180). `readTable` gives back the
 * same headings and cells, whatever they hold.
 *
 * @throws {RangeError} When a number is not finite.
 */
export function writeCsv(
  columns: readonly string[],
  rows: readonly (readonly Cell[])[],
  { guard = true, delimiter = ',' }: WriteOptions = {},
): string {
  const line = (cells: readonly Cell[]): string =>
    cells.map((cell) => written(cell, guard)).join(delimiter) + '\r\n';
  return [columns, ...rows].map(line).join('');
}

function written(cell: Cell, guard: boolean): string {
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new RangeError(`${cell} cannot be written`);
    return String(cell);
  }
  const text = guard ? guarded(cell ?? '') : (cell ?? '');
  return needsQuotes.test(text) || /^sep=/i.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
