import {
  boardOf,
  Board,
  decide,
  type Decision,
  isProvablyInfeasible,
  listBy,
  type Problem,
  type Visit,
} from '../fit/index.js';
import { fewestHitting } from '../bounds/hitting.js';
import { easedTo, heldTo, type Split } from './pieces.js';

export interface Freed {
  /** Pieces that may leave their windows, by index. */
  readonly freed: ReadonlySet<number>;
  /** A plan with all else in its window and nothing late; absent where none was found. */
  readonly visits?: readonly Visit[];
  /** No plan with nothing late moves fewer. */
  readonly atLeast: number;
}

/** Places looked at for a plan, and for proof that there is none while a reason is made small. */
const STEPS = 1500;
const QUICK_STEPS = 200;
/** Choices of pieces of which it is not known whether they do, before one more piece is thought to be needed. */
const OPEN = 4;

/**
 * The fewest pieces that must leave their windows for everything to be placed with nothing late.
 *
 * A choice of pieces is taken that holds one of each set known to be needed, as few as will do. Where it shows that
 * everything else cannot stay, pieces are added as long as that still shows: one of the others is then needed. A choice
 * with which all else can stay is the answer. Where neither shows, the choice is put aside and widened.
 *
 * @param dated The split problem, each task with the date by which it must be finished.
 * @param weights In which order work is tried first.
 */
export function fewestFreed(
  split: Split,
  forced: readonly number[],
  weights: readonly number[],
  stop: () => boolean,
): Freed {
  const needed: number[][] = forced.map((piece) => [piece]);
  const all = split.pieces.map((_, piece) => piece);
  let atLeast = forced.length;
  let open = 0;
  for (;;) {
    const { chosen, atLeast: few } = fewestHitting(needed);
    if (open === 0) atLeast = Math.max(atLeast, few);
    const freed = new Set(chosen);
    const problem = heldTo(split, freed);
    const visits = quickly(problem, weights);
    if (visits) return { freed, visits, atLeast: Math.min(atLeast, freed.size) };
    if (stop()) return { freed, atLeast };
    const eased = easedTo(split, freed, problem);
    const hopeless = isProvablyInfeasible(new Board(eased));
    const known: Decision = hopeless ? { exhausted: true } : decide(problem, STEPS);
    if (known.visits)
      return { freed, visits: known.visits, atLeast: Math.min(atLeast, freed.size) };
    if (hopeless || (eased === problem ? known.exhausted : fails(eased, STEPS)))
      grow(split, freed, all, stop);
    else {
      open += 1;
      if (open > OPEN) return { freed, atLeast };
    }
    const others = all.filter((piece) => !freed.has(piece));
    // Even with all free it cannot be.
    if (others.length === 0) return { freed, atLeast };
    needed.push(others);
  }
}

/** Whether it shows that no plan is possible. */
function fails(eased: Problem, steps: number): boolean {
  if (isProvablyInfeasible(new Board(eased))) return true;
  const { visits, exhausted } = decide(eased, steps);
  return exhausted && !visits;
}

/** Frees as many more pieces as may be with the failure still showing: many at once at first, then fewer. */
function grow(split: Split, freed: Set<number>, all: readonly number[], stop: () => boolean): void {
  let open = all.filter((piece) => !freed.has(piece));
  for (
    let size = Math.ceil(open.length / 2);
    size >= 1 && !stop();
    size = size === 1 ? 0 : Math.ceil(size / 2)
  ) {
    const left: number[] = [];
    for (let at = 0; at < open.length; at += size) {
      const some = open.slice(at, at + size);
      if (stop()) return;
      for (const piece of some) freed.add(piece);
      if (fails(easedTo(split, freed), QUICK_STEPS)) continue;
      for (const piece of some) freed.delete(piece);
      left.push(...some);
    }
    open = left;
  }
}

/** A plan with nothing late by one list, if there is. */
function quickly(problem: Problem, weights: readonly number[]): readonly Visit[] | undefined {
  for (const list of [weights, problem.tasks.map((task) => Math.min(1e9, task.due))]) {
    const board = boardOf(problem, listBy(problem, list));
    const good = problem.tasks.every(
      ({ index, due }) => board.left[index] === 0 && board.ends[index]! <= due,
    );
    if (good && board.isWhole()) return board.visits.slice();
  }
  return undefined;
}
