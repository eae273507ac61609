import type { Board } from '../problem/board.js';
import { mostUnits } from '../problem/units-in-slots.js';
import { headsOf, type Heads } from '../problem/heads.js';
import { isOwed, type Problem, type Task } from '../problem/problem.js';

/** Values in order of weight, each the smaller the better. */
export type Score = readonly number[];

export function compareScores(a: Score, b: Score): number {
  for (let i = 0; i < a.length; i += 1) {
    // Equal infinities are equal.
    if (a[i] === b[i]) continue;
    return a[i]! < b[i]! ? -1 : 1;
  }
  return 0;
}

/** What is minimised after `unplaced tasks, unplaced units`: minutes late and the last finish, in either order. */
export type Order = 'late-finish' | 'finish-late';

/** Left out, work that something settled waits for weighs more than all other: the plan would break. */
export function weightOf(task: Task, { tasks }: Problem): number {
  return isOwed(task) ? tasks.length + 1 : 1;
}

/** Values of a board as it stands: unplaced tasks, unplaced units, then minutes late and last finish in `order`. */
export function scoreOf(board: Board, order: Order): Score {
  const { problem, left, ends } = board;
  let unplaced = 0;
  let unitsOut = 0;
  let finish = problem.finishFrom ?? 0;
  problem.tasks.forEach((task, index) => {
    if (left[index]! > 0) {
      unplaced += weightOf(task, problem);
      unitsOut += left[index]!;
    }
    finish = Math.max(finish, ends[index]!);
  });
  let late = 0;
  for (const { due, tasks } of problem.dues) {
    let last = due;
    for (const task of tasks) last = Math.max(last, ends[task]!);
    late += last - due;
  }
  return order === 'late-finish'
    ? [unplaced, unitsOut, late, finish]
    : [unplaced, unitsOut, finish, late];
}

/** Values that no completion of the board beats, when no further visit starts before `floor`. */
export function scoreBound(board: Board, order: Order, floor?: number): Score {
  return boundFrom(board, order, headsOf(board, floor));
}

/** The same, of heads that are known. */
export function boundFrom(board: Board, order: Order, heads: Heads): Score {
  const { problem } = board;
  const { ends } = heads;
  let unplaced = 0;
  let unitsOut = 0;
  let finish = problem.finishFrom ?? 0;
  problem.tasks.forEach((task, index) => {
    if (ends[index] === Number.POSITIVE_INFINITY) {
      unplaced += weightOf(task, problem);
      unitsOut += unitsLeftOut(board, heads, task);
    } else finish = Math.max(finish, ends[index]!);
  });
  let late = 0;
  for (const { due, tasks } of problem.dues) {
    let last = due;
    for (const task of tasks)
      if (ends[task]! < Number.POSITIVE_INFINITY) last = Math.max(last, ends[task]!);
    late += last - due;
  }
  return order === 'late-finish'
    ? [unplaced, unitsOut, late, finish]
    : [unplaced, unitsOut, finish, late];
}

/** Units at the least that find no place of a task that cannot be finished; the others may still find one. */
export function unitsLeftOut({ left, since }: Board, { starts }: Heads, task: Task): number {
  const units = left[task.index]!;
  if (task.units === 1 || starts[task.index] === Number.POSITIVE_INFINITY) return units;
  const from = Math.max(starts[task.index]!, since[task.index]!);
  return Math.max(0, units - mostUnits(task, from));
}

/** Whether a block is begun of which something finds no place any more. */
export function isLeftOpen({ problem, homes }: Board, { ends }: Heads): boolean {
  const { blocks = [], pinned } = problem;
  if (pinned) return false;
  const isLost = (index: number): boolean => ends[index] === Number.POSITIVE_INFINITY;
  return blocks.some(
    ({ members, runners }, at) => homes[at]! >= 0 && (members.some(isLost) || runners.some(isLost)),
  );
}

export interface ExactOptions {
  readonly order: Order;
  /** Only answers better than this are wanted. */
  readonly below?: Score;
  /** An answer this good ends the search: nothing better is possible or wanted. */
  readonly enough?: Score;
  /** Called now and then; true ends the search unfinished. */
  readonly stop: () => boolean;
}

export interface ExactAnswer {
  /** Every possibility was looked at or ruled out (or `enough` was met). */
  readonly exhausted: boolean;
  readonly score: Score | undefined;
  readonly visits: Board['visits'] | undefined;
}

/**
 * Depth-first over all ways to put tasks down one after another, each as early as it goes, in order of start.
 *
 * Some best schedule is among them for values that no later finish improves: put the visits of a best schedule down
 * in order of start, each no later than it was; where that changes the order do it again, until nothing moves. What
 * settles the window of a block is tried in each window; only plans in which every block is whole are answers.
 * The board is left as it was.
 */
export function searchAll(board: Board, options: ExactOptions): ExactAnswer {
  const { order, enough, stop } = options;
  const { tasks } = board.problem;
  const seen = new Set<string>();
  let best = options.below;
  let found: Board['visits'] | undefined;
  let stopped = false;
  let nodes = 0;

  const visit = (floor: number): void => {
    nodes += 1;
    board.problem.effort.spent += 2 * board.visits.length;
    if ((nodes & 63) === 0 && stop()) stopped = true;
    if (stopped) return;
    const key = board.visits
      .map((each) => `${each.task},${each.start},${each.units},${each.window}`)
      .sort()
      .join(';');
    if (seen.has(key)) return;
    if (seen.size < 200_000) seen.add(key);
    const heads = headsOf(board, floor);
    if (best && compareScores(boundFrom(board, order, heads), best) >= 0) return;
    if (isLeftOpen(board, heads)) return;
    const moves: Board['visits'] = [];
    let dead = true;
    for (const task of tasks) {
      const left = board.left[task.index]!;
      if (left === 0 || task.rank < 0 || !board.ready(task)) continue;
      const release = board.release(task);
      for (let units = left; units >= 1; units -= 1) {
        const opens = board.settles(task, units);
        for (const move of board.choices(task, units, release)) {
          dead &&= opens;
          if (move.start >= floor) moves.push(move);
        }
      }
    }
    if (dead && board.isWhole()) {
      const score = scoreOf(board, order);
      if (!best || compareScores(score, best) < 0) {
        best = score;
        found = board.visits.slice();
        if (enough && compareScores(score, enough) <= 0) stopped = true;
      }
      if (stopped) return;
    }
    moves.sort((a, b) => a.start - b.start || b.units - a.units);
    for (const move of moves) {
      board.put(move);
      visit(move.start);
      board.takeBack();
      if (stopped) return;
    }
  };
  visit(Number.NEGATIVE_INFINITY);
  const metEnough =
    found !== undefined && enough !== undefined && compareScores(best!, enough) <= 0;
  return {
    exhausted: !stopped || metEnough,
    score: found ? best : undefined,
    visits: found,
  };
}
