import { infinities } from './blank.js';
import { latestFree, type Profile } from './profile.js';
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
  const free = problem.supplies.map(({ profile }) => profile);
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
      const start = lastStart(problem, task, { by, begunBy, free });
      starts[index] = start;
      ends[index] = start + visitMinutes(task, 1);
    } else {
      const last = lastStart(problem, task, { by, begunBy: Number.POSITIVE_INFINITY, free });
      const end = last + visitMinutes(task, 1);
      ends[index] = end;
      starts[index] = Math.min(begunBy, latestBegun(task, end, task.units));
    }
  }
  return { starts, ends };
}

/** The latest start of a visit of one unit that ends by `by` and begins by `begunBy`. */
function lastStart(
  problem: Problem,
  task: Task,
  { by, begunBy, free }: Pick<LastStart, 'by' | 'begunBy' | 'free'>,
): number {
  return lastStartBeside(problem, task, { minutes: visitMinutes(task, 1), by, begunBy, free });
}

export interface LastStart {
  readonly minutes: number;
  /** It ends by then. */
  readonly by: number;
  /** It begins by then. */
  readonly begunBy: number;
  /** What is free of each resource. */
  readonly free: readonly Profile[];
  /** 1 where a window may be used; absent: all may. */
  readonly allowed?: Uint8Array;
}

/** The latest start of a visit of a task beside other work; minus infinity where there is none. O(slots x levels). */
export function lastStartBeside(
  { effort }: Problem,
  { demands, slots }: Task,
  { minutes, by, begunBy, free, allowed }: LastStart,
): number {
  let best = Number.NEGATIVE_INFINITY;
  effort.spent += 2 + (slots.length >> 2);
  for (const slot of slots) {
    if (allowed && slot.window >= 0 && allowed[slot.window] === 0) continue;
    const from = Math.min(begunBy, Math.min(slot.end, by) - minutes);
    const start = latestAllFree(free, demands, from, minutes, Math.max(slot.start, best));
    if (start >= slot.start) best = Math.max(best, start);
  }
  return best;
}

/** The last moment up to `from` from which all that is asked for is free for `minutes` on end; below `floor` where there is none. */
export function latestAllFree(
  free: readonly Profile[],
  demands: Task['demands'],
  from: number,
  minutes: number,
  floor: number,
): number {
  let start = from;
  for (let settled = false; !settled && start >= floor;) {
    settled = true;
    for (const { supply, amount } of demands) {
      const sooner = latestFree(free[supply]!, amount, start, minutes, floor);
      if (sooner < start) {
        start = sooner;
        settled = false;
      }
    }
  }
  return start;
}
