import type { Fault, PlanDocument } from '../../model/index.js';
import {
  otherReaders,
  planFromDocument,
  type ReadOptionsOfKind,
  type Table,
} from '../../tables/index.js';

/** As `faultsOf`, of the tables beside windows and work. Loaded with the first of them. */
export function otherFaults(
  kind: keyof typeof otherReaders,
  table: Table,
  options: ReadOptionsOfKind & { readonly file: string; readonly zone: string },
  document: PlanDocument,
): readonly Fault[] {
  // A train of a named window may give only a time.
  if (kind === 'trains')
    return otherReaders.trains(table, {
      ...options,
      windows: planFromDocument(document).plan.windows,
    }).faults;
  return otherReaders[kind](table, options).faults;
}
