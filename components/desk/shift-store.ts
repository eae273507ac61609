import type { ShiftLog } from '../../src/engine/index.js';

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

/** Keeps a log in place of the one before. Returns whether it is safe in storage. */
export function keepShift(plan: string, window: string, log: ShiftLog): boolean {
  try {
    localStorage.setItem(keyOf(plan, window), JSON.stringify(log));
    return true;
  } catch {
    return false;
  }
}
