import {
  Board,
  compareScores,
  isOwed,
  listBy,
  placeAll,
  type Task,
  type Visit,
} from '../fit/index.js';
import { createRandom, type Random } from '../random.js';
import type { Split } from './pieces.js';

export interface FewerMovesOptions {
  /** A plan to begin with, where one is known. */
  readonly from?: readonly Visit[];
  /** In which order work is tried first. */
  readonly weights: readonly number[];
  /** The date of each due that is to be kept. */
  readonly dates: readonly number[];
  /** No plan is better. */
  readonly atLeast: Values;
  readonly stop: () => boolean;
}

/** In which order tasks are placed, and the window in which each looks for room first; below 0: in none. */
interface Choice {
  readonly weights: readonly number[];
  readonly first: Int32Array;
}

interface Tried extends Choice {
  readonly visits: readonly Visit[];
  readonly score: readonly number[];
  /** Tasks that are left out, late, or not in their own window. */
  readonly amiss: readonly number[];
}

/** Values back with which a change is compared. */
const MEMORY = 150;
/** Changes without gain after which it begins again from the best. */
const IDLE = 2000;

/**
 * A plan that leaves out little, is little late and moves few pieces, in this order: each piece is put down in its own
 * window where there is room by its date, and elsewhere where not; the order, and where each looks first, are changed
 * again and again, and what comes to less is kept. Never worse than the plan to begin with; `undefined` where nothing was
 * found that is a plan.
 *
 * @param split Each task with the date by which it looks for room in its own window.
 */
export function fewerMoves(
  split: Split,
  { from, weights, dates, atLeast, stop }: FewerMovesOptions,
): readonly Visit[] | undefined {
  const place = placer(split, dates);
  const asBefore = { weights, first: homesOf(split) };
  const asWas = place(asBefore);
  const tried = from ? [asWas, place(choiceOf(split, from, weights))] : [asWas];
  let best = tried.reduce((a, b) => (compareScores(b.score, a.score) < 0 ? b : a));
  const enough = [0, ...atLeast];
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
  if (from && compareScores(valuer(split, dates)(from), best.score.slice(1)) <= 0) return from;
  return best.score[0] === 0 ? best.visits : undefined;
}

/** Work left out, units of it, minutes late of some dates, and pieces that leave their windows. */
export type Values = readonly [number, number, number, number];

/** What plans come to. */
export function valuer(
  { problem, pieces, whole }: Split,
  dates: readonly number[],
): (visits: readonly Visit[]) => Values {
  const { tasks, dues, windows } = problem;
  const row = windows.length + 1;
  const cells = (1 + Math.max(-1, ...whole)) * row;
  // What is left out and something settled waits for weighs more than all other: the plan would break.
  const weight = tasks.map((task) => (isOwed(task) ? tasks.length + 1 : 1));
  const wanted = new Map<number, number[]>();
  for (const { task, window, placement } of pieces) {
    const cell = window === undefined ? -1 : whole[task]! * row + window + 1;
    wanted.set(cell, [...(wanted.get(cell) ?? []), placement.units ?? 1]);
  }
  // The smallest first: as many stay as there is room for.
  for (const some of wanted.values()) some.sort((a, b) => a - b);
  return (visits) => {
    const left = tasks.map((task) => task.units);
    const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
    const there = new Int32Array(cells);
    for (const { task, window, units, end } of visits) {
      left[task]! -= units;
      ends[task] = Math.max(ends[task]!, end);
      there[whole[task]! * row + window + 1]! += units;
    }
    const out = new Map<number, number>();
    let units = 0;
    left.forEach((some, index) => {
      if (some <= 0) return;
      units += some;
      out.set(whole[index]!, Math.max(out.get(whole[index]!) ?? 0, weight[index]!));
    });
    let late = 0;
    dues.forEach((due, i) => {
      let last = dates[i]!;
      for (const task of due.tasks) last = Math.max(last, ends[task]!);
      late += last - dates[i]!;
    });
    let moved = 0;
    for (const [cell, some] of wanted) {
      let free = cell < 0 ? 0 : there[cell]!;
      for (const each of some)
        if (free < each) moved += 1;
        else free -= each;
    }
    return [[...out.values()].reduce((sum, each) => sum + each, 0), units, late, moved];
  };
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

function placer(split: Split, dates: readonly number[]): (choice: Choice) => Tried {
  const { problem, pieces } = split;
  const homes = homesOf(split);
  const valuesOf = valuer(split, dates);
  return ({ weights, first }) => {
    const board = new Board(problem);
    const homeOf = (task: number): number | undefined =>
      first[task]! < 0 ? undefined : first[task];
    placeAll(board, listBy(problem, weights), homeOf);
    const { visits, left, ends } = board;
    const there = problem.tasks.map(() => 0);
    for (const { task, window, units } of visits) if (window === homes[task]) there[task]! += units;
    const amiss = new Set<number>();
    for (const { task } of pieces) if (there[task]! < problem.tasks[task]!.units) amiss.add(task);
    for (const { index, due } of problem.tasks)
      if (left[index]! > 0 || ends[index]! > due) amiss.add(index);
    // What was opened and is not made good in its window is no plan, however much is placed.
    const score = [Number(!board.isWhole()), ...valuesOf(visits)];
    return { weights, first, visits, score, amiss: [...amiss] };
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
