import { createBudget, type Limits } from './budget.js';
import { pathBound, workBound } from './project/bounds.js';
import { Population } from './project/evolve.js';
import { createNetwork } from './project/network.js';

export interface ProjectProblem extends Limits {
  /** Whole, from 0 up, one per activity. */
  readonly durations: Int32Array;
  /** For each resource, what each activity takes of it while it runs. An activity of no duration takes nothing. */
  readonly demands: readonly Int32Array[];
  /** For each resource, what there is of it at all times. */
  readonly capacities: ArrayLike<number>;
  /** `[a, b, lag]`: b starts no earlier than `lag` (0 if left out) after a has finished. */
  readonly precedence: readonly (readonly [number, number, number?])[];
  /** Earliest start of each activity; 0 if left out. */
  readonly releases?: Int32Array;
  /** What must pass after each activity's finish before the end; 0 if left out. */
  readonly tails?: Int32Array;
  /** The same seed gives the same search. Default 1. */
  readonly seed?: number;
  /** Called with each better answer. */
  readonly onProgress?: (answer: {
    readonly makespan: number;
    readonly lowerBound: number;
  }) => void;
}

export interface ProjectAnswer {
  readonly starts: Int32Array;
  /** The latest finish, tails included. */
  readonly makespan: number;
  /** No schedule is shorter. Equal to `makespan` when `proven`. */
  readonly lowerBound: number;
  readonly proven: boolean;
}

/**
 * The shortest schedule of activities that share renewable resources.
 *
 * Always answers, with the best found by the deadline. Times count from 0 in whatever unit the durations have. The problem
 * is known as resource-constrained project scheduling.
 *
 * @throws {RangeError} When a number is negative, a demand exceeds its capacity, a list has the wrong length, or the
 *   precedence closes a loop.
 */
export function project(problem: ProjectProblem): ProjectAnswer {
  const network = createNetwork(problem);
  const budget = createBudget(problem);
  const bound = Math.max(pathBound(network), workBound(network));
  const population = new Population(network, problem.seed ?? 1);
  let best: { readonly starts: Int32Array; readonly makespan: number } = population.first();
  const tell = (better: typeof best): void => {
    best = better;
    problem.onProgress?.({ makespan: better.makespan, lowerBound: bound });
  };
  tell(best);
  population.improve(bound, Infinity, budget, tell);
  return {
    starts: best.starts,
    makespan: best.makespan,
    lowerBound: bound,
    proven: best.makespan <= bound,
  };
}
