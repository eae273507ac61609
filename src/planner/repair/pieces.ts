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
        ...(own.length > 1 &&
          task.perUnit > 0 &&
          task.setUp + task.makeSafe > 0 && {
            joins: all(task.index).filter((other) => other !== index),
          }),
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
  };
}

/** The visits made before that are still meant, the first ones gone where more is done by now, and what is left beside. */
function partsOf(task: Task, base: readonly Placement[]): readonly Part[] {
  const own = base
    .filter((placement) => placement.activity === task.activity.id)
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

/**
 * A problem of which no plan fails where some plan of the whole does with every piece but some in its window: what is done in
 * one go with other visits of its work takes no set up, and which of several visits is the first or the last is left open.
 */
export function easedTo(
  split: Split,
  freed: ReadonlySet<number>,
  held = heldTo(split, freed),
): Problem {
  const { whole, pieces } = split;
  const count = new Map<number, number>();
  for (const index of whole) count.set(index, (count.get(index) ?? 0) + 1);
  const isSplit = (task: number): boolean => count.get(whole[task]!)! > 1;
  if (!held.tasks.some(({ index }) => isSplit(index))) return held;
  // Of what stays in one window, one visit at the least is set up.
  const own = new Map<string, number>();
  pieces.forEach(({ task, window }, at) => {
    const key = `${whole[task]} ${window}`;
    if (!freed.has(at) && window !== undefined && !own.has(key)) own.set(key, task);
  });
  const paying = new Set(own.values());
  const isOpen = (from: number, to: number, fromStart: boolean): boolean =>
    whole[from] === whole[to] || (fromStart && isSplit(from));
  const tasks = held.tasks.map((task): Task => {
    const { index } = task;
    const eased = {
      ...task,
      before: task.before.filter((tie) => !isOpen(tie.task, index, tie.fromStart)),
      after: task.after.filter((tie) => !isOpen(index, tie.task, tie.fromStart)),
    };
    if (!isSplit(index)) return eased;
    const { lastOnly, block, ...free } = eased;
    return {
      ...free,
      ...(block !== undefined && !lastOnly && { block }),
      ...(!paying.has(index) && { setUp: 0, makeSafe: 0 }),
    };
  });
  const blocks = held.blocks?.map((block) => ({
    ...block,
    runners: block.runners.filter((index) => !isSplit(index)),
  }));
  return { ...held, tasks, ...(blocks && { blocks }) };
}

/** The plan before, with what is kept in place of what it says of the same whole work or of a visit that begins then. */
export function withKept(
  base: readonly Placement[],
  keep: readonly Placement[],
): readonly Placement[] {
  const isSame = (placement: Placement, other: Placement): boolean =>
    placement.activity === other.activity &&
    (placement.units === undefined || placement.from === other.from);
  return [...base.filter((placement) => !keep.some((other) => isSame(placement, other))), ...keep];
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
    // What is kept has no other minutes than its own, so nothing is put on to it.
    if (!slot)
      return task.joins ? { ...task, joins: task.joins.filter((other) => !own.has(other)) } : task;
    const isOpen = task.slots.some(
      ({ window, start, end }) => window === slot.window && start <= slot.start && slot.end <= end,
    );
    const { joins: _, ...alone } = task;
    return { ...alone, slots: isOpen ? [slot] : [] };
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

/** Visits of the split problem as those of the whole: what is done in one go is one visit. */
export function wholeVisits(
  { problem: { tasks }, whole }: Pick<Split, 'problem' | 'whole'>,
  visits: readonly Visit[],
): Visit[] {
  const joined = visits.filter(({ task: index, start, end, units }) => {
    const { joins, perUnit } = tasks[index]!;
    return joins !== undefined && end - start === units * perUnit;
  });
  const own = new Set(joined);
  const made = visits
    .filter((visit) => !own.has(visit))
    .map((visit) => ({ ...visit, task: whole[visit.task]! }));
  // Each finds what it was put on to once that has grown up to it.
  let rest = joined;
  while (rest.length > 0) {
    const left = rest.filter((visit) => {
      const task = whole[visit.task]!;
      const at = made.findIndex(
        (each) =>
          each.task === task &&
          each.window === visit.window &&
          (each.end === visit.start || each.start === visit.end),
      );
      if (at < 0) return true;
      const to = made[at]!;
      made[at] = {
        ...to,
        start: Math.min(to.start, visit.start),
        end: Math.max(to.end, visit.end),
        units: to.units + visit.units,
      };
      return false;
    });
    if (left.length === rest.length) throw new RangeError('a visit is joined to none');
    rest = left;
  }
  return made;
}
