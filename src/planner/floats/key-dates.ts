import { addMinutes, minutesBetween, MINUTE } from '../../calendar/index.js';
import type { Problem, Visit } from '../fit/index.js';
import type { Activity, Plan } from '../../model/index.js';
import { unitsLeft } from '../../model/index.js';
import { sharesFloatWith } from './shared-float.js';
import type { KeyDateForecast } from '../search/types.js';

/** One forecast for each key date of each package, in the order of the plan. Finished work has met its date. */
export function keyDatesOf(
  plan: Plan,
  problem: Problem,
  visits: readonly Visit[],
): KeyDateForecast[] {
  const placed = problem.tasks.map(() => 0);
  const ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of visits) {
    placed[visit.task] = placed[visit.task]! + visit.units;
    ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  }
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
      return { ...base, forecast: null, floatMinutes: null, floatWindows: null, met: false };
    const last = Math.max(...tasks.map((task) => ends[task.index]!));
    const forecast = addMinutes(problem.base, last);
    const floatMinutes = minutesBetween(forecast, due);
    return {
      ...base,
      forecast,
      floatMinutes,
      floatWindows: windowsBetween(tasks, last, (due - problem.base) / MINUTE),
      met: forecast <= due,
    };
  });
}

/** Windows with a stretch after the forecast and by the date that would hold one piece of the work. */
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
