import { tableKinds, tableIn, type PlanDocument } from '../../model/index.js';
import type { OtherReaders, PlanResult } from '../../tables/index.js';

/** What reads more of a document than windows and work; a worker loads it with the first that has more. */
export interface WholeReading {
  readonly readers: OtherReaders;
  /** Works what the site asks of a plan into it. */
  withSite(read: PlanResult): PlanResult;
}

/** Whether a document has more than windows and work: another table, or limits of its site. */
export const hasMore = (document: PlanDocument): boolean =>
  Object.keys(document.site ?? {}).length > 0 ||
  tableKinds.some(
    (kind) => kind !== 'windows' && kind !== 'work' && tableIn(document, kind).columns.length > 0,
  );
