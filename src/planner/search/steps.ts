import type { Problem, Visit } from '../fit/index.js';
import type { Random } from '../random.js';

/** What is placed at one turn: units of a task, or all of a cluster. */
export interface Step {
  /** One task, or those of a cluster in the order in which they are placed. */
  readonly tasks: readonly number[];
  /** The most units that are placed at this turn; 0: all that are left. */
  readonly units: number;
  /** They are placed in one go where there is room for that, even if some of them could be done sooner. */
  readonly atOnce: boolean;
  /** Index of the cluster; -1: none. */
  readonly cluster: number;
}

/** Steps of all tasks that wait for nothing in a ring. Whatever a step waits for stands before it. */
export type Steps = readonly Step[];

/** The steps of a list of tasks, the tasks of a cluster at the place of the first of them. */
export function stepsOf({ clusters = [] }: Problem, list: readonly number[]): Step[] {
  const clusterOf = new Map<number, number>();
  clusters.forEach(({ tasks }, at) => {
    for (const task of tasks) clusterOf.set(task, at);
  });
  const own = new Map<number, number[]>();
  const steps: Step[] = [];
  for (const task of list) {
    const cluster = clusterOf.get(task) ?? -1;
    const known = own.get(cluster);
    if (cluster >= 0 && known) known.push(task);
    else {
      const tasks = [task];
      if (cluster >= 0) own.set(cluster, tasks);
      steps.push({ tasks, units: 0, atOnce: false, cluster });
    }
  }
  return steps;
}

/**
 * The steps with visits of repeated work that come later as steps of their own, each where its start says. What waits for the
 * work moves behind the last of them.
 */
export function splitAsIn(problem: Problem, steps: Steps, visits: readonly Visit[]): Step[] {
  const own = new Map<number, Visit[]>();
  for (const visit of visits) {
    const known = own.get(visit.task);
    if (known) known.push(visit);
    else own.set(visit.task, [visit]);
  }
  const startOf = (step: Step): number => own.get(step.tasks[0]!)?.[0]?.start ?? Infinity;
  let all = [...steps];
  for (const step of steps) {
    const some = own.get(step.tasks[0]!)?.sort((a, b) => a.start - b.start) ?? [];
    if (step.cluster >= 0 || some.length < 2) continue;
    const at = all.indexOf(step);
    all.splice(
      at,
      1,
      ...some.map(({ units }, i) => ({ ...step, units: i === some.length - 1 ? 0 : units })),
    );
    for (let i = some.length - 1; i > 0; i -= 1) {
      const from = at + i;
      let to = from;
      while (to + 1 < all.length && startOf(all[to + 1]!) < some[i]!.start) to += 1;
      all = moved(problem, all, from, to, 1);
    }
  }
  return all;
}

/**
 * The steps with one moved to `to`, back (`by` 1) with what waits for it that stands in between, or forward (-1) with what it
 * waits for.
 */
export function moved(
  problem: Problem,
  steps: Steps,
  from: number,
  to: number,
  by: 1 | -1,
): Step[] {
  const linked = new Set<number>();
  const along: Step[] = [];
  const others: Step[] = [];
  for (let i = from; by * (to - i) >= 0; i += by) {
    const step = steps[i]!;
    if (i !== from && !step.tasks.some((task) => linked.has(task))) {
      others.push(step);
      continue;
    }
    along.push(step);
    for (const task of step.tasks) {
      linked.add(task);
      const { before, after } = problem.tasks[task]!;
      for (const tie of by === 1 ? after : before) linked.add(tie.task);
    }
  }
  problem.effort.spent += (by * (to - from) + steps.length) >> 3;
  const between = [...others, ...along];
  if (by === -1) between.reverse();
  return [
    ...steps.slice(0, Math.min(from, to)),
    ...between,
    ...steps.slice(Math.max(from, to) + 1),
  ];
}

/** The steps with some units of repeated work put off to a turn of their own, or again in one with the next. */
export function splitAnew(problem: Problem, steps: Steps, random: Random): Steps {
  const { tasks } = problem;
  const isRepeated = ({ tasks: [task], cluster }: Step): boolean =>
    cluster < 0 && tasks[task!]!.units > 1;
  const some = steps.flatMap((step, i) => (isRepeated(step) ? [i] : []));
  if (some.length === 0) return steps;
  const at = some[random.below(some.length)]!;
  const step = steps[at]!;
  if (random.below(4) === 0) return steps.with(at, { ...step, atOnce: !step.atOnce });
  if (step.units > 0 && random.below(2) === 0) return steps.toSpliced(at, 1);
  const units = 1 + random.below(tasks[step.tasks[0]!]!.units - 1);
  const next = steps.toSpliced(at, 1, { ...step, units }, { ...step, units: 0 });
  // Of a turn that was capped before, what is left stays with its next.
  if (step.units > 0) next[at + 1] = { ...step, units: step.units };
  return moved(problem, next, at + 1, near(at + 1, next.length, 1, random), 1);
}

/** The steps that one list begins with, and what they leave over as it stands in another. */
export function crossed(one: Steps, other: Steps, length: number): Step[] {
  const begin = one.slice(0, length);
  // What is split is taken from one of them as a whole.
  const done = new Set(begin.flatMap(({ tasks, units }) => (units === 0 ? tasks : [])));
  const isDone = ({ tasks }: Step): boolean => done.has(tasks[0]!);
  return [...begin.filter(isDone), ...other.filter((step) => !isDone(step))];
}

/** A place ahead (`by` 1) or before (-1), near by more often than far. */
export function near(from: number, length: number, by: 1 | -1, random: Random): number {
  const bits = 1 + random.below(Math.max(1, 32 - Math.clz32(length)));
  const to = from + by * (1 + random.below(1 << bits));
  return Math.max(0, Math.min(length - 1, to));
}
