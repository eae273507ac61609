import { boundsOf, unitsLeft, type Activity } from '../../model/index.js';

/**
 * The activities of each package, packages and activities in the order given; last those of other packages that make
 * some of it good, and so must be done in the same window.
 */
export function packagesIn(
  activities: readonly Activity[],
): ReadonlyMap<string, readonly Activity[]> {
  const packages = new Map<string, Activity[]>();
  for (const activity of activities) {
    const known = packages.get(activity.package);
    if (known) known.push(activity);
    else packages.set(activity.package, [activity]);
  }
  for (const [name, makers] of makersFrom(activities))
    packages.set(name, [...packages.get(name)!, ...makers]);
  return packages;
}

/** By package, what of other packages is bound to one window with some of it. */
function makersFrom(activities: readonly Activity[]): ReadonlyMap<string, readonly Activity[]> {
  const bounds = boundsOf(activities);
  if (bounds.length === 0) return new Map();
  const rows = new Map(activities.map((activity) => [activity.id, activity]));
  const makers = new Map<string, Set<Activity>>();
  for (const { activity, members } of bounds) {
    const opener = rows.get(activity)!;
    const some = members.map((id) => rows.get(id)!);
    // What makes good what was done before goes together, whichever of its packages is asked about.
    const asked = unitsLeft(opener.work) === 0 ? [opener, ...some] : [opener];
    for (const name of new Set(asked.map((item) => item.package)))
      for (const row of some) {
        if (row.package === name) continue;
        const known = makers.get(name);
        if (known) known.add(row);
        else makers.set(name, new Set([row]));
      }
  }
  return new Map([...makers].map(([name, some]) => [name, [...some]]));
}
