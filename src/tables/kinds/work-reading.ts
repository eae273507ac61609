import type { TableText } from '../../model/index.js';
import type { WorkRow } from './activities.js';
import { RowCache } from './row-cache.js';

/** What was made of the rows of a table of work. */
export type WorkReading = RowCache<WorkRow>;

export const newReading = (): WorkReading => new RowCache<WorkRow>();

const kept = new WeakMap<TableText, WorkReading>();

/** Keeps what was made of a table's rows for whoever reads a document that holds it. */
export function keepReading(text: TableText, reading: WorkReading): void {
  kept.set(text, reading);
}

/** What was kept of a table, once: whoever takes it goes on with it. */
export function takeReading(text: TableText): WorkReading | undefined {
  const reading = kept.get(text);
  kept.delete(text);
  return reading;
}
