import { MINUTE, subtract, unionOf } from '../../calendar/index.js';
import {
  beforeTie,
  copyOf,
  take,
  visitMinutes,
  type Placement,
  type Problem,
  type Slot,
  type Task,
  type Visit,
} from '../fit/index.js';

/**
 * The problem with some placements already made. What is left of a repeated task may go before them, between them and
 * after them; what they wait for, at first or second hand, must be ready in time for them.
 *
 * @throws {RangeError} When one names no activity with work left, no window of the problem, or too many units.
 */
export function pin(problem: Problem, keep: readonly Placement[]): Problem {
  if (keep.length === 0) return problem;
  const left = problem.tasks.map((task) => task.units);
  const pinned = keep.map((placement): Visit => {
    const task = problem.tasks.find((item) => item.activity.id === placement.activity);
    if (!task) throw new RangeError(`"${placement.activity}" has no work left to keep in place`);
    const window =
      placement.window === null
        ? -1
        : problem.windows.findIndex((item) => item.id === placement.window);
    if (placement.window !== null && window < 0)
      throw new RangeError(`no open window "${placement.window}"`);
    const units = task.activity.work.kind === 'whole' ? 1 : (placement.units ?? task.units);
    left[task.index] = left[task.index]! - units;
    if (left[task.index]! < 0) throw new RangeError(`too many units of "${placement.activity}"`);
    return {
      task: task.index,
      window,
      start: (placement.from - problem.base) / MINUTE,
      end: (placement.to - problem.base) / MINUTE,
      units,
    };
  });
  const own: Visit[][] = problem.tasks.map(() => []);
  for (const visit of pinned) own[visit.task]!.push(visit);
  const limits = limitsOf(problem, own, left);
  const opened = openedBy(problem, pinned, left);
  const tasks = problem.tasks.map((task): Task => ({
    ...task,
    ...limits[task.index],
    ...(task.block !== undefined && opened.has(task.block) && { owed: true as const }),
    slots: own[task.index]!.length > 0 ? besides(task.slots, own[task.index]!) : task.slots,
  }));
  return { ...problem, tasks, pinned };
}

/** The blocks of which something that binds them to a window stays. */
function openedBy(
  { tasks }: Problem,
  pinned: readonly Visit[],
  left: readonly number[],
): ReadonlySet<number> {
  return new Set(
    pinned.flatMap((visit) => {
      const { block, lastOnly } = tasks[visit.task]!;
      return block === undefined || (lastOnly && left[visit.task]! > 0) ? [] : [block];
    }),
  );
}

type Limits = Pick<Task, 'latestEnd' | 'latestStart'>;

/** By when each task must begin and finish for what stays, followed back through all that waits for it. */
function limitsOf(
  problem: Problem,
  own: readonly (readonly Visit[])[],
  left: readonly number[],
): Limits[] {
  const limits: Limits[] = problem.tasks.map(() => ({}));
  // The latest first start of each task that stays or that something which stays waits for.
  const begins = problem.tasks.map((_, index) =>
    own[index]!.reduce((first, visit) => Math.min(first, visit.start), Number.POSITIVE_INFINITY),
  );
  for (const index of problem.order.toReversed()) {
    const task = problem.tasks[index]!;
    let latestEnd = Number.POSITIVE_INFINITY;
    let latestStart = Number.POSITIVE_INFINITY;
    for (const tie of task.after) {
      const by = begins[tie.task]!;
      if (by === Number.POSITIVE_INFINITY) continue;
      if (tie.fromStart) latestStart = Math.min(latestStart, beforeTie(tie, by));
      else latestEnd = Math.min(latestEnd, beforeTie(tie, by));
    }
    limits[index] = {
      ...(latestEnd < Number.POSITIVE_INFINITY && { latestEnd }),
      ...(latestStart < Number.POSITIVE_INFINITY && { latestStart }),
    };
    const work = left[index]! > 0 ? visitMinutes(task, left[index]!) : 0;
    begins[index] = Math.min(begins[index]!, latestStart, latestEnd - work);
  }
  return limits;
}

/** The slots without the time in which visits of the same task stay. */
function besides(slots: readonly Slot[], visits: readonly Visit[]): Slot[] {
  const taken = unionOf(visits.filter((visit) => visit.end > visit.start));
  return slots.flatMap((slot) =>
    subtract([slot], taken).map(({ start, end }): Slot => ({ window: slot.window, start, end })),
  );
}

/** What is still to be planned beside what stays, as a problem of its own, for bounds: a task may have no units left. */
export function openProblem(problem: Problem): Problem {
  const { pinned, ...rest } = problem;
  if (!pinned) return problem;
  const left = problem.tasks.map((task) => task.units);
  const profiles = problem.supplies.map((supply) => copyOf(supply.profile));
  for (const visit of pinned) {
    left[visit.task] = left[visit.task]! - visit.units;
    for (const { supply, amount } of problem.tasks[visit.task]!.demands)
      take(profiles[supply]!, amount, visit.start, visit.end);
  }
  return {
    ...rest,
    tasks: problem.tasks.map((task) => ({ ...task, units: left[task.index]! })),
    supplies: problem.supplies.map((supply, i) => ({ ...supply, profile: profiles[i]! })),
  };
}

/** Windows in which something stays. */
export function windowsKept(problem: Problem): ReadonlySet<number> {
  return new Set(
    (problem.pinned ?? []).flatMap((visit) => (visit.window < 0 ? [] : [visit.window])),
  );
}
