import { infinities } from './blank.js';
import { latestFree } from './profile.js';
import { beforeTie, visitMinutes, type Problem, type Task } from './problem.js';
import { latestBegun } from './units-in-slots.js';

/** Moments by which each task must have begun and finished for everything to be placed and nothing to be late. */
export interface Latest {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
}

/**
 * The latest that each task could start and finish if no other task were placed: its date, its usable time, what is
 * there of its resources, and the same of all that waits for it. Minus infinity where that is never.
 *
 * O(tasks x slots).
 */
export function latestOf(problem: Problem): Latest {
  const starts = infinities(problem.tasks.length);
  const ends = infinities(problem.tasks.length);
  for (const index of problem.order.toReversed()) {
    const task = problem.tasks[index]!;
    let by = Math.min(task.due, task.latestEnd ?? task.due);
    let begunBy = task.latestStart ?? Number.POSITIVE_INFINITY;
    for (const tie of task.after) {
      const limit = beforeTie(tie, starts[tie.task]!);
      if (tie.fromStart) begunBy = Math.min(begunBy, limit);
      else by = Math.min(by, limit);
    }
    if (task.units === 1) {
      const start = lastStart(problem, task, by, begunBy);
      starts[index] = start;
      ends[index] = start + visitMinutes(task, 1);
    } else {
      const end = lastStart(problem, task, by, Number.POSITIVE_INFINITY) + visitMinutes(task, 1);
      ends[index] = end;
      starts[index] = Math.min(begunBy, latestBegun(task, end, task.units));
    }
  }
  return { starts, ends };
}

/** The latest start of a visit of one unit that ends by `by` and begins by `begunBy`. */
function lastStart(problem: Problem, task: Task, by: number, begunBy: number): number {
  const minutes = visitMinutes(task, 1);
  let best = Number.NEGATIVE_INFINITY;
  problem.effort.spent += 2 + (task.slots.length >> 2);
  for (const slot of task.slots) {
    let start = Math.min(begunBy, Math.min(slot.end, by) - minutes);
    for (let settled = false; !settled && start >= slot.start && start > best;) {
      settled = true;
      for (const { supply, amount } of task.demands) {
        const { profile } = problem.supplies[supply]!;
        const sooner = latestFree(profile, amount, start, minutes, slot.start);
        if (sooner < start) {
          start = sooner;
          settled = false;
        }
      }
    }
    if (start >= slot.start) best = Math.max(best, start);
  }
  return best;
}
