import type { Fault, TableText } from '../../model/index.js';
import { faultAt } from './place.js';
import { problemOf } from '../parse/parsed.js';

export interface TableRow {
  /** Every cell as the file has it. May be more or fewer than the columns. */
  readonly cells: readonly string[];
  /** Line of the file on which the row begins, 1 for the first. */
  readonly line: number;
}

/** A table as text: nothing interpreted, nothing left out but blank lines. Columns go by index, never by name. */
export interface Table {
  readonly delimiter: string;
  readonly columns: readonly string[];
  /** Line of the headings. */
  readonly line: number;
  readonly rows: readonly TableRow[];
  /** Lines above the headings, where there are any. */
  readonly above?: readonly TableRow[];
  /** Faults of its shape. `windowsFrom` and its fellows repeat them with the file's name. */
  readonly faults: readonly Fault[];
}

/**
 * A table held in a plan document, numbered as it would be saved: headings on line 1, or below what stands above.
 *
 * @param before Rows of the table as it was, taken again where they are the same.
 */
export function tableOf(text: TableText, before: readonly TableRow[] = []): Table {
  const line = 1 + (text.above?.length ?? 0);
  const rows = text.rows.map((cells, at): TableRow => {
    const known = before[at];
    const own = line + at + 1;
    return known?.cells === cells && known.line === own ? known : { cells, line: own };
  });
  return {
    delimiter: ',',
    columns: text.columns,
    line,
    rows,
    faults: shapeFaults(text.columns, rows).map((fault) => ({ ...fault, file: text.file })),
  };
}

/** The faults of rows with more or fewer cells than there are columns. */
export function shapeFaults(columns: readonly string[], rows: readonly TableRow[]): Fault[] {
  // Nearly every row is as long as the headings.
  const odd: [row: TableRow, index: number][] = [];
  rows.forEach((row, index) => {
    if (row.cells.length !== columns.length) odd.push([row, index]);
  });
  return odd.flatMap(([row, index]) => {
    const place = { line: row.line, row: index };
    const spare = row.cells.slice(columns.length);
    if (spare.length > 0) {
      const firstFull = spare.find((cell) => cell.trim() !== '');
      if (firstFull === undefined) return [];
      return [
        faultAt(
          place,
          'error',
          problemOf('too-many-cells', { cells: row.cells.length, columns: columns.length }),
          firstFull,
        ),
      ];
    }
    return row.cells.every((cell) => cell.trim() === '')
      ? []
      : [
          faultAt(
            place,
            'warning',
            problemOf('too-few-cells', { cells: row.cells.length, columns: columns.length }),
          ),
        ];
  });
}
