import { visitMinutes, type Slot, type Task } from './problem.js';

/** A stretch of usable time. */
type Stretch = Pick<Slot, 'start' | 'end'>;

/**
 * The soonest that so many units of a task are done in its usable time from a moment on, one visit in each stretch, with
 * set up and make safe in each; whatever other work and the resources. Infinity where there is no room. O(slots).
 */
export function soonestDone(task: Task, from: number, units: number): number {
  let left = units;
  for (const { start: opens, end } of stretchesOf(task.slots)) {
    if (end <= from) continue;
    const start = Math.max(opens, from);
    const most = unitsIn(task, end - start);
    if (most >= left) return start + visitMinutes(task, left);
    left -= most;
  }
  return Number.POSITIVE_INFINITY;
}

/** The latest that so many units may begin to be done by a moment; minus infinity where there is no room. O(slots). */
export function latestBegun(task: Task, by: number, units: number): number {
  let left = units;
  const stretches = stretchesOf(task.slots);
  for (let i = stretches.length - 1; i >= 0; i -= 1) {
    const { start, end: closes } = stretches[i]!;
    if (start >= by) continue;
    const end = Math.min(closes, by);
    const most = unitsIn(task, end - start);
    if (most >= left) return end - visitMinutes(task, left);
    left -= most;
  }
  return Number.NEGATIVE_INFINITY;
}

/** The most units of a task that are done in its usable time from a moment on, whatever other work and the resources. O(slots). */
export function mostUnits(task: Task, from: number): number {
  let units = 0;
  for (const { start, end } of stretchesOf(task.slots))
    if (end > from)
      units += unitsIn(task, Math.min(end, task.latestEnd ?? end) - Math.max(start, from));
  return units;
}

/** The most units that one visit of so many minutes does. */
function unitsIn({ perUnit, setUp, makeSafe }: Task, minutes: number): number {
  const room = minutes - setUp - makeSafe;
  if (perUnit === 0) return room < 0 ? 0 : Number.POSITIVE_INFINITY;
  return Math.max(0, Math.floor(room / perUnit));
}

const known = new WeakMap<readonly Slot[], readonly Stretch[]>();

/** Slots with those that overlap made one, which takes no less than they do. */
function stretchesOf(slots: readonly Slot[]): readonly Stretch[] {
  // A look at few of them is sooner done than looked up.
  if (slots.length < 8) return merged(slots);
  let stretches = known.get(slots);
  if (!stretches) known.set(slots, (stretches = merged(slots)));
  return stretches;
}

function merged(slots: readonly Slot[]): readonly Stretch[] {
  if (slots.every((slot, i) => i === 0 || slots[i - 1]!.end <= slot.start)) return slots;
  const found: { start: number; end: number }[] = [];
  for (const { start, end } of slots) {
    const last = found.at(-1);
    if (last && start < last.end) last.end = Math.max(last.end, end);
    else found.push({ start, end });
  }
  return found;
}
