import { latestOf, type Problem } from '../fit/index.js';
import type { Candidate, Goal } from './objectives.js';

/**
 * The problem in which every piece of an answer must end in time for all values before the count of windows to stay as they
 * are. What the answer leaves out has no place in it.
 */
export function heldAs(problem: Problem, { visits }: Candidate, goal: Goal): Problem {
  const ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const { task, end } of visits) ends[task] = Math.max(ends[task]!, end);
  const isPlaced = (task: number): boolean => ends[task]! > Number.NEGATIVE_INFINITY;
  const by = byOf(problem, ends, goal);
  const latest = latestOf({
    ...problem,
    tasks: problem.tasks.map((task) => ({
      ...task,
      due: by[task.index]!,
      after: task.after.filter((tie) => isPlaced(tie.task)),
    })),
  });
  return {
    ...problem,
    dues: [],
    tasks: problem.tasks.map((task) => {
      if (!isPlaced(task.index)) return { ...task, slots: [] };
      const latestEnd = latest.ends[task.index]!;
      return latestEnd === Infinity ? task : { ...task, latestEnd };
    }),
  };
}

/** By when each task must end for the values before the count of windows to be no worse than where tasks end so; infinity: whenever. */
export function byOf(problem: Problem, ends: readonly number[], goal: Goal): number[] {
  const isHeld = (value: 'late' | 'finish'): boolean =>
    goal.ahead === 2 || (goal.ahead === 1 && goal.order.startsWith(value));
  const finish = isHeld('finish') ? Math.max(problem.finishFrom ?? 0, ...ends) : Infinity;
  const by = ends.map(() => finish);
  if (isHeld('late'))
    for (const { due, tasks } of problem.dues) {
      const last = tasks.reduce((latest, task) => Math.max(latest, ends[task]!), due);
      for (const task of tasks) by[task] = Math.min(by[task]!, last);
    }
  return by;
}
