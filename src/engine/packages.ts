import { minutesInOneVisit, type Activity, type Needs } from '../model/index.js';
import type { PackageSummary } from './types.js';

const none: readonly string[] = [];

/** What inside work together asks for. */
function needsOfAll(inside: readonly Activity[]): Needs {
  const sections = new Set<string>();
  for (const { isolation } of inside) for (const section of isolation) sections.add(section);
  return {
    isolation: sections.size === 0 ? none : [...sections].sort(),
    loud: inside.some((activity) => activity.loud),
  };
}

/** What is told of a package of activities in file order. Its title is that of its first activity with one. */
export function packageOf(
  id: string,
  own: readonly Activity[],
  rowsLeftOut: number,
): PackageSummary {
  const inside = own.filter((activity) => activity.place === 'inside');
  return {
    id,
    title: own.find((activity) => activity.title !== '')?.title ?? id,
    activities: own.map((activity) => activity.id),
    needs: needsOfAll(inside),
    minutes: inside.reduce((sum, activity) => sum + minutesInOneVisit(activity.work), 0),
    rowsLeftOut,
  };
}
