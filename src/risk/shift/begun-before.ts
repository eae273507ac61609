import type { Instant } from '../../calendar/index.js';
import { unitsLeft, type AccessWindow, type Activity, type Plan } from '../../model/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { Actual, HandbackOptions } from '../types.js';

/**
 * Activities that may have opened the line before this shift: those that an earlier shift recorded, those recorded in this one though
 * none of it is planned here, and those planned in an earlier window. Whether that shift did them all nobody need have said:
 * what makes them good is kept all the same.
 */
export function begunBefore(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  { at, actuals = [], begunBefore: told = [] }: HandbackOptions,
): ReadonlySet<string> {
  const earlier = new Set(
    plan.windows.filter((item) => item.start < window.start).map((item) => item.id),
  );
  return new Set([
    ...told,
    ...begunBy(plan.activities, actuals, at ?? -Infinity),
    ...placements
      .filter((placement) => placement.window !== null && earlier.has(placement.window))
      .map((placement) => placement.activity),
  ]);
}

/** Activities that by what was seen had begun at a moment; of repeated work those whose last unit was in place. */
export function begunBy(
  activities: readonly Activity[],
  actuals: readonly Actual[],
  at: Instant,
): readonly string[] {
  const rows = new Map(activities.map((activity) => [activity.id, activity]));
  const past = (moment: Instant | undefined): boolean => moment !== undefined && moment <= at;
  return actuals.flatMap(({ activity, startedAt, finishedAt, unitsDone = 0 }) => {
    const row = activity === undefined ? undefined : rows.get(activity);
    if (!row) return [];
    const begun =
      row.work.kind === 'whole'
        ? past(startedAt) || past(finishedAt)
        : past(finishedAt) || unitsDone >= unitsLeft(row.work);
    return begun ? [row.id] : [];
  });
}
