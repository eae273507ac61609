import type { Placement } from '../../planner/fit/types.js';
import {
  needsKey,
  needsOf,
  type AccessWindow,
  type Activity,
  type Plan,
} from '../../model/index.js';

/** A placement in the window with the activity it does and the kind of needs that has. */
export interface Visit extends Placement {
  readonly activityRow: Activity;
  readonly key: string;
}

/**
 * The placements that lie in the window, in planned order.
 *
 * @param byLine Work on other lines is another kind, as each line has its own lead-in where they are granted one by one.
 * @throws {RangeError} When one names no activity.
 */
export function visitsOf(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  byLine: boolean,
): Visit[] {
  const rows = new Map(plan.activities.map((activity) => [activity.id, activity]));
  return placements
    .filter((placement) => placement.window === window.id)
    .map((placement) => {
      const activityRow = rows.get(placement.activity);
      if (!activityRow)
        throw new RangeError(`a placement names activity ${placement.activity}: not in the plan`);
      const needs = needsKey(needsOf(activityRow));
      const lines = linesNeeded(activityRow, window);
      return { ...placement, activityRow, key: byLine ? JSON.stringify([needs, lines]) : needs };
    })
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

/** The lines of the window that work needs: those of its row, or all. */
export function linesNeeded({ lines }: Activity, window: AccessWindow): readonly string[] {
  return lines.length === 0 ? window.lines : window.lines.filter((line) => lines.includes(line));
}
