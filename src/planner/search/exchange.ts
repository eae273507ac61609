import { compareScores, latestOf, type Problem, type Score, type Visit } from '../fit/index.js';
import { createRandom, type Random } from '../random.js';
import { aimAt } from './changes.js';
import { Ejection } from './eject.js';
import { byOf } from './held.js';
import { attemptOf, recipeOf, type Attempt, type ImproveOptions } from './improve.js';
import { scoreIn, usedBy, type Candidate, type Goal } from './objectives.js';

/** What is asked of an answer: by when each task must end, at infinity whenever, which work may be left out, in how many windows. */
export interface Wanted {
  readonly by: readonly number[];
  readonly out: readonly number[];
  readonly windows: number;
}

interface Search {
  readonly random: Random;
  /** How many it takes. */
  readonly steps: number;
  readonly stop: () => boolean;
  /** The window that is emptied first; absent: none. */
  readonly emptied?: number | undefined;
}

/** Steps for one try, at the least. */
const LEAST = 25_000;

/**
 * Betters the values before the count of windows until stopped: of one date less lateness is asked, all or part of which others
 * may have, or a sooner finish, or work that was left out; or, as often, a window is emptied and its work put down anew, which
 * may come to something better by itself.
 */
export function exchanged(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  const { goal, bound, stop, seed, onBetter } = options;
  const { effort, tasks, windows } = problem;
  const random = createRandom(seed);
  const length = 2 + goal.ahead;
  const head = ({ score }: Candidate): Score => score.slice(0, length);
  let best = from;
  let current = from;
  while (head(best).some((value, i) => value > bound[i]!) && !stop()) {
    effort.spent += 1 + (tasks.length >> 3);
    const used = usedBy(current);
    const isShaken = used.length > 0 && random.below(2) === 0;
    const wanted = isShaken
      ? heldIn(problem, current, goal, windows.length)
      : wantedOf(problem, current, options, random);
    const steps = LEAST << random.below(4);
    const emptied = isShaken ? used[random.below(used.length)] : undefined;
    const visits = wanted && reached(problem, current, wanted, { random, steps, stop, emptied });
    if (!visits) continue;
    const next = settled(problem, visits, goal);
    if (compareScores(head(next), head(current)) > 0) continue;
    current = next;
    if (compareScores(next.score, best.score) >= 0) continue;
    best = next;
    onBetter?.(best);
  }
  return best;
}

/** An answer as it lies, or as it comes out again in its order where that is no worse. */
function settled(problem: Problem, visits: readonly Visit[], goal: Goal): Attempt {
  const score = scoreIn(problem, goal, visits);
  const recipe = recipeOf(problem, { visits, score });
  const again = attemptOf(problem, recipe, goal);
  return compareScores(again.score, score) <= 0 ? again : { visits, score, recipe };
}

/** Something of which one of the values before the count of windows is better and none before that worse, drawn at random. */
function wantedOf(
  problem: Problem,
  { visits, score }: Candidate,
  { goal, bound }: ImproveOptions,
  random: Random,
): Wanted | undefined {
  const { tasks, dues, windows } = problem;
  const { ends, out } = stateOf(problem, visits);
  const open = score.flatMap((value, i) => (i < 2 + goal.ahead && value > bound[i]! ? [i] : []));
  const later = open.filter((i) => i >= 2);
  const some = later.length > 0 && random.below(2) === 0 ? later : open;
  const at = some[random.below(some.length)]!;
  if (at < 2) {
    const by = tasks.map(() => Number.POSITIVE_INFINITY);
    const more = morePlaced(problem, out, at === 1, random);
    return more && { by, out: more, windows: windows.length };
  }
  if (aimAt(at, goal) === 'finish') {
    const by = byOf(problem, ends, goal);
    const last = Math.max(...ends) - 1;
    const isHeld = goal.order === 'late-finish';
    return {
      by: by.map((each) => Math.min(isHeld ? each : last, last)),
      out,
      windows: windows.length,
    };
  }
  const late = dues.map(({ tasks: own, due }) =>
    own.reduce((most, task) => Math.max(most, ends[task]! - due), 0),
  );
  const finish =
    goal.order === 'finish-late' ? Math.max(problem.finishFrom ?? 0, ...ends) : Infinity;
  const by = tasks.map(() => finish);
  const most = shared(late, random);
  dues.forEach(({ due, tasks: own }, i) => {
    for (const task of own) by[task] = Math.min(by[task]!, due + most[i]!);
  });
  return { by, out, windows: windows.length };
}

