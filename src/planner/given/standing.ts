import { unitsLeft, type Placement, type Plan, type Worded } from '../../model/index.js';
import { sayRepair } from '../repair/repair-sentences.js';

/** The pieces of a plan made before, parted by whether there is still something to be done where they lie. */
export interface Standing {
  readonly standing: readonly Placement[];
  /** Of work that is not in the plan or is finished, in a window that is not there or withdrawn, of units now in place. */
  readonly gone: readonly (Worded & {
    readonly placement: Placement;
    readonly code: string;
  })[];
}

/**
 * Parts the pieces of a plan made before. Where less is left of repeated work than is placed, its first pieces are those
 * that were done.
 */
export function standingOf(plan: Plan, placements: readonly Placement[]): Standing {
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const windows = new Map(plan.windows.map((window) => [window.id, window]));
  const left = new Map(plan.activities.map((activity) => [activity.id, unitsLeft(activity.work)]));
  const standing = new Set<Placement>();
  const gone: Standing['gone'][number][] = [];
  for (const placement of placements.toSorted((a, b) => b.from - a.from || b.to - a.to)) {
    const { activity: id, window: where, units = 1 } = placement;
    const say = (code: string, worded: Worded): void =>
      void gone.push({ placement, code, ...worded });
    const activity = activities.get(id);
    const window = where === null ? undefined : windows.get(where);
    const still = left.get(id) ?? 0;
    if (!activity) say('activity-gone', sayRepair('no-longer-in-plan', { activity: id }));
    else if (where !== null && !window)
      say('window-gone', sayRepair('window-not-there', { activity: id, window: where }));
    else if (window?.status === 'withdrawn')
      say('withdrawn', sayRepair('in-withdrawn', { activity: id, window: window.id }));
    else if (still === 0)
      say(
        'already-done',
        unitsLeft(activity.work) === 0
          ? sayRepair('nothing-left-to-do', { activity: id })
          : sayRepair('left-placed-later', { activity: id, window: where }),
      );
    else if (units > still)
      say(
        'units',
        sayRepair('given-in-and-left', { activity: id, units, window: where, left: still }),
      );
    else {
      standing.add(placement);
      left.set(id, still - units);
    }
  }
  return {
    standing: placements.filter((placement) => standing.has(placement)),
    gone: gone.reverse(),
  };
}
