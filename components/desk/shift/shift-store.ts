import type { ShiftLog } from '../../../src/engine/index.js';
import type { OpenPlan } from '../../../src/plan/index.js';

// A shift log outlives the page: every entry is written to the browser's own storage at once, before it is shown.

/** Whose shift a log is of. */
export interface ShiftPlan {
  /** Id under which the plan is kept on this device; absent: it is not kept, and its name has to do. */
  readonly id?: string | undefined;
  readonly name: string;
  /** The plan itself, which carries its logs to whoever shares it; absent: the log stays on this device. */
  readonly plan?: OpenPlan | null;
  /** Whether the person here may only read what others share: what this device wrote earlier stays on it. */
  readonly reads?: boolean;
  /** When the window starts: another month's window of the same name has a log of its own. Absent: not known. */
  readonly start?: number | undefined;
}

/** Entries of a log kept before logs were dated belong to a window only this near to its start. */
const NEAR = 10 * 24 * 3_600_000;

const byName = (name: string, window: string): string => `possession-fit/shift/${name}/${window}`;
const byId = (id: string, window: string): string => `possession-fit/shift-of/${id}/${window}`;

/** Whether a key of the browser's storage holds the log of a shift. */
export const isShiftKey = (key: string | null): boolean =>
  key !== null && key.startsWith('possession-fit/shift');

function keyOf({ id, name, start }: ShiftPlan, window: string): string {
  const key = id === undefined ? byName(name, window) : byId(id, window);
  return start === undefined ? key : `${key}/${new Date(start).toISOString()}`;
}

/**
 * The log of one window's shift; empty when none was kept or storage cannot be read.
 *
 * Two plans of one name have a log each. What was kept under the name alone (an older version, or before the plan itself
 * was kept) is read until the plan has a log of its own; it is not taken away, so the other plan of that name has it too.
 */
export function readShift(plan: ShiftPlan, window: string): ShiftLog {
  try {
    const own = localStorage.getItem(keyOf(plan, window));
    const { start, ...undated } = plan;
    const text =
      own ??
      localStorage.getItem(keyOf(undated, window)) ??
      localStorage.getItem(byName(plan.name, window));
    const kept: unknown = JSON.parse(text ?? '[]');
    if (!Array.isArray(kept)) return [];
    const log = kept as ShiftLog;
    return own !== null || start === undefined
      ? log
      : log.filter((entry) => Math.abs(entry.at - start) < NEAR);
  } catch {
    return [];
  }
}

/** The name of a window's log within the plan: another month's window of the same name has another. */
const nameIn = ({ start }: ShiftPlan, window: string): string =>
  start === undefined ? window : `${window} ${new Date(start).toISOString()}`;

/** The log of a window's shift as the plan carries it, whoever wrote it. */
export function carriedShift(of: ShiftPlan, window: string): ShiftLog {
  return (of.plan?.shift(nameIn(of, window)) ?? []) as ShiftLog;
}

/** Puts entries into the plan's log that it has not. */
export function carryShift(of: ShiftPlan, window: string, log: ShiftLog): void {
  if (of.reads) return;
  const there = new Set(of.plan?.shift(nameIn(of, window)).map((record) => record.id));
  const fresh = log.filter((entry) => !there.has(entry.id));
  if (fresh.length > 0) of.plan?.addShift(nameIn(of, window), fresh);
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
