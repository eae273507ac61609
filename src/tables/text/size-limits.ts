import { sizeLimits } from '../../model/index.js';
import type { Problem } from '../parse/parsed.js';
import type { TableRow } from './table.js';

/** What is wrong with a file of more bytes than are read; `undefined` for any other. */
export function tooManyBytes(bytes: number): Problem | undefined {
  if (bytes <= sizeLimits.bytes) return undefined;
  const mb = sizeLimits.bytes / 1024 / 1024;
  return {
    code: 'file-too-large',
    message: `The file is larger than ${mb} MB and was not read.`,
    mend: 'Leave out rows and columns that are not needed, or give it in parts.',
  };
}

/** What is wrong with a table of more rows or columns than are read. */
export function tooManyCells(rows: readonly TableRow[]): Problem | undefined {
  const { rows: mostRows, columns: mostColumns } = sizeLimits;
  if (rows.length > mostRows) {
    return {
      code: 'too-many-rows',
      message: `The table has ${rows.length} rows; at most ${mostRows} are read.`,
      mend: 'Leave out rows that are not needed, or give it in parts.',
    };
  }
  const wide = rows.find(({ cells }) => cells.length > mostColumns);
  return (
    wide && {
      code: 'too-many-columns',
      message: `Line ${wide.line} has ${wide.cells.length} cells; at most ${mostColumns} columns are read.`,
      mend: 'Leave out columns that are not needed, blank ones too. Where this is no table, give one as .xlsx or CSV.',
    }
  );
}
