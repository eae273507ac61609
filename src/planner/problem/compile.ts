import {
  DAY,
  MINUTE,
  subtract,
  unionOf,
  type Instant,
  type Interval,
} from '../../calendar/index.js';
import type { AccessWindow, Activity, Needs, Plan, Resource } from '../../model/index.js';
import { barsWork, closedStretches, curfewStretches } from '../../rules/index.js';
import { demandsOf } from './demands.js';
import { Effort } from './effort.js';
import { isBooked, neverCode } from './eligibility.js';
import type { LedgerCache } from './ledger-cache.js';
import type { Cure, Due, Problem, Slot, Task, Tie } from './problem.js';
import { soleSupply } from './sole-places.js';
import { minutesDown, minutesUp, type Bond, type Group, type Skeleton } from './skeleton.js';

/** What of a plan goes into a problem. */
export interface Scope {
  readonly windows: readonly AccessWindow[];
  /** Those with nothing left are dropped, and links to activities that are not among them. */
  readonly activities: readonly Activity[];
  /** Minutes by which the windows are thought longer; 0 without. */
  readonly longerBy?: number;
  /** Things left out of account, to find which of them is in the way. */
  readonly without?: ReadonlySet<Relaxation>;
  /** Counts the work; one of its own without. */
  readonly effort?: Effort;
}

export type Relaxation =
  | 'resources'
  | `resource ${string}`
  | 'alone'
  | 'not-before'
  | 'key-date'
  | `not-before ${string}`
  | `key-date ${string}`
  | 'place';

/** Days before the first window in which outside work may be done, past the minutes that all of it takes. */
const LEAD_DAYS = 14;
/** Days that curing is thought to take at the most, for the calendars of outside work alone. */
const CURING_DAYS = 28;
/** Days after the last window for which calendars are worked out. */
const TAIL_DAYS = 60;

/** The problem of placing activities in windows, in whole minutes. */
export function problemOf(plan: Plan, scope: Scope, book: LedgerCache): Problem {
  const without = scope.without ?? nothing;
  const skeleton = book.skeleton(scope.activities);
  const { activities, rank, order, work, blocks, clusters } = skeleton;
  const base = baseOf(plan, scope.windows);
  const [before, after] = tiesOf(skeleton, book, base);
  // Only work outside windows looks past them.
  const horizon = skeleton.hasOutside
    ? horizonOf(base, scope.windows, skeleton, scope.longerBy ?? 0, plan.resources)
    : undefined;
  const supplies = [
    ...(without.has('resources') ? [] : suppliesOf(scope, skeleton, book, base, horizon)),
    ...(without.has('alone') ? [] : skeleton.solePlaces.map(soleSupply)),
  ];
  const demands = demandsOf(skeleton, supplies);
  const slots = skeleton.groups.map((group) =>
    group.activity.place === 'outside'
      ? outsideSlots(plan, group.needs, base, horizon!)
      : insideSlots(scope, group, book, base, without.has('place')),
  );
  const tasks = activities.map((activity, index): Task => {
    const outside = activity.place === 'outside';
    const { units, perUnit, setUp, makeSafe } = work[index]!;
    const task = {
      index,
      activity,
      outside,
      units,
      perUnit,
      setUp,
      makeSafe,
      slots: slots[skeleton.groupOf[index]!]!,
      earliest:
        activity.notBefore === undefined ||
        without.has('not-before') ||
        without.has(`not-before ${activity.id}`)
          ? Number.NEGATIVE_INFINITY
          : minutesUp(activity.notBefore, base),
      due:
        activity.keyDate === undefined ||
        without.has('key-date') ||
        without.has(`key-date ${activity.id}`)
          ? Number.POSITIVE_INFINITY
          : minutesDown(activity.keyDate, base),
      before: before[index]!,
      after: after[index]!,
      demands: demands[index]!,
      rank: rank[index]!,
    };
    return blocks.length > 0 ? { ...task, ...skeleton.roles.get(index) } : task;
  });
  return {
    base,
    windows: scope.windows,
    tasks,
    supplies,
    dues: duesOf(tasks),
    order,
    ...(blocks.length > 0 && { blocks, clusters }),
    effort: scope.effort ?? new Effort(),
  };
}

const nothing: ReadonlySet<Relaxation> = new Set();

/** Ties before and after each task; those that wait for something to cure ask the plan's curve. */
function tiesOf(
  { before, after, cures }: Skeleton,
  book: LedgerCache,
  base: Instant,
): [readonly (readonly Tie[])[], readonly (readonly Tie[])[]] {
  if (cures === 0) return [before, after];
  const { curve } = book;
  const cure: Cure = {
    readyAt: (finish) => (curve.readyAt(base + finish * MINUTE) - base) / MINUTE,
    latestFinish: (readyBy) => (curve.latestPour(base + readyBy * MINUTE) - base) / MINUTE,
  };
  const tie = (bond: Bond): Tie => (bond.cured ? { ...bond, cure } : bond);
  return [before.map((bonds) => bonds.map(tie)), after.map((bonds) => bonds.map(tie))];
}

const noDues: readonly Due[] = [];

/** Rows of a package that carry the same date are late together, once. */
function duesOf(tasks: readonly Task[]): readonly Due[] {
  if (tasks.every(({ due }) => due === Number.POSITIVE_INFINITY)) return noDues;
  const dues = new Map<string, { package: string; due: number; tasks: number[] }>();
  for (const { index, due, activity } of tasks) {
    if (due === Number.POSITIVE_INFINITY) continue;
    const key = JSON.stringify([activity.package, due]);
    const known = dues.get(key);
    if (known) known.tasks.push(index);
    else dues.set(key, { package: activity.package, due, tasks: [index] });
  }
  return [...dues.values()];
}

