import { addMinutes } from '../calendar/index.js';
import {
  compareScores,
  LedgerBook,
  placementsOf,
  problemOf,
  type Placement,
  type Problem,
  type Score,
  type Visit,
} from '../fit/index.js';
import type { Plan } from '../model/index.js';
import { boundOf } from './bounds.js';
import { certificateOf } from './certificate.js';
import { exhaust } from './exhaust.js';
import { floatsOf } from './floats.js';
import { construct, dropWindows, improve } from './improve.js';
import { keyDatesOf } from './key-dates.js';
import { goalOf, windowsIn, withWindows, type Candidate, type Goal } from './objectives.js';
import { outsideLate } from './outside-late.js';
import { pin } from './pins.js';
import { solveSpecial, type Limits, type Special } from './structure.js';
import type { Allocation, Objective } from './types.js';
import { unplacedOf } from './unplaced.js';
import { verify } from './verify.js';

export interface AllocateOptions {
  /** The objective that comes first; the others follow in their usual order. */
  readonly first?: Objective;
  /** How long the search may take; 5 without. It ends sooner when all is proven. */
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

/** Up to so many tasks every schedule is looked at, time allowing. */
const EXACT_TASKS = 12;

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
  const problem = pin(free, options.keep ?? []);
  const bound = boundOf(problem, goal);
  const told = (found: Found): Allocation =>
    allocationOf(plan, problem, goal, { ...found, visits: outsideLate(problem, found.visits) });
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

/** An answer with what is known of it. */
interface Found extends Candidate {
  readonly bound: Score;
  /** How many leading values of the score are proven best by having looked at everything. */
  readonly proven: number;
}

function search(
  problem: Problem,
  goal: Goal,
  bound: Score,
  limits: Limits,
  { seed, onBetter }: { readonly seed: number; readonly onBetter: (better: Candidate) => void },
): Found {
  if (problem.tasks.length === 0) return { visits: [], score: bound, bound, proven: 5 };
  const special = solveSpecial(problem, goal, limits, seed);
  if (special) return specialFound(goal, bound, special);

  const until = (share: number) => {
    const deadline = limits.clock() + share * (limits.deadlineMs - limits.clock());
    return () => limits.clock() >= deadline || limits.shouldStop?.() === true;
  };
  const settings = { goal, bound, seed, onBetter };
  const built = construct(problem, { ...settings, stop: () => false });
  const slim = dropWindows(problem, built, { ...settings, stop: until(0.3) });
  onBetter(slim);
  if (compareScores(slim.score, bound) <= 0) return { ...slim, bound, proven: 0 };
  if (problem.tasks.length > EXACT_TASKS)
    return { ...improve(problem, slim, { ...settings, stop: until(1) }), bound, proven: 0 };

  let turns = 0;
  const warm = improve(problem, slim, { ...settings, stop: () => (turns += 1) > 60 });
  const all = exhaust(problem, warm, { goal, bound, stop: until(0.7) });
  if (all.proven === 5) return { ...all, bound };
  const more = improve(problem, slim, { ...settings, stop: until(1) });
  return compareScores(more.score, all.score) < 0
    ? { ...more, bound, proven: 0 }
    : { ...all, bound };
}

function specialFound(goal: Goal, bound: Score, special: Special): Found {
  const { visits } = special;
  const finish = visits.reduce((last, visit) => Math.max(last, visit.end), 0);
  const inner = goal.order === 'late-finish' ? [0, 0, 0, finish] : [0, 0, finish, 0];
  const at = 2 + goal.ahead;
  const finishAt = 2 + goal.objectives.filter((each) => each !== 'margins').indexOf('finish');
  const raised = bound.map((value, i) =>
    Math.max(
      value,
      i === at ? (special.fewestWindows ?? 0) : i === finishAt ? (special.finish ?? 0) : 0,
    ),
  );
  return {
    visits,
    score: withWindows(inner, windowsIn(visits), goal),
    bound: raised,
    proven: 0,
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

function finishOf(problem: Problem, visits: readonly Visit[]): number | null {
  if (visits.length === 0) return null;
  return addMinutes(problem.base, Math.max(...visits.map((visit) => visit.end)));
}
