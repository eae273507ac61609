import { Board, headsOf, type Problem, type Slot, type Task, type Tie } from '../fit/index.js';

/**
 * The problem of some of the tasks by themselves, each not before its earliest start beside the others. What proves
 * that this has no answer proves it of the whole.
 *
 * @param earliest By task of the whole.
 */
export function partOf(
  problem: Problem,
  indices: readonly number[],
  earliest: readonly number[],
): Problem {
  const place = new Map(indices.map((index, at) => [index, at]));
  const among = (ties: readonly Tie[]): Tie[] =>
    ties.flatMap((tie) => {
      const task = place.get(tie.task);
      return task === undefined ? [] : [{ ...tie, task }];
    });
  const tasks = indices.map((old, index): Task => {
    const task = problem.tasks[old]!;
    return {
      ...task,
      index,
      earliest: Math.max(task.earliest, earliest[old]!),
      before: among(task.before),
      after: among(task.after),
    };
  });
  const some = (all: readonly number[]): number[] => all.flatMap((index) => place.get(index) ?? []);
  return {
    ...problem,
    tasks,
    order: some(problem.order),
    // What is bound to one window all together is so in part; what lies between is for lists alone.
    ...(problem.blocks && {
      blocks: problem.blocks.map(({ members, runners }) => ({
        members: some(members),
        runners: some(runners),
      })),
      clusters: [],
    }),
    dues: problem.dues.flatMap((due) => {
      const own = due.tasks.flatMap((task) => place.get(task) ?? []);
      return own.length > 0 ? [{ ...due, tasks: own }] : [];
    }),
  };
}

/** Values that an answer must not exceed: minutes late, all together, and the last finish; infinity where it may. */
export interface Caps {
  readonly late: number;
  readonly finish: number;
}

/**
 * The problem with dates that any answer within the caps keeps: what is late anyhow by its earliest finish may be so
 * late, and all may be later than that by what the cap leaves.
 */
export function cappedOf(problem: Problem, { late, finish }: Caps): Problem {
  const { ends } = headsOf(new Board(problem));
  const soonest = problem.dues.map(({ due, tasks }) =>
    tasks.reduce((last, task) => Math.max(last, ends[task]!), due),
  );
  const spare = problem.dues.reduce((left, { due }, i) => left - (soonest[i]! - due), late);
  const by = problem.tasks.map(() => finish);
  problem.dues.forEach(({ tasks }, i) => {
    for (const task of tasks) by[task] = Math.min(finish, soonest[i]! + spare);
  });
  return { ...problem, tasks: problem.tasks.map((task, i) => ({ ...task, due: by[i]! })) };
}

/** The problem in which inside work may only be done in some of the windows; `allowed[w]` is 1 for those. */
export function withinWindows(problem: Problem, allowed: Uint8Array): Problem {
  const known = new Map<readonly Slot[], readonly Slot[]>();
  const kept = (slots: readonly Slot[]): readonly Slot[] => {
    let some = known.get(slots);
    if (!some) {
      some = slots.filter((slot) => slot.window < 0 || allowed[slot.window] === 1);
      known.set(slots, some);
    }
    return some;
  };
  return {
    ...problem,
    tasks: problem.tasks.map((task) => ({ ...task, slots: kept(task.slots) })),
  };
}
