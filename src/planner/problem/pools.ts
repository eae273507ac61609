import { unionOf, type IntervalSet } from '../../calendar/index.js';
import type { Latest } from './latest.js';
import { areaFree, mostFree, type Profile } from './profile.js';
import { visitMinutes, type Problem, type Task } from './problem.js';

/** Tasks that draw on one stock of time: amounts times minutes of a resource, or turns at it one after another. */
export interface Pool {
  readonly supply: number;
  /** What each of its tasks takes of it at once: of a pool of turns, 1. */
  readonly users: readonly { readonly task: Task; readonly amount: number }[];
  /** Only one user at a time can be at it. */
  readonly turns: boolean;
  /** Usable time of any of the users, as stretches that do not overlap. */
  readonly stretches: IntervalSet;
}

/** The pools of a problem that more than one task draws on; inside work also by itself, whose usable time is less. */
export function poolsOf(problem: Problem): Pool[] {
  const inside = problem.tasks.filter((task) => !task.outside);
  const mixed = inside.length > 0 && inside.length < problem.tasks.length;
  return [problem.tasks, ...(mixed ? [inside] : [])].flatMap((tasks) => poolsAmong(problem, tasks));
}

function poolsAmong({ supplies }: Problem, tasks: readonly Task[]): Pool[] {
  return supplies.flatMap(({ profile }, supply): Pool[] => {
    const users = tasks.flatMap((task) =>
      task.demands
        .filter((demand) => demand.supply === supply)
        .map(({ amount }) => ({ task, amount })),
    );
    if (users.length < 2) return [];
    const stretches = stretchesOf(users);
    const level = Math.max(
      0,
      ...stretches.map((stretch) => mostFree(profile, stretch.start, stretch.end)),
    );
    const single = users.filter((user) => 2 * user.amount > level);
    return [
      { supply, users, turns: false, stretches },
      ...(single.length > 1
        ? [
            {
              supply,
              users: single.map(({ task }) => ({ task, amount: 1 })),
              turns: true,
              stretches: stretchesOf(single),
            },
          ]
        : []),
    ];
  });
}

function stretchesOf(users: Pool['users']): IntervalSet {
  return unionOf([...new Set(users.map(({ task }) => task.slots))].flat());
}

/** What a pool holds in [from, to), of what is free of its resource. */
export function stockOf(pool: Pool, free: Profile, from: number, to: number): number {
  let stock = 0;
  for (const stretch of pool.stretches) {
    const start = Math.max(stretch.start, from);
    const end = Math.min(stretch.end, to);
    if (start < end) stock += pool.turns ? end - start : areaFree(free, start, end);
  }
  return stock;
}

/**
 * Whether some stretch of time must take more work than there is of a resource in it, when each task lies between
 * its earliest start and its latest finish: proof that not all can be placed in time.
 *
 * O(tasks^3 x resources).
 */
export function isOverloaded(
  problem: Problem,
  earliest: readonly number[],
  latest: Latest,
): boolean {
  return poolsOf(problem).some((pool) => {
    const { profile } = problem.supplies[pool.supply]!;
    const upTo = new Map<number, number>();
    const stock = (until: number): number => {
      let known = upTo.get(until);
      if (known === undefined) {
        problem.effort.spent += pool.stretches.length >> 1;
        known = stockOf(pool, profile, Number.NEGATIVE_INFINITY, until);
        upTo.set(until, known);
      }
      return known;
    };
    const froms = new Set(pool.users.map(({ task }) => earliest[task.index]!));
    const untils = new Set(pool.users.map(({ task }) => latest.ends[task.index]!));
    for (const from of froms)
      for (const until of untils) {
        if (until <= from) continue;
        problem.effort.spent += 1 + (pool.users.length >> 3);
        const there = stock(until) - stock(from);
        let asked = 0;
        for (const { task, amount } of pool.users)
          asked += amount * within(task, from, until, earliest, latest);
        if (asked > there) return true;
      }
    return false;
  });
}

/** Minutes of a task that lie in [from, until) wherever it is placed between its limits. */
function within(
  task: Task,
  from: number,
  until: number,
  earliest: readonly number[],
  latest: Latest,
): number {
  const start = earliest[task.index]!;
  const minutes = visitMinutes(task, task.units);
  if (start >= from && latest.ends[task.index]! <= until) return minutes;
  if (task.units > 1) return 0;
  const overlap = (at: number): number =>
    Math.max(0, Math.min(until, at + minutes) - Math.max(from, at));
  return Math.min(overlap(start), overlap(latest.starts[task.index]!));
}
