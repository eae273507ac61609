import type { Fault } from '../../model/index.js';
import { faultAt } from './place.js';
import { tooManyCells } from './size-limits.js';
import { shapeFaults, type Table, type TableRow } from './table.js';
import { problemOf } from '../parse/parsed.js';

/** A fault of one record; its row and column are known once the headings are. */
export interface RecordFault {
  /** Index of the record. */
  readonly record: number;
  /** Index of the cell, where it is of one. */
  readonly column?: number;
  readonly fault: Fault;
}

/** The lines of a file or sheet that hold something, none of them yet taken for headings. */
export interface Records {
  /** Empty for a workbook. */
  readonly delimiter: string;
  readonly rows: readonly TableRow[];
  readonly faults: readonly RecordFault[];
  /** Whether it is known that every letter could be read. */
  readonly legible?: boolean;
}

const emptyFault = faultAt({ line: 1 }, 'error', problemOf('file-empty'));

/** The records as a table whose headings stand on the given line, or on the first record where none begins there. */
export function tableOfRecords(
  { delimiter, rows, faults, legible = false }: Records,
  headingLine?: number,
): Table {
  const at = Math.max(
    0,
    headingLine === undefined ? 0 : rows.findIndex((row) => row.line === headingLine),
  );
  const heading = rows[at];
  const data = rows.slice(at + 1);
  const placed = faults.map(({ record, column, fault }): Fault => {
    const cell = column === undefined ? undefined : (heading?.cells[column] ?? '');
    return {
      ...fault,
      ...(record > at && { row: record - at - 1 }),
      ...(cell !== undefined && { column: cell }),
    };
  });
  const tooMuch = tooManyCells(rows);
  if (tooMuch) {
    const fault = faultAt({ line: 1 }, 'error', tooMuch);
    return { delimiter, columns: [], line: 1, rows: [], faults: [fault] };
  }
  if (!heading)
    return { delimiter, columns: [], line: 1, rows: [], faults: [...placed, emptyFault] };
  const columns = heading.cells;
  const broken = new Set(
    placed.flatMap((fault) => (fault.severity === 'error' ? [fault.row] : [])),
  );
  const shape = shapeFaults(columns, data).filter((fault) => !broken.has(fault.row));
  const letters = legible ? [] : lostLetters([heading, ...data]);
  const above = rows.slice(0, at);
  return {
    delimiter,
    columns,
    line: heading.line,
    rows: data,
    ...(above.length > 0 && { above }),
    faults: [...placed, ...shape, ...letters],
  };
}

/** What stands where a letter could not be read. */
export const lostLetter = '\ufffd';

const mostMarked = 500;

/** The cells in which a letter could not be read. The first of `rows` is that of the headings. */
function lostLetters(rows: readonly TableRow[]): Fault[] {
  const faults: Fault[] = [];
  rows.forEach(({ cells, line }, at) => {
    cells.forEach((cell, column) => {
      if (!cell.includes(lostLetter) || faults.length >= mostMarked) return;
      const place = { line, ...(at > 0 && { row: at - 1 }), column: rows[0]!.cells[column] ?? '' };
      const problem = problemOf('letter-not-read');
      faults.push(faultAt(place, 'warning', problem, cell.slice(0, 200)));
    });
  });
  return faults;
}
