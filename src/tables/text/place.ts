import type { Fault, Problem } from '../../model/index.js';

export type Severity = Fault['severity'];

/** A fault of a row or a heading; the file is filled in by whoever knows it. */
export function faultAt(
  place: { readonly line: number; readonly row?: number; readonly column?: string },
  severity: Severity,
  problem: Problem,
  value?: string,
): Fault {
  return {
    ...problem,
    severity,
    file: '',
    line: place.line,
    ...(place.row !== undefined && { row: place.row }),
    ...(place.column !== undefined && { column: place.column }),
    ...(value !== undefined && { value }),
  };
}
