import { MINUTE } from '../../calendar/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { AccessWindow, Activity, Availability, Plan, Resource } from '../../model/index.js';
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
    .filter((one) => ids.has(one.id))
    .map((one): Activity => {
      const waits = one.after.filter((link) => !ids.has(link.activity));
      return {
        ...settled(one, waits, others),
        after: one.after.filter((link) => ids.has(link.activity)),
        work:
          one.work.kind === 'whole'
            ? one.work
            : { ...one.work, units: units.get(one.id)!, done: 0 },
        window: window.id,
      };
    });
  const found = allocate(
    {
      ...plan,
      windows: [window],
      activities,
      resources: lessUsed(plan, others, (one) => one.from < window.end && one.to > window.start),
    },
    { ...time, effort: Math.min(time.effort, REFIT_EFFORT), first: 'finish' },
  );
  return { placements: found.placements, unplaced: found.unplaced };
}

/** The activity bound to a date in place of links to work that is placed. */
export function settled(
  one: Activity,
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
  if (dates.length === 0) return one;
  return { ...one, notBefore: Math.max(one.notBefore ?? -Infinity, ...dates) };
}

/** What is there of each resource beside what some placements use. */
export function lessUsed(
  plan: Plan,
  placements: readonly Placement[],
  counts: (one: Placement) => boolean,
): readonly Resource[] {
  const needs = new Map(plan.activities.map((one) => [one.id, one.resources]));
  const used = placements.filter(counts);
  return plan.resources.map((resource) => {
    const taken = used.flatMap((one): Availability[] => {
      const amount = needs.get(one.activity)?.find((need) => need.resource === resource.id)?.amount;
      return amount ? [{ capacity: -amount, from: one.from, to: one.to }] : [];
    });
    return taken.length === 0
      ? resource
      : { ...resource, availability: [...resource.availability, ...taken] };
  });
}
