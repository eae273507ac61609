import type { ShiftLog } from '../../src/engine/index.js';

// A shift log outlives the page: every entry is written to the browser's own storage at once, before it is shown.

/** Whose shift a log is of. */
export interface ShiftPlan {
  /** Id under which the plan is kept on this device; absent: it is not kept, and its name has to do. */
  readonly id?: string | undefined;
  readonly name: string;
}

const byName = (name: string, window: string): string => `possession-fit/shift/${name}/${window}`;
const byId = (id: string, window: string): string => `possession-fit/shift-of/${id}/${window}`;

function keyOf({ id, name }: ShiftPlan, window: string): string {
  return id === undefined ? byName(name, window) : byId(id, window);
}

/**
 * The log of one window's shift; empty when none was kept or storage cannot be read.
 *
 * Two plans of one name have a log each. What was kept under the name alone (an older version, or before the plan itself
 * was kept) is read until the plan has a log of its own; it is not taken away, so the other plan of that name has it too.
 */
export function readShift(plan: ShiftPlan, window: string): ShiftLog {
  try {
    const text =
      localStorage.getItem(keyOf(plan, window)) ?? localStorage.getItem(byName(plan.name, window));
    const kept: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(kept) ? (kept as ShiftLog) : [];
  } catch {
    return [];
  }
}

/** Keeps a log in place of the one before. Returns whether it is safe in storage. */
export function keepShift(plan: ShiftPlan, window: string, log: ShiftLog): boolean {
  try {
    localStorage.setItem(keyOf(plan, window), JSON.stringify(log));
    return true;
  } catch {
    return false;
  }
}
