import { MINUTE } from '../../calendar/index.js';
import type { Placement, Problem, Slot, Task, Tie, Visit } from '../fit/index.js';

/** A piece of the plan that is mended: whole work, or one visit of repeated work. */
export interface Piece {
  readonly placement: Placement;
  /** Index of its task in the split problem. */
  readonly task: number;
  /** Index of its window; -1 outside any; undefined where the problem has no such window any more. */
  readonly window: number | undefined;
}

/** A problem in which each piece of a plan made before is a task of its own. */
export interface Split {
  readonly problem: Problem;
  readonly pieces: readonly Piece[];
  /** The task of the whole, by task of the split problem. */
  readonly whole: readonly number[];
  /** Nothing is lost by the split: a repeated task has no more than one piece, or none that gains by being joined. */
  readonly exact: boolean;
}

interface Part {
  readonly units: number;
  readonly placement?: Placement;
}

/**
 * Splits repeated work by its visits: they do not overlap, what waits for the work waits for them all, and the last of
 * them is bound as the work is. What the plan made before has no place for is a task without a piece.
 */
export function splitOf(problem: Problem, base: readonly Placement[]): Split {
  const parts = problem.tasks.map((task) => partsOf(task, base));
  const firstOf: number[] = [];
  let count = 0;
  for (const own of parts) {
    firstOf.push(count);
    count += own.length;
  }
  const all = (index: number): number[] => parts[index]!.map((_, at) => firstOf[index]! + at);
  const lastOf = (index: number): number => firstOf[index]! + parts[index]!.length - 1;
  const spread = (ties: readonly Tie[]): Tie[] =>
    ties.flatMap((tie) =>
      (tie.fromStart ? [firstOf[tie.task]!] : all(tie.task)).map((task) => ({ ...tie, task })),
    );
  const supplies = [...problem.supplies];
  const order = problem.order.flatMap(all);
  const rank = new Map(order.map((index, at) => [index, at]));
  const tasks = problem.tasks.flatMap((task): Task[] => {
    const own = parts[task.index]!;
    let { demands } = task;
    if (own.length > 1) {
      demands = [...demands, { supply: supplies.length, amount: 1 }];
      supplies.push({
        id: `visits of ${task.activity.id}`,
        profile: { at: [Number.NEGATIVE_INFINITY], free: [1] },
      });
    }
    const { block, lastOnly, ...free } = task;
    return own.map(({ units }, at): Task => {
      const index = firstOf[task.index]! + at;
      const last = index === lastOf(task.index);
      // Where the last visit binds, it is the last.
      const others = lastOnly && last ? all(task.index).slice(0, -1) : [];
      const tie = (other: number): Tie => ({ task: other, fromStart: false, gap: 0 });
      const before = [...spread(task.before), ...others.map(tie)];
      const after = task.after.flatMap((each) =>
        each.fromStart && at > 0 ? [] : all(each.task).map((to) => ({ ...each, task: to })),
      );
      return {
        ...free,
        index,
        units,
        demands,
        before,
        after: lastOnly && !last ? [...after, tie(lastOf(task.index))] : after,
        rank: task.rank < 0 ? -1 : rank.get(index)!,
        ...(block !== undefined && (!lastOnly || last) && { block }),
        ...(block !== undefined && lastOnly && last && { lastOnly }),
      };
    });
  });
  const windows = new Map(problem.windows.map((window, index) => [window.id, index]));
  const pieces = parts.flatMap((own, index) =>
    own.flatMap(({ placement }, at): Piece[] =>
      placement
        ? [
            {
              placement,
              task: firstOf[index]! + at,
              window: placement.window === null ? -1 : windows.get(placement.window),
            },
          ]
        : [],
    ),
  );
  return {
    problem: {
      ...problem,
      tasks,
      supplies,
      order,
      dues: problem.dues.map((due) => ({ ...due, tasks: due.tasks.flatMap(all) })),
      ...(problem.blocks && {
        blocks: problem.blocks.map(({ members, runners }) => ({
          members: members.flatMap(all),
          runners: runners.map(lastOf),
        })),
        clusters: (problem.clusters ?? []).map((cluster) => ({
          ...cluster,
          tasks: cluster.tasks.flatMap((index) =>
            problem.tasks[index]!.lastOnly ? [lastOf(index)] : all(index),
          ),
        })),
      }),
    },
    pieces,
    whole: parts.flatMap((own, index) => own.map(() => index)),
    exact: problem.tasks.every((task, index) => {
      const own = parts[index]!;
      const joins = task.setUp + task.makeSafe > 0 || task.lastOnly === true;
      return own.length < 2 || !(joins || task.after.some((tie) => tie.fromStart));
    }),
  };
}

