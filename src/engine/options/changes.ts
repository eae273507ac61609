import { editBetween } from '../../edits/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { Phrase, Plan, PlanDocument } from '../../model/index.js';
import type { KeyDateForecast } from '../../planner/search/types.js';
import type { Draft } from './draft.js';
import { unitsIn } from './plans.js';
import { sayOption } from './say-option.js';
import type { Situation } from './situation.js';
import type { KeyDateChange, MovedWork } from './types.js';

/** Work that is in another window than planned, by activity and window. */
export function movedIn(
  placements: readonly Placement[],
  plan: Plan,
  before: readonly Placement[],
): readonly MovedWork[] {
  const titles = new Map(plan.activities.map((activity) => [activity.id, activity.title]));
  const windows = [...plan.windows.map((window) => window.id)];
  return windows
    .flatMap((window) => {
      const was = unitsIn(window, before);
      return [...unitsIn(window, placements)].flatMap(([activity, units]): MovedWork[] => {
        const more = units - (was.get(activity) ?? 0);
        const first = placements
          .filter((placement) => placement.window === window && placement.activity === activity)
          .sort((a, b) => a.from - b.from)[0]!;
        return more > 0
          ? [{ activity, title: titles.get(activity) ?? '', units: more, window, from: first.from }]
          : [];
      });
    })
    .sort((a, b) => a.from - b.from);
}

/** Which key dates are met as planned and missed so, or the other way round. */
export const dateNotes = (
  changes: readonly KeyDateChange[],
  zone: string,
  sometimes = false,
): readonly Phrase[] =>
  changes
    .filter(({ before, after }) => before.met !== after.met)
    .map(({ package: name, due, after }) =>
      sayOption('key-date-turns', {
        package: name,
        moment: { at: due, zone },
        missed: !after.met,
        sometimes,
      }),
    );

/** That the price leaves out the booking of windows of the plan that hold work now, and none as planned. */
export function addedNote(
  placements: readonly Placement[],
  { plan, planned }: Pick<Situation, 'plan' | 'planned'>,
): readonly Phrase[] {
  const [now, before] = [placements, planned.placements].map(
    (all) => new Set(all.map((placement) => placement.window)),
  );
  const windows = plan.windows.flatMap(({ id }) => (now!.has(id) && !before!.has(id) ? [id] : []));
  return windows.length === 0 ? [] : [sayOption('windows-added', { windows })];
}

/** Key dates that an option serves otherwise than planned. */
export function changedDates(
  after: readonly KeyDateForecast[],
  before: readonly KeyDateForecast[],
): readonly KeyDateChange[] {
  return after.flatMap((now): KeyDateChange[] => {
    const was = before.find(
      (forecast) => forecast.package === now.package && forecast.due === now.due,
    );
    return was && (was.met !== now.met || was.forecast !== now.forecast)
      ? [{ package: now.package, due: now.due, before: was, after: now }]
      : [];
  });
}

/** The edit that makes an option's document; null where it changes nothing. */
export function editOf(draft: Draft, document: PlanDocument) {
  const { id, name } = draft;
  const edit = editBetween(document, draft.document, typeof name === 'string' ? name : id);
  return edit.changes.length === 0 ? null : edit;
}
