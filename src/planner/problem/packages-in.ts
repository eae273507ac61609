import type { Activity } from '../../model/index.js';

/** The activities of each package, packages and activities in the order given. */
export function packagesIn(
  activities: readonly Activity[],
): ReadonlyMap<string, readonly Activity[]> {
  const packages = new Map<string, Activity[]>();
  for (const activity of activities) {
    const known = packages.get(activity.package);
    if (known) known.push(activity);
    else packages.set(activity.package, [activity]);
  }
  return packages;
}
