import { addMinutes, minutesBetween, type Instant } from '../../src/calendar/index.js';
import type { Allocation } from '../../src/engine/index.js';
import type { Activity, UnitWork } from '../../src/model/index.js';

/** An activity of repeated units. */
export type RepeatedActivity = Activity & { readonly work: UnitWork };

/** One visit with the units in place at its end. */
export interface Visit {
  /** From 1, in time order. */
  readonly number: number;
  readonly window: string | null;
  readonly from: Instant;
  readonly to: Instant;
  readonly units: number;
  readonly cumulative: number;
}

/** A moment and the units in place then. */
export interface UnitPoint {
  readonly at: Instant;
  readonly units: number;
}

/** The moment the work, or its package, has to be finished, and the float to it. */
export interface UnitDeadline {
  readonly due: Instant;
  readonly of: 'activity' | 'package';
  /** Null while some of the work is not placed. */
  readonly floatMinutes: number | null;
}

/** The activities of repeated units, in plan order. */
export function repeatedOf(activities: readonly Activity[]): RepeatedActivity[] {
  return activities.filter(
    (activity): activity is RepeatedActivity => activity.work.kind === 'units',
  );
}

/** The visits of one activity in time order; `cumulative` counts on from the units done before the plan. */
export function visitsOf(activity: RepeatedActivity, allocation: Allocation): Visit[] {
  let cumulative = activity.work.done;
  return allocation.placements
    .filter((placement) => placement.activity === activity.id)
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .map(({ window, from, to, units = 0 }, index) => {
      cumulative += units;
      return { number: index + 1, window, from, to, units, cumulative };
    });
}

/**
 * The line of units in place over time. It rises only inside a visit, after set-up and before make-safe, and keeps
 * its height between visits.
 */
export function unitLine(work: UnitWork, visits: readonly Visit[]): UnitPoint[] {
  return visits.flatMap(({ from, to, units, cumulative }) => {
    const begun = addMinutes(from, work.setUpMinutes);
    const ended = addMinutes(to, -work.makeSafeMinutes);
    // A visit too short for both has been shaped by hand: the rise is then over all of it.
    const rise = begun < ended ? [begun, ended] : [from, to];
    return [
      { at: from, units: cumulative - units },
      { at: rise[0]!, units: cumulative - units },
      { at: rise[1]!, units: cumulative },
      { at: to, units: cumulative },
    ];
  });
}

/** The activity's own key date, or else its package's; null where there is neither. */
export function deadlineOf(
  activity: RepeatedActivity,
  visits: readonly Visit[],
  allocation: Allocation,
): UnitDeadline | null {
  if (activity.keyDate !== undefined) {
    const last = visits.at(-1);
    const all = last !== undefined && last.cumulative >= activity.work.units;
    return {
      due: activity.keyDate,
      of: 'activity',
      floatMinutes: all ? minutesBetween(last.to, activity.keyDate) : null,
    };
  }
  const date = allocation.keyDates.find((forecast) => forecast.package === activity.package);
  return date ? { due: date.due, of: 'package', floatMinutes: date.floatMinutes } : null;
}
