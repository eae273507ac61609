import { minutesInOneVisit, type Activity } from '../../model/index.js';

const DAY_MINUTES = 1440;

/** As far as a longer window is looked at: the work end to end and two days, in whole days, a fortnight at most. */
export function reach(activities: readonly Activity[]): number {
  let minutes = 0;
  for (const activity of activities) {
    minutes += minutesInOneVisit(activity.work);
    for (const link of activity.after) minutes += link.gapMinutes;
  }
  return Math.min(14, Math.ceil(minutes / DAY_MINUTES) + 2) * DAY_MINUTES;
}
