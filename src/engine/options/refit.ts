import { MINUTE, unionOf } from '../../calendar/index.js';
import type { Placement } from '../../planner/fit/types.js';
import {
  samePlace,
  type AccessWindow,
  type Activity,
  type Availability,
  type Plan,
  type Resource,
} from '../../model/index.js';
import { allocate } from '../../planner/search/index.js';
import type { Planned, SearchTime } from './plans.js';

/** Effort with which one window's work is planned anew at the most: it is small, and every option asks for it. */
const REFIT_EFFORT = 0.1;

/** One window's own work planned anew so that it is clear as early as can be, everything else staying as it is. */
export function refit(
  plan: Plan,
  window: AccessWindow,
  units: ReadonlyMap<string, number>,
  others: readonly Placement[],
  time: SearchTime,
): Pick<Planned, 'placements' | 'unplaced'> {
  const ids = new Set(units.keys());
  const activities = plan.activities
    .filter((activity) => ids.has(activity.id))
    .map((activity): Activity => {
      const waits = activity.after.filter((link) => !ids.has(link.activity));
      return {
        ...settled(activity, waits, others),
        after: activity.after.filter((link) => ids.has(link.activity)),
        work:
          activity.work.kind === 'whole'
            ? activity.work
            : { ...activity.work, units: units.get(activity.id)!, done: 0 },
        window: window.id,
      };
    });
  const found = allocate(
    beside(
      { ...plan, windows: [window], activities },
      plan,
      others,
      (placement) => placement.from < window.end && placement.to > window.start,
    ),
    { ...time, effort: Math.min(time.effort, REFIT_EFFORT), first: 'finish' },
  );
  return { placements: found.placements, unplaced: found.unplaced };
}

/** The activity bound to a date in place of links to work that is placed. */
export function settled(
  activity: Activity,
  links: Activity['after'],
  placements: readonly Placement[],
): Activity {
  const dates = links.flatMap((link) => {
    const own = placements.filter((each) => each.activity === link.activity);
    if (own.length === 0) return [];
    const from =
      link.from === 'start'
        ? Math.min(...own.map((each) => each.from))
        : Math.max(...own.map((each) => each.to));
    return [from + link.gapMinutes * MINUTE];
  });
  if (dates.length === 0) return activity;
  return { ...activity, notBefore: Math.max(activity.notBefore ?? -Infinity, ...dates) };
}

/** Some of a plan with what there is of its plant, people and places beside the placements that stay and count. */
export function beside(
  part: Plan,
  whole: Plan,
  placements: readonly Placement[],
  counts: (placement: Placement) => boolean,
): Plan {
  const staying = placements.filter(counts);
  if (staying.length === 0) return part;
  return keptClear({ ...part, resources: lessUsed(whole, staying) }, whole, staying);
}

/** What is there of each resource beside what some placements use. */
function lessUsed(plan: Plan, used: readonly Placement[]): readonly Resource[] {
  const needs = new Map(plan.activities.map((activity) => [activity.id, activity.resources]));
  return plan.resources.map((resource) => {
    const taken = used.flatMap((placement): Availability[] => {
      const amount = needs
        .get(placement.activity)
        ?.find((need) => need.resource === resource.id)?.amount;
      return amount ? [{ capacity: -amount, from: placement.from, to: placement.to }] : [];
    });
    return taken.length === 0
      ? resource
      : { ...resource, availability: [...resource.availability, ...taken] };
  });
}

/** The plan in which no work goes on while work that stays has its place, one of the two alone, or is the same work. */
function keptClear(part: Plan, whole: Plan, staying: readonly Placement[]): Plan {
  const rows = new Map(whole.activities.map((activity) => [activity.id, activity]));
  const places: Resource[] = [];
  const activities = part.activities.map((item): Activity => {
    const shut = staying.filter(({ activity }) => {
      const other = rows.get(activity);
      if (!other || other.id === item.id) return other !== undefined;
      return (item.occupies === 'alone' || other.occupies === 'alone') && samePlace(item, other);
    });
    if (shut.length === 0) return item;
    const id = `room for ${item.id} beside work that stays`;
    // Visits that stay may overlap: however many there are, there is no room.
    const taken = unionOf(shut.map(({ from, to }) => ({ start: from, end: to })));
    places.push({
      id,
      availability: [
        { capacity: 1 },
        ...taken.map(({ start, end }) => ({ capacity: -1, from: start, to: end })),
      ],
    });
    return { ...item, resources: [...item.resources, { resource: id, amount: 1 }] };
  });
  return places.length === 0
    ? part
    : { ...part, activities, resources: [...part.resources, ...places] };
}
