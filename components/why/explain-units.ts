import { durationText } from '../../src/calendar/index.js';
import type { Allocation } from '../../src/engine/types.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { momentText } from '../shared/format.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';

/** Units of a repeated work in place after all its visits, visit by visit. */
export function explainUnitsPlaced(
  allocation: Allocation,
  activity: Activity,
  windows: readonly AccessWindow[],
  zone: string,
): Explanation {
  const words = explainWords();
  const { plan } = words;
  const { work } = activity;
  if (work.kind !== 'units') throw new RangeError(`${activity.id} is not repeated work`);
  const visits = allocation.placements
    .filter((placement) => placement.activity === activity.id)
    .sort((a, b) => a.from - b.from);
  const placed = visits.reduce((sum, placement) => sum + (placement.units ?? 0), work.done);
  return {
    title: plan.unitsInPlace(activity.id, activity.title),
    figure: plan.unitsOf(placed, work.units),
    tone: placed >= work.units ? 'good' : 'bad',
    sentence: plan.doneBefore(work.done),
    rowsTitle: plan.visitByVisit,
    rows: visits.map((visit): ExplanationRow => {
      const window = windows.find((each) => each.id === visit.window);
      return {
        label: visit.window ?? plan.outsideVisit,
        figure: `+${visit.units ?? 0}`,
        note: `${momentText(visit.from, window?.zone ?? zone)}, ${durationText((visit.to - visit.from) / 60_000)}`,
        ...(visit.window === null ? {} : { place: { to: 'window' as const, id: visit.window } }),
      };
    }),
    links: [
      { text: words.activityInSheet(activity.id), place: { to: 'activity', id: activity.id } },
    ],
  };
}
