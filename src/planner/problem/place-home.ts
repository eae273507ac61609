import type { Board } from './board.js';
import type { Task } from './problem.js';

/** The window in which a task is to be placed if it can; `undefined` where it has none. */
export type HomeOf = (task: number) => number | undefined;

/** Places what is left of a task in its own window, as far as there is room for it by its date; whether that is all of it. */
export function isPlacedHome(board: Board, task: Task, homeOf: HomeOf | undefined): boolean {
  const home = homeOf?.(task.index);
  if (home === undefined) return false;
  // What holds together goes where the first of it went.
  const bound = task.block === undefined ? -1 : board.homes[task.block]!;
  if (bound >= 0 && bound !== home) return false;
  const mark = board.visits.length;
  board.place(task, board.left[task.index], home);
  if (board.left[task.index] === 0 && isInTime(board, task)) return true;
  // What is done in units, and bound to no window, has the rest of them elsewhere.
  if (board.visits.length > mark && task.block === undefined && isInTime(board, task)) return false;
  while (board.visits.length > mark) board.takeBack();
  return false;
}

const isInTime = (board: Board, task: Task): boolean => board.ends[task.index]! <= task.due;
