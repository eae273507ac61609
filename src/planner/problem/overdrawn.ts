import { intersect, unionOf, type IntervalSet } from '../../calendar/index.js';
import { areaFree, mostFree } from './profile.js';
import { visitMinutes, type Problem, type Task } from './problem.js';

/** The tasks' slots from `from` on, as stretches that do not overlap. */
function stretchesOf(tasks: readonly Task[], from: number): IntervalSet {
  return intersect(unionOf(tasks.flatMap((task) => task.slots)), [
    { start: from, end: Number.POSITIVE_INFINITY },
  ]);
}

/**
 * Minutes by which the inside work asks more of some resource than there is of it in the usable time, whatever the
 * order; 0 where this proves nothing. That many minutes at the least must be added.
 *
 * @param starts The earliest start of each task.
 */
export function overdrawnMinutes(problem: Problem, starts: readonly number[]): number {
  let worst = 0;
  problem.supplies.forEach(({ profile }, supply) => {
    const demands = problem.tasks.flatMap((task) =>
      task.outside
        ? []
        : task.demands
            .filter((demand) => demand.supply === supply)
            .map(({ amount }) => ({ task, amount, minutes: visitMinutes(task, task.units) })),
    );
    if (demands.length < 2) return;
    const from = Math.min(...demands.map(({ task }) => starts[task.index]!));
    const stretches = stretchesOf(
      demands.map(({ task }) => task),
      from,
    );
    const level = Math.max(
      0,
      ...stretches.map((stretch) => mostFree(profile, stretch.start, stretch.end)),
    );
    if (level === 0) return;
    const asked = demands.reduce((sum, item) => sum + item.amount * item.minutes, 0);
    const there = stretches.reduce(
      (sum, interval) => sum + areaFree(profile, interval.start, interval.end),
      0,
    );
    // Those that need more than half of what there ever is come one after another.
    const single = demands.filter((demand) => 2 * demand.amount > level);
    const inTurn = single.reduce((sum, item) => sum + item.minutes, 0);
    const time = stretchesOf(
      single.map(({ task }) => task),
      from,
    ).reduce((sum, interval) => sum + interval.end - interval.start, 0);
    worst = Math.max(worst, Math.ceil((asked - there) / level), inTurn - time);
  });
  return worst;
}
