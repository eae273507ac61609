import { MINUTE } from '../../calendar/index.js';
import type { Plan, Worded } from '../../model/index.js';
import { boundOf } from '../bounds/bounds.js';
import {
  Board,
  compareScores,
  type Due,
  type Placement,
  type Problem,
  type Visit,
} from '../fit/index.js';
import { narrowed } from '../problem/narrow.js';
import { allocationOf, preparedOf, type AllocateOptions } from '../search/allocate.js';
import { fullScoreOf, type Candidate, type Goal } from '../search/objectives.js';
import { outsideLate } from '../search/outside-late.js';
import { search } from '../search/search.js';
import type { Allocation } from '../search/types.js';
import { breachesOf } from './breaches.js';
import { fewestFreed, type Freed } from './fewest-freed.js';
import { firmly, heldTo, keptIn, splitOf, wholeVisits, withKept, type Split } from './pieces.js';
import { fewerMoves, valuer, type Values } from './fewer-moves.js';
import {
  agreedDates,
  anywhere,
  datesReached,
  forcedOf,
  hopelessIn,
  movedBy,
  reached,
  redated,
  weightsOf,
  withDates,
  without,
} from './target.js';
import { reasonsOf } from './move-reasons.js';
import { sayUnplaced } from '../search/unplaced-sentences.js';

/** A piece that is no longer in the window it was in. */
export interface Moved {
  readonly activity: string;
  /** The window it was in; null for outside work. */
  readonly from: string | null;
  /** Where its work is now; empty where it finds no place. Outside work is `null`. */
  readonly to: readonly (string | null)[];
  /** Units of repeated work that were in that window. */
  readonly units?: number;
  readonly reason: Worded;
}

export interface Repair {
  readonly allocation: Allocation;
  /** In the order of the plan that was mended. Minutes inside a window are no move. */
  readonly moved: readonly Moved[];
  /**
   * How many pieces leave their window, and how many have to at the least for as much to be placed and key dates to be
   * kept as well as was agreed, or as well as can be. `proven`: no fewer do.
   */
  readonly fewest: {
    readonly moved: number;
    readonly lowerBound: number;
    readonly proven: boolean;
  };
  /** What a plan gains that moves more; null where none was found that gains by it. */
  readonly more: More | null;
}

/** A plan that moves more pieces than it must. Key dates and pieces beyond those of the plan that moves fewest. */
export interface More {
  readonly keyDatesMet: number;
  readonly placed: number;
  /** Pieces that leave their windows, all together: the fewest found. */
  readonly moved: number;
}

/** Steps of a repair, as part of the usual ones of a search: it looks for the least that moves, and for what more would gain. */
const REPAIR_EFFORT = 1.6;

/**
 * The plan that was made before, changed as little as what is so now allows: work that can stays in its window, minutes
 * inside a window are no move, and what was not placed before finds room beside it. Only where more can be placed so, or
 * a key date kept that was agreed or is new, does other work move. What may move goes where the values are best.
 *
 * What `options.keep` names stays where it says, to the minute; where that cannot be it is left out.
 */
