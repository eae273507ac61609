import { Board, compareScores, listBy, placeAll, type Task, type Visit } from '../fit/index.js';
import { createRandom, type Random } from '../kernels/random.js';
import type { Split } from './pieces.js';

export interface FewerMovesOptions {
  /** A plan with nothing late to begin with, where one is known. */
  readonly from?: readonly Visit[];
  /** In which order work is tried first. */
  readonly weights: readonly number[];
  /** No plan moves fewer. */
  readonly atLeast: number;
  readonly stop: () => boolean;
}

/** In which order tasks are placed, and the window in which each looks for room first; below 0: in none. */
interface Choice {
  readonly weights: readonly number[];
  readonly first: Int32Array;
}

interface Tried extends Choice {
  readonly visits: readonly Visit[];
  /** Tasks left out, units left out, minutes late, pieces that leave their windows. */
  readonly score: readonly number[];
  /** Tasks that are left out, late, or not in their own window. */
  readonly amiss: readonly number[];
}

/** Values back with which a change is compared. */
const MEMORY = 40;
/** Changes without gain after which it begins again from the best. */
const IDLE = 600;

/**
 * A plan with nothing late that moves few pieces: each piece is put down in its own window where there is room by its
 * date, and elsewhere where not; the order, and where each looks first, are changed again and again, and what
 * moves fewer is kept. `undefined` where none is found.
 *
 * @param split Each task with the date by which it must be finished.
 */
export function fewerMoves(
  split: Split,
  { from, weights, atLeast, stop }: FewerMovesOptions,
): readonly Visit[] | undefined {
  const place = placer(split);
  const asBefore = { weights, first: homesOf(split) };
  const asWas = place(asBefore);
  const other = from && place(choiceOf(split, from, weights));
  let best = other && compareScores(other.score, asWas.score) < 0 ? other : asWas;
  const enough = [0, 0, 0, atLeast];
  const random = createRandom(1);
  let current = best;
  const before = Array.from({ length: MEMORY }, () => best.score);
  let idle = 0;
  for (let at = 0; compareScores(best.score, enough) > 0 && !stop(); at += 1) {
    const next = place(changed(split, asBefore, current, random));
    const slot = at % MEMORY;
    const known = compareScores(before[slot]!, current.score) > 0 ? before[slot]! : current.score;
    if (compareScores(next.score, known) <= 0) current = next;
    before[slot] = current.score;
    idle += 1;
    const gain = compareScores(current.score, best.score);
    if (gain < 0) idle = 0;
    // Where it comes to the same it goes on from there, so that it does not stay in one place.
    if (gain <= 0) best = current;
    else if (idle > IDLE) {
      current = best;
      before.fill(best.score);
      idle = 0;
    }
  }
  return best.score[0] === 0 && best.score[2] === 0 ? best.visits : undefined;
}

/** The order of a plan, and what has left its window in it. */
function choiceOf(
  { problem, pieces }: Split,
  visits: readonly Visit[],
  weights: readonly number[],
): Choice {
  const starts = [...weights];
  const there = problem.tasks.map(() => 0);
  const homes = homesOf({ problem, pieces });
  for (const { task, start, window, units } of visits) {
    starts[task] = start;
    if (window === homes[task]) there[task]! += units;
  }
  const first = homes.map((home, index) =>
    there[index]! < problem.tasks[index]!.units ? -1 : home,
  );
  return { weights: starts, first };
}

/** The window of each task's piece; -2 where it has none that is still there. */
function homesOf({ problem, pieces }: Pick<Split, 'problem' | 'pieces'>): Int32Array {
  const homes = new Int32Array(problem.tasks.length).fill(-2);
  for (const { task, window } of pieces) homes[task] = window ?? -2;
  return homes;
}

function placer(split: Split): (choice: Choice) => Tried {
  const { problem, pieces } = split;
  const homes = homesOf(split);
  return ({ weights, first }) => {
    const board = new Board(problem);
    const homeOf = (task: number): number | undefined =>
      first[task]! < 0 ? undefined : first[task];
    placeAll(board, listBy(problem, weights), { homeOf });
    const { visits } = board;
    const there = problem.tasks.map(() => 0);
    for (const { task, window, units } of visits) if (window === homes[task]) there[task]! += units;
    const gone = new Set<number>();
    for (const { task } of pieces) if (there[task]! < problem.tasks[task]!.units) gone.add(task);
    const moved = gone.size;
    let [out, units, late] = [0, 0, 0];
    for (const { index, due } of problem.tasks) {
      const left = board.left[index]!;
      if (left > 0) {
        out += 1;
        units += left;
      }
      late += Math.max(0, board.ends[index]! - due);
      if (left > 0 || board.ends[index]! > due) gone.add(index);
    }
    // What was opened and is not made good in its window is no plan, however much is placed.
    if (!board.isWhole()) out += 1;
    return { weights, first, visits, score: [out, units, late, moved], amiss: [...gone] };
  };
}

/** A choice one step away, mostly about what is amiss. */
function changed(
  { problem: { tasks } }: Split,
  asBefore: Choice,
  { weights, first, amiss }: Tried,
  random: Random,
): Choice {
  const any = (): number => random.below(tasks.length);
  const some = (): number =>
    amiss.length > 0 && random.below(2) === 0 ? amiss[random.below(amiss.length)]! : any();
  const kind = random.below(12);
  if (kind < 4) {
    const task = kind < 2 ? any() : some();
    const next = first.slice();
    next[task] = elsewhere(tasks[task]!, first[task]!, asBefore.first[task]!, random);
    return { weights, first: next };
  }
  const next = [...weights];
  const [a, b] = [some(), any()];
  if (kind < 10) {
    if (kind < 7) {
      next[a] = weights[b]!;
      next[b] = weights[a]!;
    } else next[a] = weights[b]! + (kind === 7 ? 1e-3 : -1e-3) * (1 + random.below(1000) / 1000);
    return { weights: next, first };
  }
  // All that was in one window, or half of what looks elsewhere, as it was.
  const homes = first.slice();
  for (const { index } of tasks) {
    const home = asBefore.first[index]!;
    const isBack =
      kind === 10 ? home === asBefore.first[a] : first[index] !== home && random.below(2) === 0;
    if (!isBack) continue;
    next[index] = asBefore.weights[index]!;
    homes[index] = home;
  }
  return { weights: next, first: homes };
}

/** Where a task looks first instead: its own window, any, or one of those that take it. */
function elsewhere({ slots }: Task, now: number, home: number, random: Random): number {
  if (now !== home && random.below(2) === 0) return home;
  if (slots.length === 0 || random.below(2) === 0) return -1;
  return slots[random.below(slots.length)]!.window;
}
