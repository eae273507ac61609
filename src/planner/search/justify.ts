import {
  beforeTie,
  copyOf,
  listBy,
  take,
  visitMinutes,
  type Problem,
  type Profile,
  type Task,
} from '../fit/index.js';
import { lastStartBeside } from '../problem/latest.js';
import type { Candidate } from './objectives.js';
import { stepsOf, type Steps } from './steps.js';

/**
 * The order in which work begins once all of it is put off as long as it can be: from the last piece back, each as late as
 * its limits, what waits for it and what is left of the resources allow. What has least room comes first in it, beside what
 * else wants the same.
 *
 * @param placed An answer; what it leaves out is put off as well, and before the rest where its limits are later.
 * @param allowed 1 where a window may be used.
 * @see Valls, Ballestín and Quintanilla, "Justification and RCPSP: a technique that pays", European Journal of Operational Research
 * 165 (2005), for work justified to the right and then to the left; from memory.
 */
export function rightJustified(
  problem: Problem,
  placed: Pick<Candidate, 'visits'>,
  allowed: Uint8Array,
): Steps {
  return stepsOf(problem, listBy(problem, rightJustifiedStarts(problem, placed, allowed)));
}

/** Later than any work; unlike infinity two of them compare as equal. */
const EVER = Number.MAX_SAFE_INTEGER;
/** What begins later has no limit, and asks no curing of what it waits for. */
const NO_LIMIT = EVER / 2;

/** When each task begins, put off so. What has no room is where its followers want it, and takes nothing away. */
export function rightJustifiedStarts(
  problem: Problem,
  { visits }: Pick<Candidate, 'visits'>,
  allowed: Uint8Array,
): number[] {
  const { tasks } = problem;
  const free = problem.supplies.map(({ profile }) => copyOf(profile));
  const pieces = tasks.map((): number[] => []);
  const ends = tasks.map(() => -EVER);
  for (const { task, units, end } of visits) {
    pieces[task]!.push(units);
    ends[task] = Math.max(ends[task]!, end);
  }
  for (const { index, latestEnd = EVER } of tasks)
    if (pieces[index]!.length === 0) ends[index] = latestEnd;
  const starts = tasks.map(() => EVER);
  const waiting = tasks.map(({ after }) => after.length);
  const open = problem.order.filter((index) => waiting[index] === 0);
  while (open.length > 0) {
    let pick = 0;
    problem.effort.spent += open.length >> 4;
    for (let i = 1; i < open.length; i += 1) {
      const [end, last] = [ends[open[i]!]!, ends[open[pick]!]!];
      if (end > last || (end === last && open[i]! > open[pick]!)) pick = i;
    }
    const task = tasks[open[pick]!]!;
    open[pick] = open.at(-1)!;
    open.pop();
    const some = pieces[task.index]!;
    starts[task.index] = putOff(problem, task, some.length > 0 ? some : [task.units], {
      starts,
      free,
      allowed,
    });
    for (const tie of task.before) {
      waiting[tie.task]! -= 1;
      if (waiting[tie.task] === 0) open.push(tie.task);
    }
  }
  return starts;
}

interface Beside {
  readonly starts: readonly number[];
  /** Changes with each piece. */
  readonly free: readonly Profile[];
  readonly allowed: Uint8Array;
}

/** The first start of pieces of a task, each put off before the one that was put off last. */
function putOff(
  problem: Problem,
  task: Task,
  pieces: readonly number[],
  { starts, free, allowed }: Beside,
): number {
  let by = task.latestEnd ?? EVER;
  let begunBy = task.latestStart ?? EVER;
  for (const tie of task.after) {
    const start = starts[tie.task]!;
    const limit = start < NO_LIMIT ? beforeTie(tie, start) : start - tie.gap;
    if (tie.fromStart) begunBy = Math.min(begunBy, limit);
    else by = Math.min(by, limit);
  }
  let first = EVER;
  for (const units of pieces) {
    const minutes = visitMinutes(task, units);
    const start = lastStartBeside(problem, task, { minutes, by, begunBy, free, allowed });
    if (start === Number.NEGATIVE_INFINITY) {
      first = Math.min(first, by - minutes, begunBy);
      continue;
    }
    problem.effort.spent += 1 + task.demands.length;
    for (const { supply, amount } of task.demands)
      take(free[supply]!, amount, start, start + minutes);
    first = Math.min(first, start);
    by = start;
  }
  return first;
}