/** What may be left out, by task, so that some work that was is done; `isUnits`: of repeated work, and less of other in its place. */
function morePlaced(
  { tasks }: Problem,
  out: readonly number[],
  isUnits: boolean,
  random: Random,
): number[] | undefined {
  const left = out.flatMap((units, at) => (units > 0 && tasks[at]!.slots.length > 0 ? [at] : []));
  if (left.length === 0) return undefined;
  const one = left[random.below(left.length)]!;
  if (!isUnits) return out.with(one, 0);
  const units = 1 + random.below(out[one]!);
  const other = left[random.below(left.length)]!;
  if (one === other) return out.with(one, out[one]! - 1);
  const less = Math.min(tasks[other]!.units, out[other]! + units - 1);
  return out.with(one, out[one]! - units).with(other, less);
}

/** Minutes late by date, of which one has fewer and up to three have more, but fewer in all. */
function shared(late: readonly number[], random: Random): number[] {
  const most = late.slice();
  const some = late.flatMap((minutes, due) => (minutes > 0 ? [due] : []));
  const one = some[random.below(some.length)]!;
  const less = Math.max(1, late[one]! >> random.below(10));
  most[one]! -= less;
  let spare = less - 1;
  for (let gifts = random.below(4); gifts > 0 && spare > 0; gifts -= 1) {
    const other = random.below(late.length);
    const gift = gifts === 1 ? spare : random.below(spare + 1);
    if (other === one) continue;
    most[other]! += gift;
    spare -= gift;
  }
  return most;
}

/** Visits that are as wanted, from those of an answer, one window of which is emptied first if so asked. */
export function reached(
  problem: Problem,
  { visits }: Pick<Candidate, 'visits'>,
  { by, out, windows }: Wanted,
  { random, steps, stop, emptied }: Search,
): Visit[] | undefined {
  const { effort } = problem;
  const isWhole = (index: number): boolean => out[index] === 0;
  const isPlaced = (index: number): boolean => out[index]! < problem.tasks[index]!.units;
  const waits = problem.tasks.every(
    (task) =>
      !isPlaced(task.index) ||
      task.before.every((tie) => (tie.fromStart ? isPlaced : isWhole)(tie.task)),
  );
  if (!waits) return undefined;
  const some: Problem = {
    ...problem,
    dues: [],
    tasks: problem.tasks.map((task): typeof task => ({
      ...task,
      units: task.units - out[task.index]!,
      due: by[task.index]!,
      slots: isPlaced(task.index) ? task.slots : [],
      after: task.after.filter((tie) => isPlaced(tie.task)),
    })),
  };
  const { ends } = latestOf(some);
  const held: Problem = {
    ...some,
    tasks: some.tasks.map((task): typeof task => {
      const latestEnd = ends[task.index]!;
      return latestEnd === Infinity ? task : { ...task, latestEnd };
    }),
  };
  const ejection = new Ejection(held, visits, windows, random);
  if (!ejection.isPossible) return undefined;
  if (emptied !== undefined) ejection.clear(emptied);
  const end = effort.spent + steps;
  while (!ejection.isDone) {
    if (effort.spent >= end || stop()) return undefined;
    ejection.step();
  }
  return ejection.visits;
}

/** What an answer asks of one that is as good in the values before the count of windows, in so many windows. */
export function heldIn(
  problem: Problem,
  { visits }: Pick<Candidate, 'visits'>,
  goal: Goal,
  windows: number,
): Wanted {
  const { ends, out } = stateOf(problem, visits);
  return { by: byOf(problem, ends, goal), out, windows };
}

function stateOf({ tasks }: Problem, visits: readonly Visit[]): { ends: number[]; out: number[] } {
  const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
  const out = tasks.map((task) => task.units);
  for (const { task, end, units } of visits) {
    ends[task] = Math.max(ends[task]!, end);
    out[task]! -= units;
  }
  return { ends, out };
}

/** Looks for the same with one window less, and again, until stopped: of the windows in use now the one is emptied, now the other. */
export function inFewer(problem: Problem, from: Attempt, options: ImproveOptions): Attempt {
  const { goal, bound, stop, seed, onBetter } = options;
  const random = createRandom(seed);
  const at = 2 + goal.ahead;
  let best = from;
  let steps = 4 * LEAST;
  while (best.score[at]! > bound[at]! && !stop()) {
    problem.effort.spent += 1;
    const used = usedBy(best);
    const wanted = heldIn(problem, best, goal, used.length - 1);
    let next: Attempt | undefined;
    for (const window of used) {
      const visits = reached(problem, best, wanted, { random, steps, stop, emptied: window });
      if (visits) next = settled(problem, visits, goal);
      if (next || stop()) break;
    }
    if (!next) steps *= 2;
    else {
      best = next;
      onBetter?.(best);
    }
  }
  return best;
}
