import type { Instant } from '../../calendar/index.js';
import type { ConcreteSettings, Plan } from '../../model/index.js';
import type { PlanResult } from '../../tables/index.js';
import { curingDataOf } from './curing-data.js';
import { pourOf } from './curing-of-pour.js';
import type { ConcreteAnswer, LiftingRequest } from './types.js';

/** A gap after a finish that is so long is taken to be curing, where a link does not say what it is. */
const CURING_GAP = 12 * 60;

/** When each pour has cured: at the planned end of what is waited for, or at the moment given. */
export function concreteOf(
  read: PlanResult,
  settings: ConcreteSettings,
  { placements = [], pours = [] }: LiftingRequest,
): Omit<ConcreteAnswer, 'isExample'> {
  const data = curingDataOf(read, settings);
  const { plan } = read;
  const waitedFor = waitedForIn(plan);
  const ends = new Map<string, Instant>();
  for (const placement of placements)
    if (waitedFor.has(placement.activity))
      ends.set(
        placement.activity,
        Math.max(placement.to, ends.get(placement.activity) ?? placement.to),
      );
  for (const pour of pours) ends.set(pour.activity, pour.at);
  return {
    settings,
    unit: settings.model.model === 'temperature-time' ? '°C h' : 'h',
    pours: [...ends].map(([activity, at]) => ({
      ...pourOf(activity, at, waitedFor.get(activity) ?? [], data),
      gapMinutes: gapAfter(plan, activity),
    })),
    waitedFor: [...waitedFor.keys()],
  };
}

/** Activities whose curing something waits for, with what waits. */
function waitedForIn(plan: Plan): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const activity of plan.activities)
    for (const link of activity.after)
      if (link.cured || (link.from === 'finish' && link.gapMinutes >= CURING_GAP))
        found.set(link.activity, [...(found.get(link.activity) ?? []), activity.id]);
  return found;
}

/** The longest fixed gap that the plan keeps after an activity; null where it keeps none. */
function gapAfter(plan: Plan, activity: string): number | null {
  const gaps = plan.activities.flatMap((item) =>
    item.after.filter((link) => link.activity === activity && !link.cured && link.gapMinutes > 0),
  );
  return gaps.length > 0 ? Math.max(...gaps.map((link) => link.gapMinutes)) : null;
}
