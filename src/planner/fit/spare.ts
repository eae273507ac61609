import { totalMinutes } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import { Board } from '../problem/board.js';
import { headsOf } from '../problem/heads.js';
import type { LedgerCache } from '../problem/ledger-cache.js';
import type { Problem, Slot, Visit } from '../problem/problem.js';
import { isProvablyInfeasible } from './infeasible.js';
import { scheduleAlone } from './schedule-alone.js';

/** Searches that may end without a yes or a proven no before the best found is told with a bound. */
const OPEN = 2;

export interface Spare {
  readonly minutes: number;
  /** No way of placing the work leaves more. Equal to `minutes` where these are proven the most. */
  readonly atMost: number;
  /** A way that leaves so many. */
  readonly visits: readonly Visit[];
}

/**
 * The most usable minutes that can be left: of each inside activity those after its last finish, in the time that is
 * usable for it, and of all activities the fewest. None of them can then run over by more.
 *
 * That so many are left is a latest finish for each activity, so that whether it can be is the question whether the
 * work fits. It is asked between the best found and what a bound allows.
 *
 * @param known A way that fits.
 */
export function spareOf(
  problem: Problem,
  known: readonly Visit[],
  window: AccessWindow,
  book: LedgerCache,
): Spare {
  if (problem.tasks.every((task) => task.outside)) {
    const minutes = totalMinutes(book.of(window, { isolation: [], loud: false }).usable);
    return { minutes, atMost: minutes, visits: known };
  }
  let visits = known;
  let best = leftBy(problem, lastEnds(problem, known));
  let atMost = leftBy(problem, headsOf(new Board(problem)).ends);
  if (best < atMost) atMost = boundBetween(problem, best, atMost);
  let open = 0;
  // The bound first: mostly it can be had.
  for (let high = atMost, ask = high; best < high && open < OPEN;) {
    const answer = scheduleAlone(leaving(problem, ask));
    if (answer.done) {
      ({ visits } = answer);
      best = leftBy(problem, lastEnds(problem, visits));
    } else {
      high = ask - 1;
      if (answer.proven) atMost = high;
      else open += 1;
    }
    ask = Math.ceil((best + high) / 2);
  }
  return { minutes: best, atMost, visits };
}

/** The most, between two amounts, that is not refuted without a search. */
function boundBetween(problem: Problem, low: number, high: number): number {
  let [fewest, most] = [low, high];
  while (fewest < most) {
    const middle = Math.ceil((fewest + most) / 2);
    if (isProvablyInfeasible(new Board(leaving(problem, middle)))) most = middle - 1;
    else fewest = middle;
  }
  return fewest;
}

function lastEnds({ tasks }: Problem, visits: readonly Visit[]): number[] {
  const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of visits) ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  return ends;
}

/** The fewest usable minutes after the finish of any inside task. */
function leftBy({ tasks }: Problem, ends: readonly number[]): number {
  let fewest = Number.POSITIVE_INFINITY;
  for (const task of tasks) {
    if (task.outside) continue;
    let left = 0;
    for (const slot of task.slots)
      left += Math.max(0, slot.end - Math.max(slot.start, ends[task.index]!));
    fewest = Math.min(fewest, left);
  }
  return fewest;
}

/** The problem in which every inside task must leave so many usable minutes after it. */
function leaving(problem: Problem, minutes: number): Problem {
  const limits = new Map<readonly Slot[], number>();
  const tasks = problem.tasks.map((task) => {
    if (task.outside) return task;
    let by = limits.get(task.slots);
    if (by === undefined) limits.set(task.slots, (by = latestLeaving(task.slots, minutes)));
    return { ...task, due: Math.min(task.due, by) };
  });
  const dues = tasks.flatMap(({ index, due, activity }) =>
    due === Number.POSITIVE_INFINITY ? [] : [{ package: activity.package, due, tasks: [index] }],
  );
  return { ...problem, tasks, dues };
}

/** The last moment after which so many minutes of some stretches are left; minus infinity where they hold fewer. */
function latestLeaving(slots: readonly Slot[], minutes: number): number {
  if (minutes === 0) return Number.POSITIVE_INFINITY;
  let missing = minutes;
  for (const slot of slots.toReversed()) {
    if (slot.end - slot.start >= missing) return slot.end - missing;
    missing -= slot.end - slot.start;
  }
  return Number.NEGATIVE_INFINITY;
}
