import {
  beforeTie,
  copyOf,
  latestFree,
  take,
  visitMinutes,
  type Problem,
  type Visit,
} from '../fit/index.js';

/**
 * Moves outside work as late as what follows it allows: rigged at 23:00 for a start at 01:00, not the week before.
 * Work that nothing waits for stays where it is. Nothing else moves and no value of the plan gets worse.
 */
export function outsideLate(problem: Problem, visits: readonly Visit[]): Visit[] {
  const moved = visits.slice();
  const free = problem.supplies.map((supply) => copyOf(supply.profile));
  const use = (visit: Visit, sign: number): void => {
    for (const { supply, amount } of problem.tasks[visit.task]!.demands)
      take(free[supply]!, sign * amount, visit.start, visit.end);
  };
  for (const visit of visits) use(visit, 1);
  const finish = Math.max(...visits.map((visit) => visit.end));
  const settled = new Set(problem.pinned);
  const order = problem.order.toReversed();
  for (const index of order) {
    const task = problem.tasks[index]!;
    if (!task.outside || task.after.length === 0) continue;
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
    if (!waitedFor) continue;
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
        let start = Math.min(latest, slot.end - minutes);
        for (let settled = false; !settled && start > best;) {
          settled = true;
          for (const { supply, amount } of task.demands) {
            const sooner = latestFree(free[supply]!, amount, start, minutes);
            if (sooner < start) {
              start = sooner;
              settled = false;
            }
          }
        }
        if (start >= slot.start && start > best) {
          best = start;
          break;
        }
      }
      moved[at] = { ...visit, start: best, end: best + minutes };
      use(moved[at]!, 1);
      limit = best;
    }
  }
  return moved;
}
