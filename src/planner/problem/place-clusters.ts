import type { Board } from './board.js';
import type { Cluster } from './blocks.js';
import { isPlacedHome, type HomeOf } from './place-home.js';
import { visitMinutes, type Task } from './problem.js';

/** Takes the tasks of clusters out of a list that is gone through: each cluster is placed when its last task comes. */
export interface ClusterTurns {
  /** Whether the task is part of a cluster, which is seen to here. */
  take(task: number): boolean;
}

const none: ClusterTurns = { take: () => false };

/** The turns of the clusters of a board's problem, their tasks placed in the order of the list. */
export function placeClusters(
  board: Board,
  list: readonly number[],
  homeOf?: HomeOf,
): ClusterTurns {
  const { clusters } = board.problem;
  if (!clusters || clusters.length === 0) return none;
  const clusterOf = new Map<number, number>();
  clusters.forEach(({ tasks }, at) => {
    for (const task of tasks) clusterOf.set(task, at);
  });
  const turns: number[][] = clusters.map(() => []);
  for (const task of list) {
    const at = clusterOf.get(task);
    if (at !== undefined) turns[at]!.push(task);
  }
  return {
    take(task) {
      const at = clusterOf.get(task);
      if (at === undefined) return false;
      if (turns[at]!.at(-1) === task) placeCluster(board, clusters[at]!, turns[at]!, homeOf);
      return true;
    },
  };
}

/**
 * Places a cluster in its own window, or in the first that takes all of it. Where none does, nothing bound is placed; of repeated work
 * all but the last unit still is.
 */
export function placeCluster(
  board: Board,
  { blocks }: Cluster,
  order: readonly number[],
  homeOf?: HomeOf,
): void {
  const { tasks } = board.problem;
  if (order.every((index) => board.left[index] === 0)) return;
  const own = order.map((index) => tasks[index]!);
  const bound = own.filter((task) => task.block !== undefined);
  const homes = blocks.map((block) => board.homes[block]!);
  const mark = board.visits.length;
  const known = homes.find((home) => home >= 0);
  for (const window of known === undefined ? windowsFor(board, bound, homeOf) : [known]) {
    blocks.forEach((block, i) => (board.homes[block] = homes[i]! >= 0 ? homes[i]! : window));
    const isHere = own.every((task) => placeHere(board, task, window, homeOf));
    if (isHere && board.isWhole(blocks)) return;
    while (board.visits.length > mark) board.takeBack();
  }
  blocks.forEach((block, i) => (board.homes[block] = homes[i]!));
  for (const task of own) {
    if (board.left[task.index] === 0 || !board.ready(task)) continue;
    if (task.block === undefined || known !== undefined) board.place(task);
    else if (task.lastOnly) board.place(task, board.left[task.index]! - 1);
  }
}

/** Whether all that is left of a task finds a place with its block in a window. */
function placeHere(board: Board, task: Task, window: number, homeOf: HomeOf | undefined): boolean {
  if (board.left[task.index] === 0) return true;
  if (!board.ready(task)) return false;
  // What holds together is placed in one window: its own, where that is the one that is tried.
  const isOwn = task.block === undefined || homeOf?.(task.index) === window;
  if (isOwn && isPlacedHome(board, task, homeOf)) return true;
  if (task.lastOnly) {
    // As much as goes before, then the rest with the block.
    while (board.left[task.index]! > 1) {
      const visit = board.findMost(task, board.left[task.index]! - 1);
      if (!visit || visit.window === window) break;
      const last = board.find(task, 1, undefined, window);
      if (!last || visit.end > last.start) break;
      board.put(visit);
    }
    board.place(task, board.left[task.index], window);
  } else board.place(task);
  return board.left[task.index] === 0;
}

/** The windows that may take all of some bound tasks, as far as it shows at once, those of their own first, then in order of time. */
function windowsFor(board: Board, bound: readonly Task[], homeOf: HomeOf | undefined): number[] {
  const first = bound.filter((task) => board.ready(task));
  const from = first.reduce((latest, task) => Math.max(latest, board.release(task)), -Infinity);
  const least = Math.max(...bound.map((task) => visitMinutes(task, 1)));
  const narrowest = bound.reduce((a, b) => (b.slots.length < a.slots.length ? b : a));
  const windows = new Set<number>();
  for (const slot of narrowest.slots)
    if (slot.end - Math.max(slot.start, from) >= Math.min(least, visitMinutes(narrowest, 1)))
      windows.add(slot.window);
  // What would stay is tried where it was, before all others.
  const homes = bound.flatMap((task) => homeOf?.(task.index) ?? []);
  return [...new Set([...homes.filter((home) => windows.has(home)), ...windows])];
}
