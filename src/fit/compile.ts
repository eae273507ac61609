import { DAY, MINUTE, subtract, unionOf, type Instant, type Interval } from '../calendar/index.js';
import {
  minutesInOneVisit,
  needsOf,
  unitsLeft,
  type AccessWindow,
  type Activity,
  type Plan,
} from '../model/index.js';
import { barsWork, curfewStretches } from '../rules/index.js';
import { neverTakes } from './eligibility.js';
import type { LedgerBook } from './ledger-book.js';
import type { Due, Problem, Slot, Task, Tie } from './problem.js';
import { supplyOf } from './supply.js';

/** What of a plan goes into a problem. */
export interface Scope {
  readonly windows: readonly AccessWindow[];
  /** Those with nothing left are dropped, and links to activities that are not among them. */
  readonly activities: readonly Activity[];
  /** Minutes by which the windows are thought longer; 0 without. */
  readonly longerBy?: number;
  /** Things left out of account, to find which of them is in the way. */
  readonly without?: ReadonlySet<Relaxation>;
}

export type Relaxation = 'resources' | 'not-before' | 'key-date' | 'place';

/** Days before the first window in which outside work may be done, past the minutes that all of it takes. */
const LEAD_DAYS = 14;
/** Days after the last window for which calendars are worked out. */
const TAIL_DAYS = 60;

/** The problem of placing activities in windows, in whole minutes. */
export function problemOf(plan: Plan, scope: Scope, book: LedgerBook): Problem {
  const without = scope.without ?? new Set<Relaxation>();
  const activities = scope.activities.filter((activity) => unitsLeft(activity.work) > 0);
  const base = baseOf(plan, scope.windows);
  const horizon = horizonOf(base, scope.windows, activities, scope.longerBy ?? 0);
  const indexOf = new Map(activities.map((activity, index) => [activity.id, index]));

  const supplies: Problem['supplies'][number][] = [];
  const supplyIndex = new Map<string, number>();
  if (!without.has('resources')) {
    const named = new Set(activities.flatMap((one) => one.resources.map((need) => need.resource)));
    for (const resource of plan.resources) {
      if (!named.has(resource.id)) continue;
      supplyIndex.set(resource.id, supplies.length);
      supplies.push({
        id: resource.id,
        profile: supplyOf(resource, plan.zone, base, horizon),
      });
    }
  }

  const before: Tie[][] = activities.map(() => []);
  const after: Tie[][] = activities.map(() => []);
  activities.forEach((activity, index) => {
    for (const link of activity.after) {
      const task = indexOf.get(link.activity);
      if (task === undefined) continue;
      const fromStart = link.from === 'start';
      before[index]!.push({ task, fromStart, gap: link.gapMinutes });
      after[task]!.push({ task: index, fromStart, gap: link.gapMinutes });
    }
  });
  const rank = ranksOf(before, after);
  const feedsInside = feeding(activities, after);
  const slots = slotMaker(plan, scope, book, base, horizon, without.has('place'));

  const tasks = activities.map((activity, index): Task => {
    const outside = activity.place === 'outside';
    const { work } = activity;
    const whole = work.kind === 'whole';
    // Outside work that nothing in a window waits for has no reason to begin before the first window.
    const floor = outside && !feedsInside[index] ? 0 : Number.NEGATIVE_INFINITY;
    const notBefore =
      activity.notBefore === undefined || without.has('not-before')
        ? floor
        : Math.max(floor, Math.ceil((activity.notBefore - base) / MINUTE));
    return {
      index,
      activity,
      outside,
      units: unitsLeft(work),
      perUnit: whole ? work.minutes : work.minutesPerUnit,
      setUp: whole ? 0 : work.setUpMinutes,
      makeSafe: whole ? 0 : work.makeSafeMinutes,
      slots: slots(activity),
      earliest: notBefore,
      due:
        activity.keyDate === undefined || without.has('key-date')
          ? Number.POSITIVE_INFINITY
          : Math.floor((activity.keyDate - base) / MINUTE),
      before: before[index]!,
      after: after[index]!,
      demands: demandsOf(activity, supplyIndex),
      rank: rank[index]!,
    };
  });
  const order = tasks
    .filter((task) => task.rank >= 0)
    .sort((a, b) => a.rank - b.rank)
    .map((task) => task.index);
  return { base, windows: scope.windows, tasks, supplies, dues: duesOf(tasks), order };
}

