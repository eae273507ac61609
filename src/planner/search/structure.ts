import type { Problem, Slot, Task, Visit } from '../fit/index.js';
import { balance, project } from '../kernels/index.js';
import type { Limits } from '../kernels/budget.js';
import type { Goal } from './objectives.js';

/** Steps that a kernel does between two looks at its clock. */
const LOOK_STEPS = 300;

/** An answer of a search made for one shape of problem. */
export interface Special {
  readonly visits: readonly Visit[];
  /** Bound on the count of windows, or on the last finish, whichever was searched for. */
  readonly fewestWindows?: number;
  readonly finish?: number;
  readonly proven: boolean;
}

/** The answer where a problem has a shape that a quicker search is made for; `undefined` when it has not. */
export function solveSpecial(problem: Problem, goal: Goal, seed: number): Special | undefined {
  const { effort } = problem;
  // Their clock are the steps: each look at it stands for the work since the last.
  const limits: Limits = {
    clock: () => (effort.spent += LOOK_STEPS),
    deadlineMs: effort.limit,
    shouldStop: () => effort.isCut(),
  };
  if (problem.pinned || problem.blocks || problem.tasks.length === 0) return undefined;
  if (!problem.tasks.every(isPlain)) return undefined;
  if (problem.order.length < problem.tasks.length) return undefined;
  const slots = problem.tasks[0]!.slots;
  if (!problem.tasks.every((task) => sameSlots(task.slots, slots))) return undefined;
  if (goal.ahead === 0) {
    const packed = packWindows(problem, slots, limits);
    if (packed) return packed;
  }
  return slots.length === 1 ? fillWindow(problem, slots[0]!, limits, seed) : undefined;
}

/** Whole inside work without dates or curing. */
function isPlain(task: Task): boolean {
  return (
    !task.outside &&
    task.activity.work.kind === 'whole' &&
    task.earliest === Number.NEGATIVE_INFINITY &&
    task.due === Number.POSITIVE_INFINITY &&
    task.before.every((tie) => !tie.fromStart && !tie.cure)
  );
}

function sameSlots(a: readonly Slot[], b: readonly Slot[]): boolean {
  return (
    a === b ||
    (a.length === b.length &&
      a.every(
        (slot, i) =>
          slot.window === b[i]!.window && slot.start === b[i]!.start && slot.end === b[i]!.end,
      ))
  );
}

/** The level of a supply that never changes; `undefined` when it does. */
function constantLevel(problem: Problem, supply: number): number | undefined {
  const { free } = problem.supplies[supply]!.profile;
  return free.length === 1 ? free[0] : undefined;
}

/** Equal windows and one resource that only one task at a time can have: filling the fewest bins. */
function packWindows(
  problem: Problem,
  slots: readonly Slot[],
  limits: Limits,
): Special | undefined {
  const { tasks } = problem;
  const capacity = slots.length === 0 ? 0 : slots[0]!.end - slots[0]!.start;
  const alike = slots.every(
    (slot, i) => slot.end - slot.start === capacity && (i === 0 || slots[i - 1]!.end <= slot.start),
  );
  const oneEach = new Set(slots.map((slot) => slot.window)).size === slots.length;
  if (!alike || !oneEach) return undefined;
  if (tasks.some((task) => task.perUnit > capacity || task.before.some((tie) => tie.gap > 0)))
    return undefined;
  const levels = problem.supplies.map((_, supply) => constantLevel(problem, supply));
  if (levels.some((level) => level === undefined)) return undefined;
  if (tasks.some((task) => task.demands.some((need) => need.amount > levels[need.supply]!)))
    return undefined;
  const single = levels.some((level, supply) =>
    tasks.every((task) =>
      task.demands.some((need) => need.supply === supply && need.amount * 2 > level!),
    ),
  );
  if (!single) return undefined;

  const answer = balance({
    times: Int32Array.from(tasks, (task) => task.perUnit),
    capacity,
    precedence: tasks.flatMap((task) =>
      task.before.map((tie): [number, number] => [tie.task, task.index]),
    ),
    ...limits,
  });
  if (answer.count > slots.length) return undefined;
  const filled = slots.map((slot) => slot.start);
  const visits = problem.order
    .toSorted((a, b) => answer.bins[a]! - answer.bins[b]! || tasks[a]!.rank - tasks[b]!.rank)
    .map((task): Visit => {
      const bin = answer.bins[task]!;
      const start = filled[bin]!;
      const end = start + tasks[task]!.perUnit;
      filled[bin] = end;
      return { task, window: slots[bin]!.window, start, end, units: 1 };
    });
  return { visits, fewestWindows: answer.lowerBound, proven: answer.proven };
}

/** One stretch for everything and resources that never change: the shortest project. */
function fillWindow(
  problem: Problem,
  slot: Slot,
  limits: Limits,
  seed: number,
): Special | undefined {
  const { tasks } = problem;
  const levels = problem.supplies.map((_, supply) => constantLevel(problem, supply));
  if (levels.some((level) => level === undefined || !Number.isInteger(level))) return undefined;
  const fits = (task: Task): boolean =>
    task.demands.every(
      (need) => Number.isInteger(need.amount) && need.amount <= levels[need.supply]!,
    );
  if (!tasks.every(fits)) return undefined;
  const answer = project({
    durations: Int32Array.from(tasks, (task) => task.perUnit),
    demands: problem.supplies.map((_, supply) =>
      Int32Array.from(
        tasks,
        (task) =>
          (task.perUnit > 0 && task.demands.find((need) => need.supply === supply)?.amount) || 0,
      ),
    ),
    capacities: levels as number[],
    precedence: tasks.flatMap((task) =>
      task.before.map((tie): [number, number, number] => [tie.task, task.index, tie.gap]),
    ),
    seed,
    ...limits,
  });
  if (answer.makespan > slot.end - slot.start) return undefined;
  const visits = tasks.map((task): Visit => {
    const start = slot.start + answer.starts[task.index]!;
    return {
      task: task.index,
      window: slot.window,
      start,
      end: start + task.perUnit,
      units: 1,
    };
  });
  return { visits, finish: slot.start + answer.lowerBound, proven: answer.proven };
}
