import { Board, scoreOf, type Order, type Problem, type Score, type Visit } from '../fit/index.js';
import type { Objective } from './types.js';

const usual: readonly Objective[] = ['key-dates', 'margins', 'finish', 'fewest-windows'];

/** The objectives by weight: the usual order with one moved to the front. */
export function objectiveOrder(first?: Objective): readonly Objective[] {
  return first === undefined ? usual : [first, ...usual.filter((each) => each !== first)];
}

/** How an order of objectives is searched: what comes before and after the count of windows. */
export interface Goal {
  readonly objectives: readonly Objective[];
  /** Order of the two values that no later finish improves. */
  readonly order: Order;
  /** How many of those two come before the count of windows. */
  readonly ahead: number;
}

export function goalOf(first?: Objective): Goal {
  const objectives = objectiveOrder(first);
  const place = (name: Objective): number => objectives.indexOf(name);
  const windows = place('fewest-windows');
  return {
    objectives,
    order: place('key-dates') < place('finish') ? 'late-finish' : 'finish-late',
    ahead: Number(place('key-dates') < windows) + Number(place('finish') < windows),
  };
}

export function windowsIn(visits: readonly Visit[]): number {
  const seen: boolean[] = [];
  let count = 0;
  for (const { window } of visits)
    if (window >= 0 && !seen[window]) {
      seen[window] = true;
      count += 1;
    }
  return count;
}

/** `unplaced, unplaced units`, then the three values in the goal's order. */
export function withWindows(score: Score, windows: number, goal: Goal): Score {
  const at = 2 + goal.ahead;
  return [...score.slice(0, at), windows, ...score.slice(at)];
}

export function fullScoreOf(board: Board, goal: Goal): Score {
  return withWindows(scoreOf(board, goal.order), windowsIn(board.visits), goal);
}

/** The value of each objective out of a full score. */
export function valuesOf(score: Score, goal: Goal): Record<Objective, number> {
  const named: readonly Objective[] = goal.objectives.filter((each) => each !== 'margins');
  const value = (name: Objective): number => score[2 + named.indexOf(name)]!;
  return {
    'key-dates': value('key-dates'),
    // The required margin is outside usable time, so no plan eats into it.
    margins: 0,
    finish: value('finish'),
    'fewest-windows': value('fewest-windows'),
  };
}

/** An answer on the way. */
export interface Candidate {
  readonly visits: readonly Visit[];
  readonly score: Score;
}

export function candidateOf(board: Board, goal: Goal): Candidate {
  return { visits: board.visits.slice(), score: fullScoreOf(board, goal) };
}

/** Windows that some task may use, in the problem's order. */
export function usableWindows(problem: Problem): number[] {
  const used = new Set<number>();
  for (const task of problem.tasks)
    for (const slot of task.slots) if (slot.window >= 0) used.add(slot.window);
  return [...used].sort((a, b) => a - b);
}

/** The score of visits as they lie. */
export function scoreIn(problem: Problem, goal: Goal, visits: readonly Visit[]): Score {
  const board = new Board(problem);
  for (const visit of visits) board.put(visit);
  return fullScoreOf(board, goal);
}

/** Minutes of work by window. */
export function useOf({ visits }: Pick<Candidate, 'visits'>): Map<number, number> {
  const use = new Map<number, number>();
  for (const { window, start, end } of visits)
    if (window >= 0) use.set(window, (use.get(window) ?? 0) + end - start);
  return use;
}

/** Windows that an answer uses, those with the fewest minutes of work first. */
export function usedBy(answer: Pick<Candidate, 'visits'>): number[] {
  const use = [...useOf(answer)];
  return use.sort((a, b) => a[1] - b[1] || a[0] - b[0]).map(([window]) => window);
}
