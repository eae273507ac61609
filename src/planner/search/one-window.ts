import type { Problem, Task, Tie, Visit } from '../fit/index.js';
import { project } from '../project/index.js';

/** Steps of `Effort` in one of the search for the shortest project: so that both take the same time. */
const STEP = 0.25;
/** Parts of the steps for the soonest finish and, where that leaves work late, for the same finish with all in time. */
const FINISH = 0.5;
const IN_TIME = 0.3;

/** What is known of work in one window. Moments are minutes of the problem. */
export interface InOneWindow {
  /** A plan of all of the work in which nothing is late; absent: none was found. */
  readonly visits?: readonly Visit[];
  /** No plan of all of the work finishes sooner than this minute. */
  readonly finish: number;
}

/**
 * Work of which all must go into one window, by the search for the shortest project: first the soonest finish of all of it;
 * then, if work is late in that plan, the same finish with every date kept.
 *
 * `undefined` where that search does not know the kind of work: it takes whole pieces inside, each with one stretch of usable
 * time, where there is as much of each resource all the while.
 */
export function solveOneWindow(problem: Problem, seed: number): InOneWindow | undefined {
  const { effort, tasks } = problem;
  if (problem.pinned || tasks.length === 0 || problem.order.length < tasks.length) return undefined;
  const window = tasks[0]!.slots[0]?.window;
  if (!tasks.every((task) => isPlain(task, tasks) && task.slots.length === 1)) return undefined;
  if (tasks.some((task) => task.slots[0]!.window !== window)) return undefined;
  const from = Math.min(...tasks.map((task) => task.slots[0]!.start));
  const to = Math.max(...tasks.map((task) => task.slots[0]!.end));
  const levels = problem.supplies.map((_, supply) => levelOf(problem, supply, from, to));
  if (levels.some((level) => level === undefined || !Number.isInteger(level))) return undefined;
  if (tasks.some(({ demands }) => demands.some((need) => need.amount > levels[need.supply]!)))
    return undefined;

  const durations = Int32Array.from(tasks, (task) => task.perUnit);
  const limits = tasks.map((task) => Math.min(task.slots[0]!.end, task.due) - from);
  const releases = Int32Array.from(tasks, (task) =>
    Math.max(0, task.slots[0]!.start - from, task.earliest - from),
  );
  const shortest = (share: number, tails: Int32Array | undefined): ReturnType<typeof project> =>
    project({
      durations,
      releases,
      ...(tails && { tails }),
      demands: problem.supplies.map((_, supply) =>
        Int32Array.from(
          tasks,
          (task) =>
            (task.perUnit > 0 && task.demands.find((need) => need.supply === supply)?.amount) || 0,
        ),
      ),
      capacities: levels as number[],
      precedence: tasks.flatMap((task) =>
        task.before.map((tie): [number, number, number] => [
          tie.task,
          task.index,
          lagOf(tie, tasks),
        ]),
      ),
      seed,
      budget: {
        spend: (steps) => (effort.spent += STEP * steps),
        expired: effort.until(share),
      },
    });
  const inTime = (starts: Int32Array): boolean =>
    limits.every((limit, i) => starts[i]! + durations[i]! <= limit);

  const visitsAt = (starts: Int32Array): Visit[] =>
    tasks.map((task): Visit => {
      const start = from + starts[task.index]!;
      return { task: task.index, window: window!, start, end: start + task.perUnit, units: 1 };
    });
  const first = shortest(FINISH, undefined);
  const finish = from + first.lowerBound;
  if (inTime(first.starts)) return { visits: visitsAt(first.starts), finish };
  // The search knows no dates, only minutes that must pass between the end of a task and the end of all. Given as many as
  // lie between a task's date and the soonest finish, it puts the task that much before the finish: in time.
  const tails = Int32Array.from(limits, (limit) => Math.max(0, first.makespan - limit));
  const { starts } = shortest(IN_TIME, tails);
  return { ...(inTime(starts) && { visits: visitsAt(starts) }), finish };
}

/** Whole inside work that waits for what has finished. */
function isPlain(task: Task, tasks: readonly Task[]): boolean {
  return (
    !task.outside &&
    task.activity.work.kind === 'whole' &&
    task.before.every((tie) => !tie.cure && lagOf(tie, tasks) >= 0)
  );
}

/** Minutes from the finish of what is waited for. */
function lagOf(tie: Tie, tasks: readonly Task[]): number {
  return tie.fromStart ? tie.gap - tasks[tie.task]!.perUnit : tie.gap;
}

/** What there is of a supply all the while; `undefined` where that changes. */
function levelOf(problem: Problem, supply: number, from: number, to: number): number | undefined {
  const { at, free } = problem.supplies[supply]!.profile;
  const levels = free.filter((_, i) => at[i]! < to && (at[i + 1] ?? to) > from);
  return levels.every((level) => level === levels[0]) ? levels[0] : undefined;
}
