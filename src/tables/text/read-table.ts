import { detectDelimiter } from './delimiter.js';
import { unguarded } from '../write/guard.js';
import { faultAt } from './place.js';
import { lostLetter, tableOfRecords, type RecordFault, type Records } from './records.js';
import { splitRecords } from './split-records.js';
import type { Table, TableRow } from './table.js';
import { problemOf } from '../parse/parsed.js';

export interface ReadOptions {
  /** Default: a `sep=` line where there is one, else the delimiter that fits best. */
  readonly delimiter?: string;
  /** The line that holds the headings. Default: the first that is not blank. */
  readonly headingLine?: number;
  /** Whether a leading ' that `writeCsv` put on is taken off. Default: yes. */
  readonly guard?: boolean;
}

/** Splits text into records. Never throws: what is wrong with the text's shape comes back as faults. */
export function readRecords(text: string, options: ReadOptions = {}): Records {
  const whole = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const said = /^sep=([^\r\n"])(?:\r\n|\r|\n|$)/i.exec(whole);
  const body = said ? whole.slice(said[0].length) : whole;
  const delimiter = options.delimiter ?? said?.[1] ?? detectDelimiter(body);
  const { rows, broken } = splitRecords(body, delimiter, said ? 2 : 1);
  const faults = broken.map(({ code, record, line, raw }): RecordFault => ({
    record,
    fault: faultAt({ line }, 'error', problemOf(code), raw.trimEnd().slice(0, 200)),
  }));
  const guarded = options.guard !== false && body.includes("'");
  const legible = !body.includes(lostLetter);
  return { delimiter, rows: guarded ? rows.map(unguardedRow) : rows, faults, legible };
}

/**
 * Splits text into headings and rows. Blank lines are left out; lines are counted as a text editor counts them. Never
 * throws: what is wrong with the text's shape comes back as faults, without a file name.
 */
export function readTable(text: string, options: ReadOptions = {}): Table {
  return tableOfRecords(readRecords(text, options), options.headingLine);
}

function unguardedRow(row: TableRow): TableRow {
  // Nearly every row has no guard at all and stays as it is.
  return row.cells.some((cell) => cell.includes("'"))
    ? { ...row, cells: row.cells.map(unguarded) }
    : row;
}