/** Moment zero: when the earliest window starts. */
function baseOf(plan: Plan, windows: readonly AccessWindow[]): Instant {
  let base = Number.POSITIVE_INFINITY;
  for (const window of windows.length > 0 ? windows : plan.windows)
    base = Math.min(base, window.start);
  return Number.isFinite(base) ? Math.floor(base / MINUTE) * MINUTE : 0;
}

function horizonOf(
  base: Instant,
  windows: readonly AccessWindow[],
  { outsideMinutes, cures, lastNotBefore, firstOutside, lastOutside, named }: Skeleton,
  longerBy: number,
  resources: readonly Resource[],
): Interval {
  const outside = outsideMinutes * MINUTE + cures * CURING_DAYS * DAY;
  // Outside work may be over before the first window, or begin after the last: as soon and as late as anything says.
  let first = firstOutside;
  let end = Math.max(base, lastNotBefore, lastOutside);
  for (const { id, availability } of resources)
    if (named.has(id))
      for (const { from, to } of availability) {
        first = Math.min(first, from ?? to ?? first);
        end = Math.max(end, from ?? end);
      }
  for (const window of windows) end = Math.max(end, window.end + longerBy * MINUTE);
  return {
    start: Math.min(base, first) - outside - LEAD_DAYS * DAY,
    end: end + outside + TAIL_DAYS * DAY,
  };
}

/** The resources that are asked for, in the plan's order, over the time in which any of the work can be. */
function suppliesOf(
  { windows, longerBy = 0, without = nothing }: Scope,
  { named }: Skeleton,
  book: LedgerCache,
  base: Instant,
  horizon: Interval | undefined,
): Problem['supplies'] {
  if (named.size === 0) return [];
  let last = base;
  for (const window of windows) last = Math.max(last, window.end + longerBy * MINUTE);
  const from = horizon ? minutesDown(horizon.start, base) : 0;
  const to = minutesUp(horizon ? horizon.end : last, base);
  const supplies: Problem['supplies'][number][] = [];
  for (const resource of book.supplies.resources) {
    if (!named.has(resource.id) || without.has(`resource ${resource.id}`)) continue;
    const profile = book.supplies.part(resource, base / MINUTE, from, to);
    supplies.push({ id: resource.id, profile });
  }
  return supplies;
}

function insideSlots(
  scope: Scope,
  group: Group,
  book: LedgerCache,
  base: Instant,
  anywhere: boolean,
): readonly Slot[] {
  const { activity, needs } = group;
  const found: Slot[] = [];
  scope.windows.forEach((window, index) => {
    // Cut short, what has not been looked at takes no work.
    if (scope.effort) {
      scope.effort.spent += 1;
      if (scope.effort.isCut()) return;
    }
    if (!anywhere && neverCode(window, activity) !== undefined) return;
    const open = anywhere ? asOpen(window, needs) : window;
    const usable = book.usable.of(open, needs, scope.longerBy ?? 0);
    if (usable.barred) return;
    const shift = Math.floor(window.start / MINUTE) - base / MINUTE;
    if (shift === 0 && index === 0) found.push(...usable.slots);
    else
      for (const { start, end } of usable.slots)
        found.push({ window: index, start: start + shift, end: end + shift });
  });
  return scope.windows.length < 2
    ? found
    : found.sort((a, b) => a.start - b.start || a.end - b.end);
}

// One twin of each window for what is missing in it, so that its ledgers are kept too.
const twins = new WeakMap<AccessWindow, Map<string, AccessWindow>>();

/**
 * A window as it would be if it took work with these needs: not withdrawn, and with what must be dead booked from start
 * to end. So time is told with the steps that isolate, which come with the booking.
 */
export function asOpen(window: AccessWindow, { isolation }: Needs): AccessWindow {
  const missing = isolation.filter((section) => !isBooked(window, section));
  if (window.status !== 'withdrawn' && missing.length === 0) return window;
  let ofWindow = twins.get(window);
  if (!ofWindow) twins.set(window, (ofWindow = new Map<string, AccessWindow>()));
  const key = missing.join('\u0000');
  let twin = ofWindow.get(key);
  if (!twin) {
    const booked = [...window.isolation, ...missing.map((section) => ({ section }))];
    const status = window.status === 'withdrawn' ? 'requested' : window.status;
    ofWindow.set(key, (twin = { ...window, status, isolation: booked }));
  }
  return twin;
}

/** When outside work may go on: always, but for curfews and closed time that bar it. */
function outsideSlots(
  plan: Plan,
  { loud, heeds = [] }: Needs,
  base: Instant,
  horizon: Interval,
): readonly Slot[] {
  const { curfews, closed = [] } = plan.rules;
  const barred = [
    ...curfews
      .filter((curfew) => barsWork(curfew, loud))
      .flatMap((curfew) => curfewStretches(curfew, horizon, plan.zone)),
    ...closed
      .filter((closedTime) => heeds.includes(closedTime.name))
      .flatMap((closedTime) => closedStretches(closedTime, horizon, plan.zone)),
  ];
  return subtract([horizon], unionOf(barred)).map((interval) => ({
    window: -1,
    start: minutesUp(interval.start, base),
    end: minutesDown(interval.end, base),
  }));
}
