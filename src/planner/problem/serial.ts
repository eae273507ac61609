import { Board } from './board.js';
import type { Problem } from './problem.js';

/** Tasks in an order in which all that is waited for comes first, the smallest weight first where there is a choice. */
export function listBy(problem: Problem, weight: readonly number[]): number[] {
  const waiting = problem.tasks.map((task) => task.before.length);
  const open = problem.order.filter((index) => waiting[index] === 0);
  const list: number[] = [];
  while (open.length > 0) {
    let pick = 0;
    for (let i = 1; i < open.length; i += 1) {
      const difference = weight[open[i]!]! - weight[open[pick]!]!;
      if (difference < 0 || (difference === 0 && open[i]! < open[pick]!)) pick = i;
    }
    const index = open[pick]!;
    open[pick] = open.at(-1)!;
    open.pop();
    list.push(index);
    for (const tie of problem.tasks[index]!.after) {
      waiting[tie.task] = waiting[tie.task]! - 1;
      if (waiting[tie.task] === 0) open.push(tie.task);
    }
  }
  return list;
}

/** The board that comes of placing tasks in the order of a list; what finds no place is left out. */
export function boardOf(problem: Problem, list: readonly number[], allowed?: Uint8Array): Board {
  const board = new Board(problem, allowed);
  for (const index of list) {
    const task = problem.tasks[index]!;
    if (board.left[index]! > 0 && board.ready(task)) board.place(task);
  }
  return board;
}

/**
 * Minutes from the start of each task to the end of the longest chain of work and gaps that hangs on it, counted
 * without calendars or resources.
 */
export function tailsOf(problem: Problem): number[] {
  const tails = problem.tasks.map(() => 0);
  for (const index of problem.order.toReversed()) {
    const task = problem.tasks[index]!;
    const own = task.setUp + task.units * task.perUnit + task.makeSafe;
    let tail = own;
    for (const tie of task.after)
      tail = Math.max(tail, (tie.fromStart ? 0 : own) + tie.gap + tails[tie.task]!);
    tails[index] = tail;
  }
  return tails;
}
