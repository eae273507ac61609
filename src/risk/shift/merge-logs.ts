import type { ShiftEntry, ShiftLog } from './shift-log.js';

export interface MergedLog {
  readonly log: ShiftLog;
  /** Entries that were not there before. */
  readonly added: readonly string[];
  /** Ids under which the two logs say different things: the own entry is kept. */
  readonly differing: readonly string[];
}

/** Two logs of one shift as one, by the ids of their entries, in the order in which they were written down. */
export function mergeShiftLogs(own: ShiftLog, other: ShiftLog): MergedLog {
  const byId = new Map(own.map((entry) => [entry.id, entry]));
  const added: string[] = [];
  const differing: string[] = [];
  for (const entry of other) {
    const mine = byId.get(entry.id);
    if (!mine) {
      byId.set(entry.id, entry);
      added.push(entry.id);
    } else if (canonical(mine) !== canonical(entry)) differing.push(entry.id);
  }
  const log = [...byId.values()].sort(
    (a, b) => a.enteredAt - b.enteredAt || (a.id < b.id ? -1 : Number(a.id > b.id)),
  );
  return { log, added, differing };
}

/** The same text for the same entry, whatever the order of its keys. */
function canonical(entry: ShiftEntry): string {
  const sorted = (_: string, value: unknown): unknown =>
    value !== null && typeof value === 'object' && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value;
  return JSON.stringify(entry, sorted);
}
