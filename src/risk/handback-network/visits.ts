import type { Instant } from '../../calendar/index.js';
import type { Placement } from '../../planner/fit/types.js';
import {
  needsKey,
  needsOf,
  type AccessWindow,
  type Activity,
  type Needs,
  type Plan,
} from '../../model/index.js';

/** A placement in the window with the activity it does and the kind of needs that has. */
export interface Visit extends Placement {
  readonly activityRow: Activity;
  readonly key: string;
}

/** The placements that lie in the window, in planned order. @throws {RangeError} When one names no activity. */
export function visitsOf(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
): Visit[] {
  const rows = new Map(plan.activities.map((one) => [one.id, one]));
  return placements
    .filter((one) => one.window === window.id)
    .map((one) => {
      const activityRow = rows.get(one.activity);
      if (!activityRow)
        throw new RangeError(`a placement names activity ${one.activity}: not in the plan`);
      return { ...one, activityRow, key: needsKey(needsOf(activityRow)) };
    })
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

/** When the sections that the work needs may first be isolated. */
export function isolationFrom(window: AccessWindow, needs: Needs): Instant {
  return window.isolation
    .filter((one) => needs.isolation.includes(one.section))
    .reduce((latest, one) => Math.max(latest, one.during?.start ?? window.start), window.start);
}
