import { durationText } from '../../src/calendar/index.js';
import type { Allocation } from '../../src/engine/types.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { momentText } from '../shared/format.js';
import type { Explanation, ExplanationRow } from './explanation.js';

/** Units of a repeated work in place after all its visits, visit by visit. */
export function explainUnitsPlaced(
  allocation: Allocation,
  activity: Activity,
  windows: readonly AccessWindow[],
  zone: string,
): Explanation {
  const { work } = activity;
  if (work.kind !== 'units') throw new RangeError(`${activity.id} is not repeated work`);
  const visits = allocation.placements
    .filter((one) => one.activity === activity.id)
    .sort((a, b) => a.from - b.from);
  const placed = visits.reduce((sum, one) => sum + (one.units ?? 0), work.done);
  return {
    title: `Units in place, ${activity.id} ${activity.title}`,
    figure: `${placed} of ${work.units}`,
    tone: placed >= work.units ? 'good' : 'bad',
    sentence: `${work.done} in place before the plan, and what each visit adds.`,
    rowsTitle: 'Visit by visit',
    rows: visits.map((one): ExplanationRow => {
      const window = windows.find((each) => each.id === one.window);
      return {
        label: one.window ?? 'Outside',
        figure: `+${one.units ?? 0}`,
        note: `${momentText(one.from, window?.zone ?? zone)}, ${durationText((one.to - one.from) / 60_000)}`,
        ...(one.window === null ? {} : { place: { to: 'window' as const, id: one.window } }),
      };
    }),
    links: [
      { text: `Activity ${activity.id} in the sheet`, place: { to: 'activity', id: activity.id } },
    ],
  };
}
