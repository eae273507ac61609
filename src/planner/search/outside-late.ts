import {
  beforeTie,
  Board,
  copyOf,
  take,
  visitMinutes,
  type Problem,
  type Visit,
} from '../fit/index.js';
import { latestAllFree } from '../problem/latest.js';

/**
 * Moves outside work as late as what follows it allows: rigged at 23:00 for a start at 01:00, not the week before.
 * Work that no inside work waits for begins with the first window where that costs nothing, and where it must be over
 * before that, as late as it may. Nothing else moves and no value of the plan gets worse.
 */
export function outsideLate(problem: Problem, visits: readonly Visit[]): Visit[] {
  const moved = fromFirstWindow(problem, visits);
  const free = problem.supplies.map((supply) => copyOf(supply.profile));
  const use = (visit: Visit, sign: number): void => {
    for (const { supply, amount } of problem.tasks[visit.task]!.demands)
      take(free[supply]!, sign * amount, visit.start, visit.end);
  };
  for (const visit of moved) use(visit, 1);
  const finish = Math.max(0, ...visits.map((visit) => visit.end));
  const settled = new Set(problem.pinned);
  const order = problem.order.toReversed();
  for (const index of order) {
    const task = problem.tasks[index]!;
    if (!task.outside) continue;
    const own = moved
      .flatMap((visit, at) => (visit.task === index ? [at] : []))
      .sort((a, b) => moved[b]!.start - moved[a]!.start);
    const firstOf = own.at(-1);
    if (firstOf === undefined) continue;
    const done = own.reduce((sum, at) => sum + moved[at]!.units, 0) === task.units;
    // Every value is kept: what is on time stays so, what is late gets no later.
    let limit = Math.min(finish, Math.max(task.due, moved[own[0]!]!.end));
    let startLimit = Number.POSITIVE_INFINITY;
    let waitedFor = false;
    for (const tie of task.after) {
      let follower = Number.POSITIVE_INFINITY;
      for (const visit of moved)
        if (visit.task === tie.task) follower = Math.min(follower, visit.start);
      if (follower === Number.POSITIVE_INFINITY) continue;
      waitedFor = true;
      if (tie.fromStart) startLimit = Math.min(startLimit, beforeTie(tie, follower));
      else if (done) limit = Math.min(limit, beforeTie(tie, follower));
    }
    // What nothing waits for is looked at only where it goes before the first window.
    if (!waitedFor && moved[firstOf]!.start >= 0) continue;
    for (const at of own) {
      const visit = moved[at]!;
      if (settled.has(visit)) {
        limit = visit.start;
        continue;
      }
      const minutes = visitMinutes(task, visit.units);
      const latest = Math.min(limit - minutes, at === firstOf ? startLimit : limit);
      use(visit, -1);
      let best = visit.start;
      for (const slot of task.slots.toReversed()) {
        if (slot.end - minutes <= best) break;
        const from = Math.min(latest, slot.end - minutes);
        const floor = Math.max(slot.start, best);
        const start = latestAllFree(free, task.demands, from, minutes, floor);
        if (start >= slot.start && start > best) {
          best = start;
          break;
        }
      }
      moved[at] = { ...visit, start: best, end: best + minutes };
      use(moved[at], 1);
      limit = best;
    }
  }
  return moved;
}

/**
 * Outside work that leads to no inside work, put down anew from the first window on, chain by chain; what would then be
 * late, or end the plan later, stays where it is.
 */
function fromFirstWindow(problem: Problem, visits: readonly Visit[]): Visit[] {
  const { tasks, order } = problem;
  const settled = new Set(problem.pinned);
  const early = new Set(
    visits.flatMap((visit) => (visit.start < 0 && !settled.has(visit) ? visit.task : [])),
  );
  if (early.size === 0) return visits.slice();
  const ends = tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of visits) ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  const finish = Math.max(0, ...ends);
  let known = visits.slice();
  for (const chain of looseChains(problem)) {
    if (!chain.some((index) => early.has(index))) continue;
    const own = new Set(chain);
    const others = known.filter((visit) => !own.has(visit.task) || settled.has(visit));
    const board = new Board(problem);
    for (const visit of others) if (!settled.has(visit)) board.put(visit);
    const before = board.visits.length;
    for (const index of order) {
      const task = tasks[index]!;
      if (own.has(index) && ends[index]! > Number.NEGATIVE_INFINITY && board.ready(task))
        board.place({ ...task, earliest: Math.max(0, task.earliest) });
    }
    const placed = known.filter((visit) => own.has(visit.task));
    const units = (all: readonly Visit[]): number =>
      all.reduce((sum, visit) => sum + visit.units, 0);
    const anew = board.visits.slice(before);
    const good =
      units(anew) === units(placed.filter((visit) => !settled.has(visit))) &&
      anew.every(
        ({ task, end }) => end <= Math.max(tasks[task]!.due, ends[task]!) && end <= finish,
      );
    if (good) known = [...others, ...anew];
  }
  return known;
}

/** Outside tasks that lead to no inside work, those linked with one another together. */
function looseChains({ tasks, order }: Problem): number[][] {
  const leads = tasks.map((task) => !task.outside);
  for (const index of order.toReversed())
    if (tasks[index]!.after.some((tie) => leads[tie.task])) leads[index] = true;
  const seen = new Set<number>();
  return order.flatMap((first): number[][] => {
    if (leads[first] || seen.has(first)) return [];
    const chain: number[] = [];
    const open = [first];
    for (let index = open.pop(); index !== undefined; index = open.pop()) {
      if (leads[index] || seen.has(index)) continue;
      seen.add(index);
      chain.push(index);
      for (const tie of [...tasks[index]!.before, ...tasks[index]!.after]) open.push(tie.task);
    }
    return [chain];
  });
}
