import { addMinutes } from '../../calendar/index.js';
import type { AccessWindow, Activity, Plan } from '../../model/index.js';
import { problemOf } from '../problem/compile.js';
import { neverTakes } from '../problem/eligibility.js';
import { LedgerBook } from '../problem/ledger-book.js';
import { packagesIn } from '../problem/packages-in.js';
import type { Problem, Visit } from '../problem/problem.js';
import { solve } from './solo.js';
import { spareOf } from './spare.js';
import { timeReasons } from './time-reasons.js';
import type { FitVerdict, Placement, Reason } from './types.js';

/**
 * Every package against every window, withdrawn ones too, each pair as if the window were the package's alone.
 *
 * Packages in the order in which the plan first names them, windows in the plan's order within each.
 */
export function fitAll(plan: Plan): FitVerdict[] {
  const book = new LedgerBook(plan);
  return [...packagesIn(plan.activities)].flatMap(([name, activities]) =>
    plan.windows.map((window) => verdictOf(plan, name, activities, window, book)),
  );
}

/**
 * Whether what is left of one package can all be done in one window, with every reason when it cannot.
 *
 * Links to other packages are not looked at; work of theirs that makes it good is part of it.
 * @throws {RangeError} When the plan has no such package or window.
 */
export function fitOne(plan: Plan, packageName: string, windowId: string): FitVerdict {
  const window = plan.windows.find((one) => one.id === windowId);
  const activities = packagesIn(plan.activities).get(packageName) ?? [];
  if (!window) throw new RangeError(`no window "${windowId}" in the plan`);
  if (activities.length === 0) throw new RangeError(`no package "${packageName}" in the plan`);
  return verdictOf(plan, packageName, activities, window, new LedgerBook(plan));
}

/** Whether what is left of some activities can all be done in one window, with every reason when it cannot. */
export function verdictOf(
  plan: Plan,
  packageName: string,
  all: readonly Activity[],
  window: AccessWindow,
  book: LedgerBook,
): FitVerdict {
  const no = (reasons: readonly Reason[], spareMinutes: number | null = null): FitVerdict => ({
    package: packageName,
    window: window.id,
    fits: false,
    spareMinutes,
    reasons,
    placements: [],
  });
  const { activities } = book.skeleton(all);
  if (activities.length === 0)
    return no([{ code: 'nothing-left', text: `nothing of ${packageName} is left to do` }]);

  const never = uniqueReasons(
    activities
      .filter((activity) => activity.place === 'inside')
      .flatMap((activity) => neverTakes(window, activity)),
  );
  if (never.length === 0 && window.status === 'withdrawn')
    never.push({ code: 'withdrawn', text: `${window.id} is withdrawn and takes no work` });

  // Time is looked at as if the window took the work, so that every reason is told at once.
  const problem = problemOf(
    plan,
    { windows: [window], activities, without: new Set(['place']) },
    book,
  );
  const answer = solve(problem);
  if (!answer.done) {
    const { reasons, extension } = timeReasons({
      plan,
      window,
      activities,
      book,
      problem,
      plain: never.length === 0,
      proven: answer.proven || never.length > 0,
    });
    const cured = never.length === 0 && extension !== undefined;
    const verdict = no([...never, ...reasons], cured ? -extension : null);
    return answer.proven || never.length > 0 ? verdict : { ...verdict, proven: false };
  }
  if (never.length > 0) return no(never);
  return {
    package: packageName,
    window: window.id,
    fits: true,
    spareMinutes: spareOf(problem, answer.visits, window, book),
    reasons: [],
    placements: placementsOf(problem, answer.visits),
  };
}

/** Visits as placements, in order of start. */
export function placementsOf(problem: Problem, visits: readonly Visit[]): Placement[] {
  return visits
    .toSorted((a, b) => a.start - b.start || a.task - b.task)
    .map((visit) => {
      const { activity } = problem.tasks[visit.task]!;
      return {
        activity: activity.id,
        window: visit.window < 0 ? null : problem.windows[visit.window]!.id,
        from: addMinutes(problem.base, visit.start),
        to: addMinutes(problem.base, visit.end),
        ...(activity.work.kind === 'units' ? { units: visit.units } : {}),
      };
    });
}

function uniqueReasons(reasons: readonly Reason[]): Reason[] {
  return [...new Map(reasons.map((reason) => [reason.text, reason])).values()];
}
