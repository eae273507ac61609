import { MINUTE } from '../../calendar/index.js';
import type { Plan } from '../../model/index.js';
import { boundOf } from '../bounds/bounds.js';
import {
  Board,
  compareScores,
  headsOf,
  type Due,
  type Placement,
  type Problem,
  type Task,
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
import { firmly, heldTo, keptIn, splitOf, withKept, type Piece, type Split } from './pieces.js';
import { letGo, takeBack, type LetGo } from './let-go.js';
import { reasonsOf } from './move-reasons.js';

/** A piece that is no longer in the window it was in. */
export interface Moved {
  readonly activity: string;
  /** The window it was in; null for outside work. */
  readonly from: string | null;
  /** Where its work is now; empty where it finds no place. Outside work is `null`. */
  readonly to: readonly (string | null)[];
  /** Units of repeated work that were in that window. */
  readonly units?: number;
  readonly reason: string;
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

/**
 * The plan that was made before, changed as little as what is so now allows: work that can stays in its window, minutes
 * inside a window are no move, and what was not placed before finds room beside it. Only where more can be placed so, or
 * a key date kept that was agreed or is new, does other work move. What may move goes where the values are best.
 *
 * What `options.keep` names stays where it says, to the minute; where that cannot be it is left out.
 */
export function repair(plan: Plan, base: readonly Placement[], options: AllocateOptions): Repair {
  const { keep = [], ...free } = options;
  const { problem, goal } = preparedOf(plan, free);
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
  const target = withDates(split, agreed);
  let found: Freed = fewestFreed(target, forcedOf(target), weights, effort.until(0.35));
  if (!found.visits) {
    const gone = letGo(target, forcedOf(target), weights, effort.until(0.3));
    if (gone)
      found = { ...shrunk(target, gone, weights, effort.until(0.4)), atLeast: found.atLeast };
  }
  if (!found.visits) {
    // It cannot all be kept to, as far as is known: then to what a plan comes to that moves what it likes.
    const free = freely(agreed, 0.4);
    const near = within(reached(split, free, agreed), free, weights, effort.until(0.6));
    // Another plan as good may leave out or delay other work: only what has no place by itself is sure to move.
    found = { ...near, atLeast: forcedOf(withDates(split, agreed.map(never))).length };
  }

  const dues = split.problem.dues.map(({ due }) => due);
  const held = narrowed(heldTo(split, found.freed));
  const bound = boundOf(held, goal);
  let best = candidateOf(split.problem, goal, found.visits!);
  // Nothing is moved about inside a window but to place more or to be less late.
  if (compareScores(best.score.slice(0, 3), bound.slice(0, 3)) > 0) {
    const { limit } = effort;
    effort.limit = effort.spent + 0.4 * (limit - effort.spent);
    best = search(held, goal, bound, { ...quiet, from: best });
    effort.limit = limit;
  }
  const gone = movedBy(split, best.visits);
  const more = moreBy(split, best, freely(dues, 0.6, best), (free) =>
    within(reached(split, free, dues), free, weights, effort.until(0.9)),
  );
  const visits = best.visits.map((visit) => ({ ...visit, task: split.whole[visit.task]! }));
  const isKept = ({ task, start }: Visit): boolean =>
    keep.some(
      (one) =>
        one.activity === problem.tasks[task]!.activity.id &&
        one.from === problem.base + start * MINUTE,
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
  const unplaced = allocation.unplaced.map((one) => {
    const own = keep.find(({ activity }) => activity === one.activity);
    if (!own) return one;
    const text = `is kept ${own.window === null ? 'where it is' : `in ${own.window}`} and cannot stay`;
    return { ...one, reasons: [{ code: 'kept-in-place', text }] };
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
    fewest: { moved: moved.length, lowerBound, proven: lowerBound === moved.length && split.exact },
    more,
  };
}

/** The fewest pieces freed for what another plan reaches; that plan where no better is found. */
function within(
  target: Split,
  free: Candidate,
  weights: readonly number[],
  stop: () => boolean,
): Freed {
  const found = fewestFreed(target, forcedOf(target), weights, stop);
  if (!found.visits) {
    const { atLeast } = found;
    const loose = { freed: movedBy(target, free.visits), visits: free.visits };
    const isWhole = target.problem.tasks.every((task) => task.slots !== anywhere);
    return { ...(isWhole ? shrunk(target, loose, weights, stop) : loose), atLeast };
  }
  // What had no place is no visit.
  const real = found.visits.filter(({ task }) => target.problem.tasks[task]!.slots !== anywhere);
  return { ...found, visits: real };
}

/** A plan with what need not move put back, as far as is found. */
function shrunk(
  target: Split,
  from: LetGo,
  weights: readonly number[],
  stop: () => boolean,
): LetGo {
  return takeBack(target, from, weights, (visits) => movedBy(target, visits), stop);
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
    placed: best.score[0]! - free.score[0]!,
    moved: movedBy(split, visits).size,
  };
}

function isMet({ tasks }: Problem, { due, tasks: own }: Due, visits: readonly Visit[]): boolean {
  return own.every((index) => {
    const mine = visits.filter((visit) => visit.task === index);
    const units = mine.reduce((sum, visit) => sum + visit.units, 0);
    return units === tasks[index]!.units && mine.every((visit) => visit.end <= due);
  });
}

/** A list that places the work in the order in which it was, new work by its date. */
function weightsOf({ problem, pieces }: Split): number[] {
  const weights = problem.tasks.map((task) => Math.min(1e9, task.due));
  for (const { task, placement } of pieces)
    weights[task] = (placement.from - problem.base) / 60_000;
  return weights;
}

/** The date of each due that the plan before kept, or by as much as it was late; its own where it is new. */
function agreedDates({ problem, pieces }: Split): number[] {
  const ends = new Map<number, number>();
  for (const { task, placement } of pieces) ends.set(task, (placement.to - problem.base) / 60_000);
  return problem.dues.map(({ due, tasks }) =>
    tasks.reduce((last, task) => Math.max(last, ends.get(task) ?? due), due),
  );
}

function redated(problem: Problem, dates: readonly number[]): Problem {
  return { ...problem, dues: problem.dues.map((due, i) => ({ ...due, due: dates[i]! })) };
}

/** The split with each task held to the earliest of the dates it must keep. */
function withDates(split: Split, dates: readonly number[]): Split {
  const { problem } = split;
  const by = problem.tasks.map(() => Number.POSITIVE_INFINITY);
  problem.dues.forEach(({ tasks }, i) => {
    for (const task of tasks) by[task] = Math.min(by[task]!, dates[i]!);
  });
  return {
    ...split,
    problem: { ...problem, tasks: problem.tasks.map((task, i) => ({ ...task, due: by[i]! })) },
  };
}

/** Pieces that cannot stay in their window even by themselves. */
function forcedOf({ problem, pieces }: Split): number[] {
  const board = new Board(problem);
  const { starts } = headsOf(board);
  const settled = new Set(problem.pinned?.map((visit) => visit.task));
  return pieces.flatMap(({ task: index, window }, at) => {
    if (window === -1 || settled.has(index)) return [];
    const task = problem.tasks[index]!;
    const from = Math.max(task.earliest, starts[index]!);
    const visit =
      window === undefined || !Number.isFinite(starts[index]!)
        ? undefined
        : board.find(task, task.units, from, window);
    return visit && visit.end <= task.due ? [] : [at];
  });
}

/** Pieces of which less is in their window than was. */
export function movedBy({ pieces, whole }: Split, visits: readonly Visit[]): Set<number> {
  const units = new Map<string, number>();
  const key = (task: number, window: number): string => `${task} ${window}`;
  for (const { task, window, units: some } of visits) {
    const at = key(whole[task]!, window);
    units.set(at, (units.get(at) ?? 0) + some);
  }
  const gone = new Set<number>();
  pieces.forEach(({ task, window, placement }, at) => {
    const where = window === undefined ? '' : key(whole[task]!, window);
    const there = units.get(where) ?? 0;
    const wanted = placement.units ?? 1;
    if (there < wanted) gone.add(at);
    units.set(where, Math.max(0, there - wanted));
  });
  return gone;
}

/** What a plan leaves unplaced need not be placed, and how late it is may be so late. */
function reached(split: Split, free: Candidate, atLeast: readonly number[]): Split {
  const { problem } = split;
  const left = problem.tasks.map((task) => task.units);
  const ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of free.visits) {
    left[visit.task]! -= visit.units;
    ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  }
  const dates = problem.dues.map(({ tasks }, i) =>
    tasks.reduce((last, task) => Math.max(last, ends[task]!), atLeast[i]!),
  );
  const isLost = (index: number): boolean => left[index]! > 0;
  const some = withDates(split, dates);
  if (!left.some((units) => units > 0)) return some;
  const blocks = problem.blocks?.map((block) =>
    [...block.members, ...block.runners].some(isLost) ? { members: [], runners: [] } : block,
  );
  return {
    ...some,
    pieces: some.pieces.map((piece): Piece =>
      isLost(piece.task) ? { ...piece, window: undefined } : piece,
    ),
    problem: {
      ...some.problem,
      ...(blocks && { blocks, clusters: [] }),
      // What is lost takes no time and no plant, so that it is in nobody's way.
      tasks: some.problem.tasks.map((task): Task => {
        if (!isLost(task.index)) return task;
        const { block: _, lastOnly: __, ...free } = task;
        return {
          ...free,
          ...{ perUnit: 0, setUp: 0, makeSafe: 0, demands: [], slots: anywhere },
          ...{ due: Number.POSITIVE_INFINITY, before: [], earliest: Number.NEGATIVE_INFINITY },
        };
      }),
    },
  };
}

const never = (): number => Number.POSITIVE_INFINITY;

const anywhere = [{ window: -1, start: -1e9, end: 1e9 }];

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
  const now = placements.filter((one) => one.activity === placement.activity);
  const others = now.map((one) => one.window).filter((window) => window !== placement.window);
  return {
    activity: placement.activity,
    from: placement.window,
    to: [...new Set(others)],
    ...(placement.units !== undefined && { units: placement.units }),
  };
}
