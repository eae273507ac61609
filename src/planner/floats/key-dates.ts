import { addMinutes, minutesBetween } from '../../calendar/index.js';
import type { Problem, Visit } from '../fit/index.js';
import type { Activity, Plan } from '../../model/index.js';
import { unitsLeft } from '../../model/index.js';
import { lateEndsOf } from './floats.js';
import { sharesFloatWith } from './shared-float.js';
import type { Pusher } from './slip.js';
import type { KeyDateForecast } from '../search/types.js';

/**
 * One forecast for each key date of each package, in the order of the plan. Finished work has met its date.
 *
 * Float is how far the finish can slip before a key date, this or another, is missed, one that is missed gets worse, or
 * there is no more time for some work, with what comes after moved on as little as it must be. Of a date that is missed:
 * minus the minutes late.
 */
export function keyDatesOf(
  plan: Plan,
  problem: Problem,
  visits: readonly Visit[],
  pusher: Pusher,
): KeyDateForecast[] {
  const placed = problem.tasks.map(() => 0);
  const ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of visits) {
    placed[visit.task] = placed[visit.task]! + visit.units;
    ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  }
  const slips = slipsOf(problem, visits, pusher);
  const taskOf = new Map(problem.tasks.map((task) => [task.activity.id, task]));
  const groups = new Map<string, Activity[]>();
  for (const activity of plan.activities) {
    if (activity.keyDate === undefined || unitsLeft(activity.work) === 0) continue;
    const key = JSON.stringify([activity.package, activity.keyDate]);
    const known = groups.get(key);
    if (known) known.push(activity);
    else groups.set(key, [activity]);
  }
  return [...groups.values()].map((activities): KeyDateForecast => {
    const due = activities[0]!.keyDate!;
    const tasks = activities.flatMap((activity) => taskOf.get(activity.id) ?? []);
    const base = {
      package: activities[0]!.package,
      due,
      sharesFloatWith: sharesFloatWith(plan.activities, activities),
    };
    if (tasks.some((task) => placed[task.index]! < task.units))
      return {
        ...base,
        ...{ forecast: null, floatMinutes: null, floatWindows: null, met: false },
      };
    const last = Math.max(...tasks.map((task) => ends[task.index]!));
    const forecast = addMinutes(problem.base, last);
    const left = minutesBetween(forecast, due);
    const lasts = tasks.filter((task) => ends[task.index] === last);
    const floatMinutes =
      left < 0 ? left : Math.min(left, ...lasts.map((task) => slips.of(task.index)));
    return {
      ...base,
      forecast,
      floatMinutes,
      ...(slips.atLeast && floatMinutes >= 0 && floatMinutes < left && { floatAtLeast: true }),
      floatWindows: windowsBetween(tasks, last, last + Math.max(0, floatMinutes)),
      met: forecast <= due,
    };
  });
}

interface Slips {
  /** Minutes by which the finish of a task can slip. */
  of(task: number): number;
  /** More may be possible. */
  readonly atLeast: boolean;
}

/** By pushing on; of a plan too large for that, how late all work can be at once. */
function slipsOf(problem: Problem, visits: readonly Visit[], pusher: Pusher): Slips {
  if (pusher.isAble) return { of: (task) => pusher.of(task), atLeast: false };
  const late = lateEndsOf(problem, visits);
  const ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of visits) ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  return { of: (task) => Math.max(0, late[task]! - ends[task]!), atLeast: true };
}

/** Windows with a stretch after the forecast and by the end of its float that would hold one piece of the work. */
function windowsBetween(tasks: Problem['tasks'], from: number, due: number): number {
  const windows = new Set<number>();
  for (const task of tasks) {
    const least = task.setUp + task.perUnit + task.makeSafe;
    for (const slot of task.slots)
      if (slot.window >= 0 && slot.start >= from && Math.min(slot.end, due) - slot.start >= least)
        windows.add(slot.window);
  }
  return windows.size;
}
