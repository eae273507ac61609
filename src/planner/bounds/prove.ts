import {
  Board,
  decide,
  headsOf,
  isProvablyInfeasible,
  latestOf,
  type Problem,
  type Visit,
} from '../fit/index.js';
import { partOf } from '../search/parts.js';

/** Whether everything can be placed by its dates. */
export interface Proof {
  /** It is certain that it cannot. */
  readonly none: boolean;
  /** How it can, where that was found. */
  readonly visits?: readonly Visit[];
}

/** How many tasks are looked at together, the tightest first; then all. */
const SIZES = [4, 6, 9, 13, 18, 25];
/** Places looked at in each part. */
const STEPS = 1500;

/**
 * Looks for proof that not everything can be placed by its dates: bounds, then a search through the few tasks that
 * have the least room between their earliest and their latest start, then through more of them.
 */
export function prove(problem: Problem, stop: () => boolean): Proof {
  const empty = new Board(problem);
  if (isProvablyInfeasible(empty)) return { none: true };
  const { starts } = headsOf(empty);
  const latest = latestOf(problem);
  const room = (index: number): number => latest.starts[index]! - starts[index]!;
  const order = problem.tasks.map((task) => task.index).sort((a, b) => room(a) - room(b) || a - b);
  for (const size of SIZES) {
    if (size >= order.length || stop()) break;
    const { visits, exhausted } = decide(partOf(problem, order.slice(0, size), starts), STEPS);
    if (visits) continue;
    return { none: exhausted };
  }
  if (stop()) return { none: false };
  const { visits, exhausted } = decide(problem, STEPS);
  return visits ? { none: false, visits } : { none: exhausted };
}
