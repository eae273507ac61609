import type { Fault, PlanDocument, TableKind } from '../../model/index.js';
import {
  activitiesFrom,
  windowsFrom,
  type ReadOptionsOfKind,
  type Table,
  type WorkReading,
} from '../../tables/index.js';

/**
 * The faults of one table on its own, with the lines of the file. Links between tables are checked on recompute.
 *
 * @param reading Of work, takes what is made of its rows.
 */
export async function faultsOf(
  kind: TableKind,
  table: Table,
  file: string,
  document: PlanDocument,
  chosen: Pick<ReadOptionsOfKind, 'map' | 'unread' | 'dateOrder'> = {},
  reading?: WorkReading,
): Promise<readonly Fault[]> {
  const options = { ...chosen, file, zone: document.zone };
  if (kind === 'windows') return windowsFrom(table, options).faults;
  if (kind === 'work') return activitiesFrom(table, { ...options, memory: reading }).faults;
  const { otherFaults } = await import('./other-faults.js');
  return otherFaults(kind, table, options, document);
}

/** As much of a cell as a report shows. */
export const short = (cell: string): string => cell.slice(0, 200);
