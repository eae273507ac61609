import type { Fault, TableKind } from '../../model/index.js';
import type { PlanResult } from '../../tables/index.js';

/** The faults of some of a plan's tables. */
export function faultsOfTables(read: PlanResult, ...kinds: readonly TableKind[]): readonly Fault[] {
  const files = new Set(kinds.map((kind) => read.files[kind]));
  return read.faults.filter((fault) => files.has(fault.file));
}
