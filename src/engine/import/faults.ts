import type { Fault, PlanDocument, TableKind } from '../../model/index.js';
import {
  activitiesFrom,
  forecastFrom,
  planFromDocument,
  plantFrom,
  resourcesFrom,
  rosterFrom,
  temperaturesFrom,
  trainsFrom,
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
export function faultsOf(
  kind: TableKind,
  table: Table,
  file: string,
  document: PlanDocument,
  chosen: Pick<ReadOptionsOfKind, 'map' | 'unread' | 'dateOrder'> = {},
  reading?: WorkReading,
): readonly Fault[] {
  const options = { ...chosen, file, zone: document.zone };
  switch (kind) {
    case 'windows':
      return windowsFrom(table, options).faults;
    case 'work':
      return activitiesFrom(table, { ...options, memory: reading }).faults;
    case 'resources':
      return resourcesFrom(table, options).faults;
    case 'trains':
      // A train of a named window may give only a time.
      return trainsFrom(table, { ...options, windows: planFromDocument(document).plan.windows })
        .faults;
    case 'roster':
      return rosterFrom(table, options).faults;
    case 'temperatures':
      return temperaturesFrom(table, options).faults;
    case 'forecast':
      return forecastFrom(table, options).faults;
    case 'plant':
      return plantFrom(table, options).faults;
  }
}

/** As much of a cell as a report shows. */
export const short = (cell: string): string => cell.slice(0, 200);
