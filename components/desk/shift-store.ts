import type { ShiftEntry, ShiftLog } from '../../src/engine/index.js';

// A shift log outlives the page: every entry is written to the browser's own storage at once, before it is shown.

const keyOf = (plan: string, window: string): string => `possession-fit/shift/${plan}/${window}`;

/** The log of one window's shift; empty when none was kept or storage cannot be read. */
export function readShift(plan: string, window: string): ShiftLog {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(plan, window)) ?? '[]');
    return Array.isArray(kept) ? (kept as ShiftLog) : [];
  } catch {
    return [];
  }
}

/** Adds an entry. Returns the log with it and whether it is safe in storage. */
export function addToShift(
  plan: string,
  window: string,
  log: ShiftLog,
  entry: ShiftEntry,
): { log: ShiftLog; stored: boolean } {
  const next = [...log, entry];
  try {
    localStorage.setItem(keyOf(plan, window), JSON.stringify(next));
    return { log: next, stored: true };
  } catch {
    return { log: next, stored: false };
  }
}
