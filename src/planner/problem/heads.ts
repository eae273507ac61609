import { infinities } from './blank.js';
import type { Board } from './board.js';
import { afterTie, visitMinutes } from './problem.js';
import { soonestDone } from './units-in-slots.js';

/** Moments that no completion of a board can beat; infinity where what is left of a task can no longer be placed. */
export interface Heads {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
}

/**
 * The earliest that each task could start and finish on a board if no other task were placed after this.
 *
 * `floor`: no further visit starts before it. O(tasks x slots).
 */
export function headsOf(board: Board, floor = Number.NEGATIVE_INFINITY): Heads {
  const { tasks, order } = board.problem;
  const starts = infinities(tasks.length);
  const ends = infinities(tasks.length);
  for (const index of order) {
    const task = tasks[index]!;
    const left = board.left[index]!;
    if (left === 0) {
      starts[index] = board.starts[index]!;
      ends[index] = board.ends[index]!;
      continue;
    }
    let from = Math.max(task.earliest, floor, board.since[index]!);
    for (const tie of task.before) {
      // What has begun has a start, though the rest of it may find no place any more.
      const start = Math.min(starts[tie.task]!, board.starts[tie.task]!);
      from = Math.max(from, afterTie(tie, tie.fromStart ? start : ends[tie.task]!));
    }
    if (from === Number.POSITIVE_INFINITY) continue;
    const visit = board.find(task, 1, from);
    if (!visit) continue;
    starts[index] = Math.min(board.starts[index]!, visit.start);
    const end = Math.max(
      visit.start + visitMinutes(task, left),
      left > 1 ? soonestDone(task, visit.start, left) : Number.NEGATIVE_INFINITY,
      board.ends[index]!,
    );
    if (task.latestEnd === undefined || end <= task.latestEnd) ends[index] = end;
  }
  return { starts, ends };
}