export function repair(plan: Plan, base: readonly Placement[], options: AllocateOptions): Repair {
  const { keep = [], ...free } = options;
  const { problem, goal } = preparedOf(plan, {
    ...free,
    effort: REPAIR_EFFORT * (options.effort ?? 1),
  });
  const { effort } = problem;
  const kept = new Set(keep);
  const loose = keptIn(splitOf(problem, withKept(base, keep)), kept);
  // What holds together is put down before all else, so that nothing else takes its place.
  const split = breachesOf(plan, keep).length === 0 ? firmly(loose, kept) : loose;
  const weights = weightsOf(split);
  const seed = options.seed ?? 1;
  const quiet = { seed, onBetter: () => undefined };
  const freely = (dates: readonly number[], share: number, from?: Candidate): Candidate => {
    const all = redated(split.problem, dates);
    const { limit } = effort;
    effort.limit = effort.spent + share * (limit - effort.spent);
    const found = search(narrowed(all), goal, boundOf(all, goal), {
      ...quiet,
      ...(from && { from }),
    });
    effort.limit = limit;
    return found;
  };

  const agreed = agreedDates(split);
  const inTime = { problem, split, dates: agreed, weights };
  // Beside what is kept, work may stay open that nothing else would leave so.
  const lost = split.problem.pinned?.length ? new Set<number>() : hopelessIn(split);
  const least = leastWithout(split, lost);
  let found: Freed = { freed: new Set(), atLeast: 0 };
  const [out, , late] = leastOf(inTime, goal);
  if (late === 0 && out <= least[0]) {
    const target = without(split, lost, agreed);
    found = placed(target, fewestFreed(target, forcedOf(target), weights, effort.until(0.15)));
    const near = withDates(split, agreed);
    found = fewer(inTime, near, found, [...least, 0, found.atLeast], effort.until(0.5));
  }
  if (!isInTime(inTime, found.visits, least)) {
    // It cannot all be kept to, as far as is known: then to what a plan comes to that moves what it likes.
    const free = bestOf(inTime, found.visits, freely(agreed, 0.4).visits);
    found = within(inTime, goal, free, (share) => effort.until(share));
  }

  const dues = split.problem.dues.map(({ due }) => due);
  const valuesOf = valuer(split, dues);
  const held = narrowed(heldTo(split, found.freed));
  const bound = boundOf(held, goal);
  let best = candidateOf(split.problem, goal, found.visits!);
  // Nothing is moved about inside a window but to place more or to be less late.
  if (compareScores(best.score.slice(0, 3), bound.slice(0, 3)) > 0) {
    const { limit } = effort;
    effort.limit = effort.spent + 0.4 * (limit - effort.spent);
    const tried = search(held, goal, bound, { ...quiet, from: best });
    effort.limit = limit;
    // An earlier finish is no reason to leave out what has its place.
    if (compareScores(valuesOf(tried.visits), valuesOf(best.visits)) <= 0) best = tried;
  }
  const own = { problem, split, dates: dues, weights };
  const [leastOut, leastUnits, leastLate] = leastOf(own, goal);
  const values = valuesOf(best.visits);
  // Where no plan is better, nothing is looked for.
  const isBest =
    compareScores(values.slice(0, 3), [leastOut, leastUnits, leastLate]) <= 0 &&
    goal.order === 'late-finish' &&
    goal.ahead > 0;
  // Then the steps that are left go into moving fewer.
  if (isBest && values[3] > found.atLeast) {
    const known = { ...found, visits: best.visits };
    const least = [leastOut, leastUnits, leastLate, found.atLeast] as const;
    const near = withDates(split, datesReached(split, best.visits, dues));
    const { visits } = fewer(own, near, known, least, effort.until(0.9));
    best = candidateOf(split.problem, goal, visits!);
  }
  const gone = movedBy(split, best.visits);
  const more = isBest
    ? null
    : moreBy(split, best, freely(dues, 0.6, best), ({ visits: free }) =>
        within(own, goal, free, (share) => effort.until(share)),
      );
  const visits = wholeVisits(split, best.visits);
  const isKept = ({ task, start }: Visit): boolean =>
    keep.some(
      (placement) =>
        placement.activity === problem.tasks[task]!.activity.id &&
        placement.from === problem.base + start * MINUTE,
    );
  const allocation = allocationOf(
    plan,
    problem,
    goal,
    {
      visits: outsideLate({ ...problem, pinned: visits.filter(isKept) }, visits),
      score: best.score,
      bound: boundOf(problem, goal),
      proven: 0,
    },
    true,
  );
  const unplaced = allocation.unplaced.map((item) => {
    const own = keep.find(({ activity }) => activity === item.activity);
    if (!own) return item;
    const words = sayUnplaced('kept-in-place', { window: own.window });
    return { ...item, reasons: [{ code: 'kept-in-place', ...words }] };
  });
  const reasons = reasonsOf(plan, split, gone);
  const moved = [...gone].map((piece): Moved => ({
    ...movedOf(split, piece, allocation.placements),
    reason: reasons.get(piece)!,
  }));
  const lowerBound = Math.min(found.atLeast, moved.length);
  return {
    allocation: { ...allocation, unplaced },
    moved,
    fewest: { moved: moved.length, lowerBound, proven: lowerBound === moved.length },
    more,
  };
}

/** What a repair is to keep to. */
interface Asked {
  /** With repeated work as one. */
  readonly problem: Problem;
  readonly split: Split;
  /** The date of each due. */
  readonly dates: readonly number[];
  /** In which order work is tried first. */
  readonly weights: readonly number[];
}

/** Work and units of it that are left out at the least. */
function leastWithout({ problem, whole }: Split, lost: ReadonlySet<number>): [number, number] {
  const tasks = new Set([...lost].map((index) => whole[index]!));
  return [tasks.size, [...lost].reduce((sum, index) => sum + problem.tasks[index]!.units, 0)];
}

/** Without the visits of what had no place. */
function placed({ problem }: Split, { visits, ...found }: Freed): Freed {
  const real = visits?.filter(({ task }) => problem.tasks[task]!.slots !== anywhere);
  return { ...found, ...(real && { visits: real }) };
}

