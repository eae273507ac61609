import { MINUTE } from '../calendar/index.js';
import { beforeTie, type Placement, type Problem, type Visit } from '../fit/index.js';

/**
 * The problem with some placements already made.
 *
 * @throws {RangeError} When one names no activity with work left, no window of the problem, or too many units.
 */
export function pin(problem: Problem, keep: readonly Placement[]): Problem {
  if (keep.length === 0) return problem;
  const left = problem.tasks.map((task) => task.units);
  const pinned = keep.map((placement): Visit => {
    const task = problem.tasks.find((one) => one.activity.id === placement.activity);
    if (!task) throw new RangeError(`"${placement.activity}" has no work left to keep in place`);
    const window =
      placement.window === null
        ? -1
        : problem.windows.findIndex((one) => one.id === placement.window);
    if (placement.window !== null && window < 0)
      throw new RangeError(`no open window "${placement.window}"`);
    const units = task.activity.work.kind === 'whole' ? 1 : (placement.units ?? task.units);
    left[task.index] = left[task.index]! - units;
    if (left[task.index]! < 0) throw new RangeError(`too many units of "${placement.activity}"`);
    return {
      task: task.index,
      window,
      start: (placement.from - problem.base) / MINUTE,
      end: (placement.to - problem.base) / MINUTE,
      units,
    };
  });
  // What is waited for must be ready in time for what stays.
  const tasks = problem.tasks.map((task) => {
    let latestEnd = Number.POSITIVE_INFINITY;
    for (const tie of task.after)
      for (const visit of pinned)
        if (visit.task === tie.task)
          latestEnd = Math.min(
            latestEnd,
            beforeTie(tie, visit.start) +
              (tie.fromStart ? task.setUp + task.perUnit + task.makeSafe : 0),
          );
    return latestEnd === Number.POSITIVE_INFINITY ? task : { ...task, latestEnd };
  });
  return { ...problem, tasks, pinned };
}
