import { Board } from './board.js';
import { isPlacedHome, type HomeOf } from './place-home.js';
import { placeClusters } from './place-clusters.js';
import type { Problem } from './problem.js';

/**
 * Tasks in an order in which all that is waited for comes first, the smallest weight first where there is a choice.
 * The tasks of a cluster stand together, in the place of the first of them.
 */
export function listBy(problem: Problem, weight: readonly number[]): number[] {
  const list = plainListBy(problem, weight);
  const { clusters } = problem;
  if (!clusters) return list;
  // Steps: a cluster, or a task by itself.
  const stepOf = problem.tasks.map((task) => clusters.length + task.index);
  clusters.forEach(({ tasks }, at) => {
    for (const task of tasks) stepOf[task] = at;
  });
  const own = new Map<number, number[]>();
  for (const index of list) {
    const known = own.get(stepOf[index]!);
    if (known) known.push(index);
    else own.set(stepOf[index]!, [index]);
  }
  const waiting = new Map<number, number>([...own.keys()].map((step) => [step, 0]));
  const followers = (step: number): number[] =>
    own.get(step)!.flatMap((index) =>
      problem.tasks[index]!.after.flatMap((tie) => {
        const to = stepOf[tie.task]!;
        return to === step || !waiting.has(to) ? [] : [to];
      }),
    );
  for (const step of own.keys())
    for (const to of followers(step)) waiting.set(to, waiting.get(to)! + 1);
  const open = [...own.keys()].filter((step) => waiting.get(step) === 0);
  const joined: number[] = [];
  while (open.length > 0) {
    let pick = 0;
    for (let i = 1; i < open.length; i += 1) {
      const [task, best] = [own.get(open[i]!)![0]!, own.get(open[pick]!)![0]!];
      const difference = weight[task]! - weight[best]!;
      if (difference < 0 || (difference === 0 && task < best)) pick = i;
    }
    const step = open[pick]!;
    open[pick] = open.at(-1)!;
    open.pop();
    joined.push(...own.get(step)!);
    for (const to of followers(step)) {
      waiting.set(to, waiting.get(to)! - 1);
      if (waiting.get(to) === 0) open.push(to);
    }
  }
  return joined;
}

function plainListBy(problem: Problem, weight: readonly number[]): number[] {
  problem.effort.spent += problem.tasks.length >> 1;
  const waiting = problem.tasks.map((task) => task.before.length);
  const open = problem.order.filter((index) => waiting[index] === 0);
  const list: number[] = [];
  while (open.length > 0) {
    let pick = 0;
    problem.effort.spent += open.length >> 4;
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
  placeAll(board, list);
  return board;
}

/**
 * Places what is left of tasks in the order of a list; what finds no place is left out.
 *
 * @param homeOf The window in which a task is placed where all of it has room there by its date; without: the first that takes it.
 */
export function placeAll(board: Board, list: readonly number[], homeOf?: HomeOf): void {
  const rest = placeClusters(board, list, homeOf);
  for (const index of list) {
    if (board.problem.effort.isCut()) return;
    if (rest.take(index)) continue;
    const task = board.problem.tasks[index]!;
    if (board.left[index]! > 0 && board.ready(task) && !isPlacedHome(board, task, homeOf))
      board.place(task, board.left[index]);
  }
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
