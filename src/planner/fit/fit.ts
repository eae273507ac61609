import { addMinutes, MINUTE, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Activity, Plan } from '../../model/index.js';
import { neverTakes } from '../problem/never-words.js';
import { LedgerCache } from '../problem/ledger-cache.js';
import { packagesIn } from '../problem/packages-in.js';
import type { Problem, Visit } from '../problem/problem.js';
import { sayReason } from '../reason-sentences.js';
import { forgetMost, mostThatFits } from './most.js';
import { forget, NOT_WORKED_OUT, timedIn } from './timed.js';
import type { FitVerdict, MostThatFits, Placement, Reason } from './types.js';

/**
 * Every package against every window, withdrawn ones too, each pair as if the window were the package's alone.
 *
 * Packages in the order in which the plan first names them, windows in the plan's order within each.
 */
export function fitAll(plan: Plan): FitVerdict[] {
  return [...fitsByPackage(plan)].flatMap(({ verdicts }) => verdicts);
}

/** One package against every window. */
export interface PackageFits {
  readonly package: string;
  /** In the plan's order of windows. */
  readonly verdicts: readonly FitVerdict[];
  /** How much of it goes in a window. To be asked before the next package. */
  most(window: AccessWindow): MostThatFits | undefined;
}

/**
 * The same, a package at a time; what one needs is let go of before the next.
 *
 * @param steps Of work on all pairs: each package may take its share of those that are left, and what it does not need
 * is left to those after it. Pairs past that are told as not worked out, unless a window alike has the answer.
 */
export function* fitsByPackage(
  plan: Plan,
  steps = Number.POSITIVE_INFINITY,
): Generator<PackageFits> {
  const book = new LedgerCache(plan);
  const { effort } = book;
  const packages = packagesIn(plan.activities);
  let waiting = packages.size;
  for (const [name, activities] of packages) {
    // One that took more than its share leaves those after it something all the same.
    const share = Math.max((steps - effort.spent) / waiting, steps / packages.size / 4);
    effort.limit = effort.spent + share;
    waiting -= 1;
    yield {
      package: name,
      verdicts: plan.windows.map((window) => verdictOf(plan, name, activities, window, book)),
      most: (window) => mostThatFits(plan, activities, window, book),
    };
    forget(activities, book);
    forgetMost(activities, book);
  }
}

/**
 * Whether what is left of one package can all be done in one window, with every reason when it cannot.
 *
 * Links to other packages are not looked at; work of theirs that makes it good is part of it.
 * @throws {RangeError} When the plan has no such package or window.
 */
export function fitOne(plan: Plan, packageName: string, windowId: string): FitVerdict {
  const window = plan.windows.find((item) => item.id === windowId);
  const activities = packagesIn(plan.activities).get(packageName) ?? [];
  if (!window) throw new RangeError(`no window "${windowId}" in the plan`);
  if (activities.length === 0) throw new RangeError(`no package "${packageName}" in the plan`);
  return verdictOf(plan, packageName, activities, window, new LedgerCache(plan));
}

/** Whether what is left of some activities can all be done in one window, with every reason when it cannot. */
export function verdictOf(
  plan: Plan,
  packageName: string,
  all: readonly Activity[],
  window: AccessWindow,
  book: LedgerCache,
): FitVerdict {
  const no = (reasons: readonly Reason[], spareMinutes: number | null = null): FitVerdict => ({
    package: packageName,
    window: window.id,
    fits: false,
    spareMinutes,
    reasons,
    placements: [],
  });
  const skeleton = book.skeleton(all);
  const { activities } = skeleton;
  if (activities.length === 0)
    return no([{ code: 'nothing-left', ...sayReason('nothing-left', { package: packageName }) }]);

  const never = neverTakes(window, skeleton);
  if (never.length === 0 && window.status === 'withdrawn')
    never.push({ code: 'withdrawn', ...sayReason('withdrawn', { window: window.id }) });

  // Time is looked at as if the window took the work, so that every reason is told at once.
  const plain = never.length === 0;
  const time = timedIn(plan, all, window, book, plain);
  if (time === NOT_WORKED_OUT)
    return plain
      ? { ...no([notWorkedOut(packageName, window)]), proven: false }
      : no([...never, notWorkedOut(packageName, window)]);
  if (!time.fits) {
    const reasons = time.reasons.map(({ code, words, ...rest }) => ({
      code,
      ...words(window),
      ...rest,
    }));
    const cured = plain && time.extension !== undefined;
    const verdict = no([...never, ...reasons], cured ? -time.extension : null);
    return time.proven ? verdict : { ...verdict, proven: false };
  }
  if (!plain) return no(never);
  return {
    package: packageName,
    window: window.id,
    fits: true,
    spareMinutes: time.spareMinutes,
    ...(time.spareMinutes < time.spareAtMost && { spareAtMost: time.spareAtMost }),
    reasons: [],
    placements: inWindow(activities, time.visits, window),
  };
}

const notWorkedOut = (packageName: string, { id }: AccessWindow): Reason => ({
  code: NOT_WORKED_OUT,
  ...sayReason('not-worked-out', { package: packageName, window: id }),
});

/** Visits of a problem of one window, as placements in it or in one alike. */
function inWindow(
  activities: readonly Activity[],
  visits: readonly Visit[],
  window: AccessWindow,
): Placement[] {
  const base = Math.floor(window.start / MINUTE) * MINUTE;
  return placed(visits, base, (index) => activities[index]!, [window]);
}

/** Visits as placements, in order of start. */
export function placementsOf(problem: Problem, visits: readonly Visit[]): Placement[] {
  const { base, tasks, windows } = problem;
  return placed(visits, base, (index) => tasks[index]!.activity, windows);
}

function placed(
  visits: readonly Visit[],
  base: Instant,
  activityOf: (task: number) => Activity,
  windows: readonly AccessWindow[],
): Placement[] {
  return visits
    .toSorted((a, b) => a.start - b.start || a.task - b.task)
    .map((visit) => {
      const activity = activityOf(visit.task);
      return {
        activity: activity.id,
        window: visit.window < 0 ? null : windows[visit.window]!.id,
        from: addMinutes(base, visit.start),
        to: addMinutes(base, visit.end),
        ...(activity.work.kind === 'units' ? { units: visit.units } : {}),
      };
    });
}
