import {
  compareScores,
  LedgerCache,
  placementsOf,
  problemOf,
  type Placement,
  type Problem,
  type Score,
} from '../fit/index.js';
import { byTime, type Note, type Plan, type Worded } from '../../model/index.js';
import { sayOfPlan } from '../plan-sentences.js';
import { canonicalOf } from '../problem/canonical.js';
import { Effort } from '../problem/effort.js';
import { boundOf } from '../bounds/bounds.js';
import { certificateOf } from './certificate.js';
import { searchApart } from './apart.js';
import { finishOf } from './finish.js';
import { floatsOf } from '../floats/floats.js';
import { keyDatesOf } from '../floats/key-dates.js';
import { Pusher } from '../floats/slip.js';
import { narrowed } from '../problem/narrow.js';
import { goalOf, windowsIn, type Candidate, type Goal } from './objectives.js';
import { outsideLate } from './outside-late.js';
import { pin } from './pins.js';
import type { Found, SearchOptions } from './search.js';
import type { Allocation, Objective } from './types.js';
import { leftOpenNotes, unstatedIn } from '../unstated.js';
import { unplacedOf } from './unplaced.js';
import { breachesOf } from '../repair/breaches.js';

export interface AllocateOptions {
  /** The objective that comes first; the others follow in their usual order. */
  readonly first?: Objective;
  /**
   * Times the usual work; 1 without. The search ends sooner only when all is proven.
   */
  readonly effort?: number;
  /**
   * How long it may take. More than the usual work takes gives it more; where they are over before it is done, the answer
   * hangs on the machine, and says so.
   */
  readonly seconds?: number;
  /** Milliseconds from any fixed moment; only `seconds` needs it. */
  readonly clock: () => number;
  /** Told the part of the work that is done, 0 to 1; `true` cuts the search short. */
  readonly shouldStop?: (done: number) => boolean;
  /** Hears of every better answer on the way; the answer is made up only where it is read. */
  readonly onBetter?: (soFar: () => Allocation) => void;
  /**
   * What the caller will do with the answer. Where `seconds` are given it is done once on the way, so that it is known how
   * long that takes, and all is over in time.
   */
  readonly rehearse?: (answer: Allocation) => void;
  readonly seed?: number;
  /** Placements that must stay as they are. */
  readonly keep?: readonly Placement[];
}

/**
 * When and in which window each activity is best done, with what is known of how good that is.
 *
 * Everything that can be placed is; then the objectives are met in their order, each as well as those before it
 * allow. There is always an answer, however short the time. The same plan gives the same answer on every machine, in
 * whatever order its rows stand, unless it is cut short.
 * @throws {RangeError} When a placement to keep names no activity or window of the plan, or is for finished work.
 */
export function allocate(plan: Plan, options: AllocateOptions): Allocation {
  const { free, problem: kept, goal, usual } = preparedOf(plan, options);
  const problem = narrowed(kept);
  const bound = boundOf(problem, goal);
  // What is best with some work held in place is not best: nothing is proven but what no plan at all beats.
  const whole = kept === free ? undefined : boundOf(free, goal);
  const answerFor = (found: Found): Allocation =>
    allocationOf(
      plan,
      kept,
      goal,
      {
        ...found,
        visits: outsideLate(problem, found.visits),
        ...(whole && { bound: whole, proven: 0 }),
      },
      options.keep !== undefined,
      free,
    );
  let last: Candidate | undefined;
  const onBetter = (candidate: Candidate): void => {
    last = candidate;
    options.onBetter?.(() => answerFor({ ...candidate, bound, proven: 0 }));
  };
  problem.effort.keepTimeFor(() => {
    if (!last) return false;
    const answer = answerFor({ ...last, bound, proven: 0 });
    options.rehearse?.(answer);
    return true;
  });
  return answerFor(inRounds(problem, goal, bound, usual, { seed: options.seed ?? 1, onBetter }));
}

/**
 * The usual search, and where there are steps for more another from what was found, of twice the steps, and so on: more steps
 * never come to less.
 */
