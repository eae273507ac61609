import type { Allocation, Objective } from '../schedule/types.js';
import type { FitVerdict } from '../fit/types.js';
import type { Ledger } from '../rules/types.js';
import type { Fault, Needs, Plan, PlanDocument, TableKind } from '../model/index.js';

/** A work package: the activities that carry its name, in file order. */
export interface PackageSummary {
  readonly id: string;
  readonly title: string;
  readonly activities: readonly string[];
  /** What all its inside work together asks for. */
  readonly needs: Needs;
  /** Minutes of inside work left, each piece in one visit, end to end. */
  readonly minutes: number;
}

/** Everything that follows from a plan document without a search. */
export interface Results {
  readonly plan: Plan;
  readonly faults: readonly Fault[];
  /** One a window, for ordinary inside work, in file order. */
  readonly ledgers: readonly Ledger[];
  readonly packages: readonly PackageSummary[];
  /** Every package against every window. */
  readonly fits: readonly FitVerdict[];
}

export interface ImportedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What was made of one file. */
export interface ImportReport {
  readonly file: string;
  readonly kind: TableKind | 'rules' | 'plan' | 'unknown';
  readonly encoding: string;
  readonly delimiter: string;
  readonly rows: number;
  readonly matched: readonly { readonly column: string; readonly field: string }[];
  readonly unmatched: readonly string[];
  readonly faults: readonly Fault[];
}

export interface ImportResult {
  readonly document: PlanDocument;
  readonly report: readonly ImportReport[];
}

export interface AllocateOptions {
  readonly first?: Objective;
  readonly seconds?: number;
}

/** How far a long calculation is: `done` of `total`, in any unit. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** The calculation behind the elements. Calls reject only for a bug, an abort or a lost worker; bad data is in the result. */
export interface Engine {
  recompute(document: PlanDocument, signal?: AbortSignal): Promise<Results>;
  /** Reads files into the document: a table replaces the table of its kind. Rows with faults are kept as typed. */
  importFiles(
    files: readonly ImportedFile[],
    document: PlanDocument,
    signal?: AbortSignal,
  ): Promise<ImportResult>;
  /** Searches for the best plan. `onProgress` hears of it a few times a second at most. */
  allocate(
    document: PlanDocument,
    options: AllocateOptions,
    signal?: AbortSignal,
    onProgress?: (progress: Progress) => void,
  ): Promise<Allocation>;
  /** Ends it. Calls that wait, and later ones, reject. */
  dispose(): void;
}
