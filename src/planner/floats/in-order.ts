import type { Problem, Visit } from '../fit/index.js';

/**
 * Visits in their order of time, and what waits for another after it, though both begin at once and it is over sooner.
 * The order of rows decides only between visits that are otherwise alike.
 */
export function inOrder({ tasks, order }: Problem, visits: readonly Visit[]): Visit[] {
  const depth = tasks.map(() => 0);
  for (const index of order)
    for (const tie of tasks[index]!.after)
      depth[tie.task] = Math.max(depth[tie.task]!, depth[index]! + 1);
  return visits.toSorted(
    (a, b) =>
      a.start - b.start ||
      depth[a.task]! - depth[b.task]! ||
      a.end - b.end ||
      tasks[a.task]!.rank - tasks[b.task]!.rank,
  );
}