function inRounds(
  problem: Problem,
  goal: Goal,
  known: Score,
  usual: number,
  { seed, onBetter }: Pick<SearchOptions, 'seed' | 'onBetter'>,
): Found {
  const { effort } = problem;
  const { limit } = effort;
  let found: Found | undefined;
  for (let round = 0, steps = usual; ; round += 1, steps *= 2) {
    const before = found;
    effort.limit = Math.min(limit, effort.spent + steps);
    const next = searchApart(problem, goal, before?.bound ?? known, {
      seed: seed + 1000 * round,
      onBetter: (better) => {
        if (!before || compareScores(better.score, before.score) < 0) onBetter(better);
      },
      ...(before && { from: before }),
    });
    effort.limit = limit;
    found = before && compareScores(next.score, before.score) > 0 ? before : next;
    if (isProven(found) || effort.isSpent || effort.isCut()) return found;
  }
}

const isProven = ({ score, bound, proven }: Found): boolean =>
  proven === score.length || compareScores(score, bound) <= 0;

export interface Prepared {
  /** Without what is kept. */
  readonly free: Problem;
  /** With what is kept in place; its effort has its limit. */
  readonly problem: Problem;
  readonly goal: Goal;
  /** Steps of the usual work. */
  readonly usual: number;
}

/** What a search sets out from. */
export function preparedOf(plan: Plan, options: AllocateOptions): Prepared {
  const effort = effortOf(options);
  const ordered = canonicalOf(plan);
  const windows = ordered.windows.filter((window) => window.status !== 'withdrawn');
  const { activities } = ordered;
  const free = problemOf(ordered, { windows, activities, effort }, new LedgerCache(ordered));
  const problem = pin(free, options.keep ?? []);
  const usual = stepsFor(problem) * (options.effort ?? 1);
  effort.limit = effort.spent + Math.max(usual, STEPS_A_SECOND * (options.seconds ?? 0));
  return { free, problem, goal: goalOf(options.first), usual };
}

function effortOf({ clock, seconds, shouldStop }: AllocateOptions): Effort {
  return new Effort({
    clock,
    ...(seconds !== undefined && { milliseconds: seconds * 1000 }),
    ...(shouldStop && { shouldStop }),
  });
}

/** Steps for each second that is given: somewhat fewer than a machine of 2026 does, so that most get to their end and agree. */
const STEPS_A_SECOND = 2_000_000;

/** Usual steps of a search: some for all plans, and more the more there is to place, up to a point. */
function stepsFor({ tasks }: Problem): number {
  return Math.min(60_000_000, 10_000_000 + 40_000 * tasks.length);
}

const cutShortNote: Note = {
  code: 'seconds-cut-short',
  ...sayOfPlan('search-cut-short', {}),
};

/**
 * An answer dressed with all that is told of it.
 *
 * @param free The problem with nothing kept in place: what is kept has float as everything else has.
 */
export function allocationOf(
  plan: Plan,
  problem: Problem,
  goal: Goal,
  found: Found,
  keeps: boolean,
  free: Problem = problem,
): Allocation {
  const placements = placementsOf(problem, found.visits).sort(byTime);
  const unplaced = inOrderOf(plan, unplacedOf(plan, problem, found.visits));
  // What was to be kept may be at odds with the plan as it is now; what is placed anew never is.
  const holds = !keeps || breachesOf(plan, placements).length === 0;
  const pusher = new Pusher(free, found.visits);
  return {
    placements,
    unplaced,
    finishesAt: finishOf(problem, found.visits),
    windowsUsed: windowsIn(found.visits),
    keyDates: keyDatesOf(plan, free, found.visits, pusher),
    certificate: certificateOf(
      goal,
      found,
      { cutShort: problem.effort.cutShort, holds },
      nothingOf(problem, found),
    ),
    floats: inOrderOf(plan, floatsOf(free, found.visits, pusher)),
    unstated: unstatedIn(plan, placements),
    notes: [...(problem.effort.cutShort ? [cutShortNote] : []), ...leftOpenNotes(plan, placements)],
  };
}

/** In words, that there is nothing of which anything could be proven. */
function nothingOf({ tasks, effort }: Problem, { visits }: Found): Worded | undefined {
  if (tasks.length === 0) return sayOfPlan('nothing-to-plan', {});
  if (visits.length > 0) return undefined;
  return sayOfPlan(effort.endedTooSoon ? 'nothing-placed-stopped' : 'nothing-placed', {});
}

/** In the order of the plan's rows: the search has one of its own. */
function inOrderOf<T extends { readonly activity: string }>(plan: Plan, list: readonly T[]): T[] {
  const place = new Map(plan.activities.map(({ id }, at) => [id, at]));
  return list.toSorted((a, b) => place.get(a.activity)! - place.get(b.activity)!);
}
