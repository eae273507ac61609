import { LedgerBook, placementsOf, problemOf, type Placement, type Problem } from '../fit/index.js';
import type { Plan } from '../../model/index.js';
import { boundOf } from '../bounds/bounds.js';
import { certificateOf } from './certificate.js';
import { finishOf } from './finish.js';
import { floatsOf } from '../floats/floats.js';
import { keyDatesOf } from '../floats/key-dates.js';
import { narrowed } from '../problem/narrow.js';
import { goalOf, windowsIn, type Candidate, type Goal } from './objectives.js';
import { outsideLate } from './outside-late.js';
import { pin } from './pins.js';
import { search, type Found } from './search.js';
import type { Limits } from './structure.js';
import type { Allocation, Objective } from './types.js';
import { unplacedOf } from './unplaced.js';
import { verify } from '../check/verify.js';

export interface AllocateOptions {
  /** The objective that comes first; the others follow in their usual order. */
  readonly first?: Objective;
  /**
   * How long the search may take; 5 without. It ends sooner when all is proven, or when all but the last value is and as
   * long again has brought nothing better.
   */
  readonly seconds?: number;
  /** Milliseconds from any fixed moment. */
  readonly clock: () => number;
  readonly shouldStop?: () => boolean;
  /** Hears of every better answer on the way; the answer is made up only where it is read. */
  readonly onBetter?: (soFar: () => Allocation) => void;
  readonly seed?: number;
  /** Placements that must stay as they are. */
  readonly keep?: readonly Placement[];
}

/**
 * When and in which window each activity is best done, with what is known of how good that is.
 *
 * Everything that can be placed is; then the objectives are met in their order, each as well as those before it
 * allow. There is always an answer, however short the time.
 * @throws {RangeError} When a placement to keep names no activity or window of the plan, or is for finished work.
 */
export function allocate(plan: Plan, options: AllocateOptions): Allocation {
  const goal = goalOf(options.first);
  const limits = limitsOf(options);
  const windows = plan.windows.filter((window) => window.status !== 'withdrawn');
  const free = problemOf(plan, { windows, activities: plan.activities }, new LedgerBook(plan));
  const kept = pin(free, options.keep ?? []);
  const problem = narrowed(kept);
  const bound = boundOf(problem, goal);
  const told = (found: Found): Allocation =>
    allocationOf(plan, kept, goal, { ...found, visits: outsideLate(problem, found.visits) });
  const onBetter = (candidate: Candidate): void =>
    options.onBetter?.(() => told({ ...candidate, bound, proven: 0 }));
  return told(search(problem, goal, bound, limits, { seed: options.seed ?? 1, onBetter }));
}

function limitsOf(options: AllocateOptions): Limits {
  const { clock, shouldStop } = options;
  return {
    clock,
    deadlineMs: clock() + (options.seconds ?? 5) * 1000,
    ...(shouldStop ? { shouldStop } : {}),
  };
}

/** An answer dressed with all that is told of it. */
function allocationOf(plan: Plan, problem: Problem, goal: Goal, found: Found): Allocation {
  const placements = placementsOf(problem, found.visits);
  const unplaced = unplacedOf(plan, problem, found.visits);
  const faults = verify(plan, placements);
  return {
    placements,
    unplaced,
    finishesAt: finishOf(problem, found.visits),
    windowsUsed: windowsIn(found.visits),
    keyDates: keyDatesOf(plan, problem, found.visits),
    certificate: certificateOf(goal, found, faults.length === 0),
    floats: floatsOf(problem, found.visits),
  };
}
