import { addMinutes, MINUTE, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Activity, Plan } from '../../model/index.js';
import { barringOf, neverReasons, type Barring } from '../problem/never-words.js';
import { LedgerCache } from '../problem/ledger-cache.js';
import { packagesIn } from '../problem/packages-in.js';
import type { Problem, Visit } from '../problem/problem.js';
import { sayReason } from '../reason-sentences.js';
import { forgetMost, mostThatFits } from './most.js';
import { forgetTimed, NOT_WORKED_OUT, timedIn, type Timed } from './timed.js';
import type { FitVerdict, MostThatFits, Placement, Reason } from './types.js';

/**
 * Every package against every window, withdrawn ones too, each pair as if the window were the package's alone.
 *
 * Packages in the order in which the plan first names them, windows in the plan's order within each.
 */
export function fitAll(plan: Plan): FitVerdict[] {
  const all: FitVerdict[] = [];
  for (const { verdicts } of fitsByPackage(plan)) all.push(...verdicts);
  return all;
}

/** One package against every window. */
export interface PackageFits {
  readonly package: string;
  /** In the plan's order of windows, each put in words when it is come to. */
  readonly verdicts: Iterable<FitVerdict>;
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
    // All of them before how much goes, which may take what is left of the share.
    const found = plan.windows.map((window) => findingOf(plan, activities, window, book));
    yield {
      package: name,
      verdicts: {
        *[Symbol.iterator]() {
          for (const [at, window] of plan.windows.entries())
            yield inWords(name, window, found[at]!);
        },
      },
      most: (window) => mostThatFits(plan, activities, window, book),
    };
    forgetTimed(book.skeleton(activities), book);
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
  return inWords(packageName, window, findingOf(plan, all, window, book));
}

/** What is found of a package in a window, before any of it is put in words. */
interface Finding {
  /** Of the package, those with something left; where there are none, nothing else was looked at. */
  readonly activities: readonly Activity[];
  readonly barring: Barring;
  readonly time: Timed | typeof NOT_WORKED_OUT;
}

function findingOf(
  plan: Plan,
  all: readonly Activity[],
  window: AccessWindow,
  book: LedgerCache,
): Finding {
  const skeleton = book.skeleton(all);
  const barring = barringOf(window, skeleton);
  const { activities } = skeleton;
  if (activities.length === 0) return { activities, barring, time: NOT_WORKED_OUT };
  // Time is looked at as if the window took the work, so that every reason is told at once.
  const time = timedIn(plan, skeleton, window, book, isPlain(window, barring));
  return { activities, barring, time };
}

/** Whether nothing but time may keep the work out. */
const isPlain = ({ status }: AccessWindow, { causes }: Barring): boolean =>
  causes.length === 0 && status !== 'withdrawn';

function inWords(
  packageName: string,
  window: AccessWindow,
  { activities, barring, time }: Finding,
): FitVerdict {
  const no = (reasons: readonly Reason[], spareMinutes: number | null = null): FitVerdict => ({
    package: packageName,
    window: window.id,
    fits: false,
    spareMinutes,
    reasons,
    placements: [],
  });
  if (activities.length === 0)
    return no([{ code: 'nothing-left', ...sayReason('nothing-left', { package: packageName }) }]);

  const plain = isPlain(window, barring);
  const reasons = neverReasons(window, barring);
  if (reasons.length === 0 && !plain)
    reasons.push({ code: 'withdrawn', ...sayReason('withdrawn', { window: window.id }) });
  if (time === NOT_WORKED_OUT)
    return plain
      ? { ...no([notWorkedOut(packageName, window)]), proven: false }
      : no([...reasons, notWorkedOut(packageName, window)]);
  if (!time.fits) {
    for (const { code, words, rest } of time.reasons)
      reasons.push({ code, ...words(window), ...rest });
    const cured = plain && time.extension !== undefined;
    const verdict = no(reasons, cured ? -time.extension : null);
    return time.proven ? verdict : { ...verdict, proven: false };
  }
  if (!plain) return no(reasons);
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
