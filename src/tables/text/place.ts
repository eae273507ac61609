import type { Fault } from '../../model/index.js';
import type { Problem } from '../parse/parsed.js';

export type Severity = Fault['severity'];

/** A fault of a row or a heading; the file is filled in by whoever knows it. */
export function faultAt(
  place: { readonly line: number; readonly row?: number; readonly column?: string },
  severity: Severity,
  problem: Problem,
  value?: string,
): Fault {
  return {
    code: problem.code,
    severity,
    file: '',
    line: place.line,
    ...(place.row !== undefined && { row: place.row }),
    ...(place.column !== undefined && { column: place.column }),
    ...(value !== undefined && { value }),
    message: problem.message,
    mend: problem.mend,
  };
}