/** The visits made before that are still meant, the first ones gone where more is done by now, and what is left beside. */
function partsOf(task: Task, base: readonly Placement[]): readonly Part[] {
  const own = base
    .filter((one) => one.activity === task.activity.id)
    .toSorted((a, b) => a.from - b.from);
  if (task.activity.work.kind === 'whole')
    return [{ units: task.units, ...(own[0] && { placement: own[0] }) }];
  const parts: Part[] = [];
  let left = task.units;
  for (const placement of own.toReversed()) {
    const units = Math.min(left, placement.units ?? task.units);
    if (units > 0) parts.unshift({ units, placement });
    left -= units;
  }
  return left > 0 || parts.length === 0 ? [...parts, { units: left }] : parts;
}

/** The problem in which every piece but some stays in its window. */
export function heldTo({ problem, pieces }: Split, freed: ReadonlySet<number>): Problem {
  const only = new Map<number, number>();
  pieces.forEach(({ task, window }, at) => {
    if (!freed.has(at) && window !== -1) only.set(task, window ?? Number.NaN);
  });
  const known = new Map<readonly Slot[], Map<number, readonly Slot[]>>();
  const within = (slots: readonly Slot[], window: number): readonly Slot[] => {
    let by = known.get(slots);
    if (!by) known.set(slots, (by = new Map<number, readonly Slot[]>()));
    let some = by.get(window);
    if (!some) by.set(window, (some = slots.filter((slot) => slot.window === window)));
    return some;
  };
  return {
    ...problem,
    tasks: problem.tasks.map((task) => {
      const window = only.get(task.index);
      return window === undefined ? task : { ...task, slots: within(task.slots, window) };
    }),
  };
}

/** The plan before, with what is kept in place of what it says of the same whole work or of a visit that begins then. */
export function withKept(
  base: readonly Placement[],
  keep: readonly Placement[],
): readonly Placement[] {
  const isSame = (one: Placement, other: Placement): boolean =>
    one.activity === other.activity && (one.units === undefined || one.from === other.from);
  return [...base.filter((one) => !keep.some((other) => isSame(one, other))), ...keep];
}

/** The split in which the pieces that are kept have no other time than their own. */
export function keptIn(split: Split, keep: ReadonlySet<Placement>): Split {
  const { problem, pieces } = split;
  if (keep.size === 0) return split;
  const own = new Map<number, Slot>();
  for (const { task, window, placement } of pieces)
    if (keep.has(placement))
      own.set(task, {
        window: window ?? Number.NaN,
        start: (placement.from - problem.base) / MINUTE,
        end: (placement.to - problem.base) / MINUTE,
      });
  const tasks = problem.tasks.map((task): Task => {
    const slot = own.get(task.index);
    if (!slot) return task;
    const isOpen = task.slots.some(
      ({ window, start, end }) => window === slot.window && start <= slot.start && slot.end <= end,
    );
    return { ...task, slots: isOpen ? [slot] : [] };
  });
  return { ...split, problem: { ...problem, tasks } };
}

/** The split with the pieces that are kept, and may be where they are, placed already. */
export function firmly(split: Split, keep: ReadonlySet<Placement>): Split {
  const { problem } = split;
  if (keep.size === 0) return split;
  const pinned = split.pieces.flatMap(({ task: index, placement }): Visit[] => {
    const task = problem.tasks[index]!;
    const [slot] = task.slots;
    return slot && keep.has(placement) ? [{ task: index, ...slot, units: task.units }] : [];
  });
  const opened = new Set(pinned.map((visit) => problem.tasks[visit.task]!.block));
  const tasks = problem.tasks.map((task): Task =>
    task.block !== undefined && opened.has(task.block) ? { ...task, owed: true } : task,
  );
  return { ...split, problem: { ...problem, tasks, pinned } };
}
