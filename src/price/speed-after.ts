import type { Instant } from '../calendar/index.js';
import type { AccessWindow, Activity, SpeedLimit } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';
import { speedLimitsAt } from '../risk/index.js';

/** A speed restriction that planned work leaves at handback. */
export interface SpeedLeft {
  readonly activity: string;
  readonly limit: SpeedLimit;
  /** The later work that lifts it, and when that finishes; null: none is planned. */
  readonly liftedBy: string | null;
  readonly until: Instant | null;
}

/** `50 km/h`. */
export const speedText = ({ limit }: SpeedLeft): string => `${limit.value} ${limit.unit}`;

/** Speed restrictions left by the work of a window and not lifted by later work in the same window. */
export function speedLeftBy(
  window: AccessWindow,
  activities: readonly Activity[],
  placements: readonly Placement[],
): readonly SpeedLeft[] {
  const here = new Set(
    placements
      .filter((placement) => placement.window === window.id)
      .map((placement) => placement.activity),
  );
  return speedLimitsAt(activities, placements, window.end).flatMap(({ activity, lifted }) =>
    !here.has(activity.id) || (lifted && lifted.at <= window.end)
      ? []
      : [
          {
            activity: activity.id,
            limit: activity.speedAfter!,
            liftedBy: lifted?.activity ?? null,
            until: lifted?.at ?? null,
          },
        ],
  );
}
