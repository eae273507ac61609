import { Board } from '../problem/board.js';
import { headsOf } from '../problem/heads.js';
import { latestOf } from '../problem/latest.js';
import { poolsOf, stockOf } from '../problem/pools.js';
import { visitMinutes, type Problem, type Task, type Visit } from '../problem/problem.js';

export interface Decision {
  /** How everything is placed with nothing late; absent where no way was found. */
  readonly visits?: readonly Visit[];
  /** Nothing was left out: without visits, there is no way. */
  readonly exhausted: boolean;
}

/**
 * Whether everything can be placed with nothing late: depth-first over ways to put visits down in order of start,
 * each as early as it goes from the start of the one before.
 *
 * Put down so, some way is found wherever one exists: each visit of it goes down no later than it was and ends no
 * later, so those that begin after it keep their room. What can still follow depends on the units left, on when
 * what has begun ends, and on when the rest may begin; where all of that is no sooner than at a place already found
 * to lead nowhere, this leads nowhere either. No more than `steps` places are looked at.
 */
export function decide(problem: Problem, steps: number): Decision {
  const { tasks } = problem;
  if (problem.order.length < tasks.length) return { exhausted: true };
  const board = new Board(problem);
  const latest = latestOf(problem);
  const pools = poolsOf(problem);
  const twins = twinsOf(tasks);
  const dead = new Map<string, Place[]>();
  let left = steps;

  const visit = (floor: number): boolean => {
    if (board.left.every((units) => units === 0)) return board.isWhole();
    left -= 1;
    if (left < 0 || problem.effort.isCut()) return false;
    problem.effort.spent += tasks.length;
    const heads = headsOf(board, floor);
    if (heads.ends.some((end, index) => end > latest.ends[index]!)) return false;
    for (const pool of pools) if (isOverdrawn(pool, floor)) return false;
    const here = placeOf(board, floor);
    const key = board.homes.length === 0 ? board.left.join() : `${board.left} ${board.homes}`;
    const known = dead.get(key);
    if (known) problem.effort.spent += known.length;
    if (known?.some((other) => isNoLater(other, here))) return false;

    const moves: Visit[] = [];
    // Nothing needs to wait for a moment by which something else could be over and done with.
    let first = Number.POSITIVE_INFINITY;
    for (const task of tasks) {
      const units = board.left[task.index]!;
      if (units === 0 || !board.ready(task)) continue;
      const twin = twins[task.index]!;
      if (twin >= 0 && board.left[twin]! > 0) continue;
      const from = Math.max(board.release(task), floor);
      for (let some = units; some >= 1; some -= 1) {
        const choices = board.choices(task, some, from);
        for (const move of choices) {
          if (move.end > latest.ends[task.index]!) continue;
          moves.push(move);
          // Of work that goes in one of several windows no place is the one to take first.
          if (!board.branches(task, some)) first = Math.min(first, move.end);
        }
      }
    }
    moves.sort(
      (a, b) =>
        a.start - b.start || latest.starts[a.task]! - latest.starts[b.task]! || b.units - a.units,
    );
    for (const move of moves) {
      if (move.start >= first && move.end > first) continue;
      board.put(move);
      if (visit(move.start)) return true;
      board.takeBack();
      if (left < 0 || problem.effort.cutShort) return false;
    }
    if (known) known.push(here);
    else dead.set(key, [here]);
    return false;
  };

  /** Whether what is left of a pool's tasks needs more than is free before some of them must be finished. */
  const isOverdrawn = (pool: (typeof pools)[number], floor: number): boolean => {
    let from = floor;
    if (pool.turns)
      for (const { task } of pool.users) from = Math.max(from, board.ends[task.index]!);
    const waiting = pool.users
      .filter(({ task }) => board.left[task.index]! > 0)
      .sort((a, b) => latest.ends[a.task.index]! - latest.ends[b.task.index]!);
    let asked = 0;
    return waiting.some(({ task, amount }) => {
      asked += amount * visitMinutes(task, board.left[task.index]!);
      return asked > stockOf(pool, board.free(pool.supply), from, latest.ends[task.index]!);
    });
  };

  const found = visit(Number.NEGATIVE_INFINITY);
  return found
    ? { visits: board.visits.slice(), exhausted: true }
    : { exhausted: left >= 0 && !problem.effort.cutShort };
}

/** What the ways on from a board depend on, beside the units left. */
interface Place {
  readonly floor: number;
  /** Last finish so far of each task. */
  readonly ends: readonly number[];
  /** From when each task with units left may begin, as far as that is known. */
  readonly releases: readonly number[];
}

function placeOf(board: Board, floor: number): Place {
  return {
    floor,
    ends: board.ends.slice(),
    releases: board.problem.tasks.map((task) =>
      board.left[task.index]! > 0 ? board.release(task) : Number.NEGATIVE_INFINITY,
    ),
  };
}

/** Whether all that can follow on `b` can follow on `a`, with the same units left. */
function isNoLater(a: Place, b: Place): boolean {
  return (
    a.floor <= b.floor &&
    a.ends.every((end, index) => end <= Math.max(b.ends[index]!, b.floor)) &&
    a.releases.every((release, index) => release <= Math.max(b.releases[index]!, b.floor))
  );
}

/** For each whole task an earlier one that is the same in everything and may as well go first; -1 where none is. */
function twinsOf(tasks: readonly Task[]): number[] {
  const keys = tasks.map((task) =>
    JSON.stringify([
      task.units,
      task.perUnit,
      task.setUp,
      task.makeSafe,
      task.earliest,
      task.due,
      task.latestEnd,
      task.latestStart,
      task.demands,
      task.block,
      [task.before, task.after].map((ties) =>
        ties.map((tie) => [tie.task, tie.fromStart, tie.gap, tie.cure !== undefined]),
      ),
    ]),
  );
  return tasks.map((task, i) => {
    for (let j = i - 1; j >= 0; j -= 1)
      if (task.units === 1 && keys[j] === keys[i] && tasks[j]!.slots === task.slots) return j;
    return -1;
  });
}