/** Rows of a package that carry the same date are late together, once. */
function duesOf(tasks: readonly Task[]): Due[] {
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
  activities: readonly Activity[],
  longerBy: number,
): Interval {
  let outside = 0;
  let end = base;
  for (const activity of activities) {
    if (activity.place === 'outside') outside += minutesInOneVisit(activity.work);
    for (const link of activity.after) outside += link.gapMinutes;
    end = Math.max(end, activity.notBefore ?? end);
  }
  for (const window of windows) end = Math.max(end, window.end + longerBy * MINUTE);
  return {
    start: base - outside * MINUTE - LEAD_DAYS * DAY,
    end: end + outside * MINUTE + TAIL_DAYS * DAY,
  };
}

/** Amounts of one resource named twice add up. */
function demandsOf(activity: Activity, index: ReadonlyMap<string, number>): Task['demands'] {
  const amounts = new Map<number, number>();
  for (const need of activity.resources) {
    const supply = index.get(need.resource);
    if (supply !== undefined && need.amount > 0)
      amounts.set(supply, (amounts.get(supply) ?? 0) + need.amount);
  }
  return [...amounts].map(([supply, amount]) => ({ supply, amount }));
}

function slotMaker(
  plan: Plan,
  scope: Scope,
  book: LedgerBook,
  base: Instant,
  horizon: Interval,
  anywhere: boolean,
): (activity: Activity) => readonly Slot[] {
  const slotOf = (one: Interval, window: number): Slot => ({
    window,
    start: Math.ceil((one.start - base) / MINUTE),
    end: Math.floor((one.end - base) / MINUTE),
  });
  const kept = new Map<string, readonly Slot[]>();
  return (activity) => {
    const key = JSON.stringify([
      activity.place,
      activity.loud,
      activity.isolation,
      activity.lines,
      activity.extent,
      activity.window,
    ]);
    let slots = kept.get(key);
    if (slots) return slots;
    if (activity.place === 'outside')
      slots = outsideTime(plan, activity.loud, horizon).map((one) => slotOf(one, -1));
    else
      slots = scope.windows
        .flatMap((window, index) => {
          if (!anywhere && neverTakes(window, activity).length > 0) return [];
          const needs = anywhere
            ? { loud: activity.loud, isolation: bookedOf(window, activity) }
            : needsOf(activity);
          const open: AccessWindow =
            anywhere && window.status === 'withdrawn' ? asRequested(window) : window;
          const ledger = book.of(open, needs, scope.longerBy ?? 0);
          if (ledger.barred.length > 0) return [];
          return ledger.usable.map((one) => slotOf(one, index));
        })
        .filter((slot) => slot.end > slot.start)
        .sort((a, b) => a.start - b.start || a.end - b.end);
    kept.set(key, slots);
    return slots;
  };
}

// One open twin of each withdrawn window, so that its ledgers are kept too.
const twins = new WeakMap<AccessWindow, AccessWindow>();

/** A withdrawn window as it would be if it were not. */
export function asRequested(window: AccessWindow): AccessWindow {
  let twin = twins.get(window);
  if (!twin) twins.set(window, (twin = { ...window, status: 'requested' }));
  return twin;
}

/** The sections that the activity needs and the window books. */
export function bookedOf(window: AccessWindow, activity: Activity): readonly string[] {
  return activity.isolation.filter((section) =>
    window.isolation.some((booked) => booked.section === section),
  );
}

/** When outside work may go on: always, but for curfews that bar it. */
function outsideTime(plan: Plan, loud: boolean, horizon: Interval): readonly Interval[] {
  const barred = plan.rules.curfews
    .filter((curfew) => barsWork(curfew, loud))
    .flatMap((curfew) => curfewStretches(curfew, horizon, plan.zone));
  return subtract([horizon], unionOf(barred));
}

/** Places in an order in which all that is waited for comes first; -1 for what waits for itself. */
function ranksOf(before: readonly Tie[][], after: readonly Tie[][]): number[] {
  const waiting = before.map((ties) => ties.length);
  const rank = before.map(() => -1);
  const queue = waiting.flatMap((count, index) => (count === 0 ? [index] : []));
  for (let head = 0; head < queue.length; head += 1) {
    const index = queue[head]!;
    rank[index] = head;
    for (const tie of after[index]!) {
      waiting[tie.task] = waiting[tie.task]! - 1;
      if (waiting[tie.task] === 0) queue.push(tie.task);
    }
  }
  return rank;
}

/** Which outside activities some inside work waits for, at first or second hand. */
function feeding(activities: readonly Activity[], after: readonly Tie[][]): boolean[] {
  const feeds = activities.map((activity) => activity.place === 'inside');
  for (let changed = true; changed;) {
    changed = false;
    after.forEach((ties, index) => {
      if (!feeds[index] && ties.some((tie) => feeds[tie.task])) {
        feeds[index] = true;
        changed = true;
      }
    });
  }
  return feeds;
}
