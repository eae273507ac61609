import type { Budget } from './budget.js';
import { pathBound, workBound } from './bounds.js';
import { Population } from './evolve.js';
import { Learner } from './learn.js';
import { createNetwork } from './network.js';

export interface ProjectProblem {
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
  readonly budget: Budget;
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
 * Always answers, with the best found within its budget. Times count from 0 in whatever unit the durations have. The problem
 * is known as resource-constrained project scheduling.
 *
 * @throws {RangeError} When a number is negative, a demand exceeds its capacity, a list has the wrong length, or the
 *   precedence closes a loop.
 */
export function project(problem: ProjectProblem): ProjectAnswer {
  const network = createNetwork(problem);
  const { budget } = problem;
  const population = new Population(network, problem.seed ?? 1, budget);
  let best: Schedule = population.first();
  let lowerBound = Math.max(pathBound(network), workBound(network));
  const report = (better: Schedule): void => {
    if (better.makespan < best.makespan) best = better;
  };
  population.improve(lowerBound, 500, report);
  if (best.makespan > lowerBound && !budget.expired()) {
    const learner = new Learner(network, lowerBound, best.makespan, best.starts);
    // Turns: the learner proves, the population finds; each gains from what the other has found.
    while (best.makespan > lowerBound && !budget.expired()) {
      learner.adopt(best.starts, best.makespan);
      const state = learner.run(2000, budget);
      lowerBound = Math.max(lowerBound, learner.lower);
      if (state === 'improved') {
        population.adopt(learner.starts, learner.upper);
        report({ starts: learner.starts, makespan: learner.upper });
      }
      if (state === 'paused') population.improve(lowerBound, 200, report);
    }
  }
  return {
    starts: best.starts,
    makespan: best.makespan,
    lowerBound,
    proven: best.makespan <= lowerBound,
  };
}

interface Schedule {
  readonly starts: Int32Array;
  readonly makespan: number;
}
