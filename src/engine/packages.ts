import { minutesInOneVisit, type Activity, type Needs } from '../model/index.js';
import type { PackageSummary } from './types.js';

/** What all the inside work of a package together asks for. */
function needsOfAll(activities: readonly Activity[]): Needs {
  const inside = activities.filter((one) => one.place === 'inside');
  return {
    isolation: [...new Set(inside.flatMap((one) => one.isolation))].sort(),
    loud: inside.some((one) => one.loud),
  };
}

/** The packages of a plan in the order of their first activity. A package's title is that of its first activity with one. */
export function packagesOf(
  activities: readonly Activity[],
  leftOut: ReadonlyMap<string, number>,
): readonly PackageSummary[] {
  const byPackage = new Map<string, Activity[]>();
  for (const one of activities) {
    const list = byPackage.get(one.package);
    if (list) list.push(one);
    else byPackage.set(one.package, [one]);
  }
  return [...byPackage].map(([id, own]) => ({
    id,
    title: own.find((one) => one.title !== '')?.title ?? id,
    activities: own.map((one) => one.id),
    needs: needsOfAll(own),
    minutes: own
      .filter((one) => one.place === 'inside')
      .reduce((sum, one) => sum + minutesInOneVisit(one.work), 0),
    rowsLeftOut: leftOut.get(id) ?? 0,
  }));
}
