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

/** What is told of a package of activities in file order. Its title is that of its first activity with one. */
export function packageOf(
  id: string,
  own: readonly Activity[],
  rowsLeftOut: number,
): PackageSummary {
  return {
    id,
    title: own.find((one) => one.title !== '')?.title ?? id,
    activities: own.map((one) => one.id),
    needs: needsOfAll(own),
    minutes: own
      .filter((one) => one.place === 'inside')
      .reduce((sum, one) => sum + minutesInOneVisit(one.work), 0),
    rowsLeftOut,
  };
}
