import type { Instant } from '../calendar/index.js';
import { samePlace, type AccessWindow, type Activity, type SpeedLimit } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';

/** A speed limit that planned work leaves on the line when its window is given back. */
export interface SpeedLeft {
  readonly activity: string;
  readonly limit: SpeedLimit;
  /** The later work at the same place that lifts it, and when it ends; null: none is planned. */
  readonly liftedBy: string | null;
  readonly until: Instant | null;
}

/** The limits that the work of a window leaves behind: those that no later work of the same window lifts. */
export function speedLeftBy(
  window: AccessWindow,
  activities: readonly Activity[],
  placements: readonly Placement[],
): readonly SpeedLeft[] {
  const byId = new Map(activities.map((one) => [one.id, one]));
  return activities.flatMap((activity): SpeedLeft[] => {
    const { speedAfter } = activity;
    if (speedAfter === undefined || activity.place !== 'inside') return [];
    const here = placements.filter(
      (one) => one.activity === activity.id && one.window === window.id,
    );
    if (here.length === 0) return [];
    const end = Math.max(...here.map((one) => one.to));
    const later = placements
      .filter((one) => {
        const other = byId.get(one.activity);
        return (
          other !== undefined &&
          other.id !== activity.id &&
          other.speedAfter === undefined &&
          one.from >= end &&
          samePlace(activity, other)
        );
      })
      .sort((a, b) => a.to - b.to)[0];
    if (later?.window === window.id) return [];
    return [
      {
        activity: activity.id,
        limit: speedAfter,
        liftedBy: later?.activity ?? null,
        until: later?.to ?? null,
      },
    ];
  });
}