/** Whether everything is placed that has a place, and no date is missed. */
function isInTime({ split, dates }: Asked, visits: Known, [out, units]: [number, number]): boolean {
  if (visits === undefined) return false;
  const values = valuer(split, dates)(visits).slice(0, 3);
  return compareScores(values, [out, units, 0]) <= 0;
}

function bestOf({ split, dates }: Asked, item: Known, other: readonly Visit[]): readonly Visit[] {
  const valuesOf = valuer(split, dates);
  return item && compareScores(valuesOf(item), valuesOf(other)) <= 0 ? item : other;
}

type Known = readonly Visit[] | undefined;

/**
 * A plan that leaves out no more than another and is no later, and moves as few pieces as was found. Another plan as good may
 * leave out or delay other work: only what has no place by itself is sure to move.
 */
function within(
  asked: Asked,
  goal: Goal,
  known: readonly Visit[],
  until: (share: number) => () => boolean,
): Freed {
  const { split, dates, weights } = asked;
  const target = reached(split, known, dates);
  const found = placed(target, fewestFreed(target, forcedOf(target), weights, until(0.5)));
  const visits = bestOf(asked, found.visits, known);
  const least = leastOf(asked, goal);
  const near = withDates(split, datesReached(split, visits, dates));
  const start = { freed: movedBy(split, visits), visits, atLeast: least[3] };
  return fewer(asked, near, start, least, until(0.6));
}

/** What no plan is better than: work left out, units of it, minutes late, pieces that leave their windows. */
function leastOf({ problem, split, dates }: Asked, goal: Goal): Values {
  const bound = boundOf(redated(problem, dates), goal);
  const late = goal.order === 'late-finish' && goal.ahead > 0 ? bound[2]! : 0;
  return [bound[0]!, bound[1]!, late, forcedOf(withDates(split, dates.map(never))).length];
}

/**
 * What is found that leaves out less, is less late or moves fewer pieces, where that may be.
 *
 * @param target Each task with the date by which it looks for room in its own window.
 */
function fewer(
  { split, dates, weights }: Asked,
  target: Split,
  known: Freed,
  bound: Values,
  stop: () => boolean,
): Freed {
  const { visits: from, atLeast } = known;
  if (from && compareScores(valuer(split, dates)(from), bound) <= 0) return known;
  const visits = fewerMoves(target, {
    ...(from && { from }),
    ...{ weights, dates, atLeast: bound, stop },
  });
  return visits ? { freed: movedBy(split, visits), visits, atLeast } : known;
}

/** What a plan that moves more gains over one that moves little; null where it gains nothing. */
function moreBy(
  split: Split,
  best: Candidate,
  free: Candidate,
  fewest: (free: Candidate) => Freed,
): More | null {
  const before = split.problem.dues.map((due) => isMet(split.problem, due, best.visits));
  if (compareScores(free.score.slice(0, 3), best.score.slice(0, 3)) >= 0) return null;
  const { visits = [] } = fewest(free);
  const after = split.problem.dues.map((due) => isMet(split.problem, due, visits));
  const count = (all: readonly boolean[]): number => all.filter(Boolean).length;
  return {
    keyDatesMet: count(after) - count(before),
    placed: leftOut(split, best.visits) - leftOut(split, visits),
    moved: movedBy(split, visits).size,
  };
}

/** How much work is not all placed. */
function leftOut(split: Split, visits: readonly Visit[]): number {
  const left = split.problem.tasks.map((task) => task.units);
  for (const { task, units } of visits) left[task]! -= units;
  return new Set(split.whole.filter((_, index) => left[index]! > 0)).size;
}

function isMet({ tasks }: Problem, { due, tasks: own }: Due, visits: readonly Visit[]): boolean {
  return own.every((index) => {
    const mine = visits.filter((visit) => visit.task === index);
    const units = mine.reduce((sum, visit) => sum + visit.units, 0);
    return units === tasks[index]!.units && mine.every((visit) => visit.end <= due);
  });
}

const never = (): number => Number.POSITIVE_INFINITY;

function candidateOf(problem: Problem, goal: Goal, visits: readonly Visit[]): Candidate {
  const board = new Board(problem);
  const settled = new Set(problem.pinned);
  for (const visit of visits) if (!settled.has(visit)) board.put(visit);
  return { visits, score: fullScoreOf(board, goal) };
}

function movedOf(
  { pieces }: Split,
  at: number,
  placements: readonly Placement[],
): Omit<Moved, 'reason'> {
  const { placement } = pieces[at]!;
  const now = placements.filter((item) => item.activity === placement.activity);
  const others = now.map((item) => item.window).filter((window) => window !== placement.window);
  return {
    activity: placement.activity,
    from: placement.window,
    to: [...new Set(others)],
    ...(placement.units !== undefined && { units: placement.units }),
  };
}
