import { minutesBetween } from '../calendar/index.js';
import type { AccessWindow, Activity, Resource } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';

/** So many of a resource that stand by until the line is given back. */
export interface Standing {
  readonly resource: Resource;
  readonly amount: number;
  /** Minutes from the window's start to its booked end. */
  readonly bookedMinutes: number;
}

export interface StandingInputs {
  readonly resources: readonly Resource[];
  readonly placements?: readonly Placement[];
  readonly activities?: readonly Activity[];
}

/**
 * What plant and labour an overrun keeps standing.
 *
 * With placements and activities: the most of each resource in use at once by work placed in the window; it is taken
 * to stay until handback. Without: all there is of each resource at the booked end.
 */
export function standingIn(
  window: AccessWindow,
  inputs: StandingInputs,
  note: (text: string) => void,
): readonly Standing[] {
  const bookedMinutes = minutesBetween(window.start, window.end);
  const { placements, activities } = inputs;
  const planned = placements !== undefined && activities !== undefined;
  if (!planned && inputs.resources.some((one) => one.ratePerHour !== undefined))
    note(
      'No plan of the work was given, so everything with a rate that is there at the booked end is taken to stand by.',
    );
  const amounts = planned
    ? peakUse(window, placements, activities)
    : new Map(inputs.resources.map((one) => [one.id, capacityAtEnd(one, window)]));
  const standing: Standing[] = [];
  for (const [id, amount] of amounts) {
    const resource = inputs.resources.find((one) => one.id === id);
    if (amount === 0) continue;
    if (resource?.ratePerHour === undefined)
      note(`${id} has no rate an hour, so its standing time is priced at nothing.`);
    else if (!(resource.ratePerHour >= 0 && resource.ratePerHour < Infinity))
      throw new RangeError(`${id} has a rate an hour of ${resource.ratePerHour}`);
    else standing.push({ resource, amount, bookedMinutes });
  }
  return standing.sort((a, b) => (a.resource.id < b.resource.id ? -1 : 1));
}

function capacityAtEnd(resource: Resource, window: AccessWindow): number {
  return resource.availability
    .filter((row) => (row.from ?? -Infinity) < window.end && window.end <= (row.to ?? Infinity))
    .reduce((sum, row) => sum + row.capacity, 0);
}

/** The most of each resource in use at one moment. */
function peakUse(
  window: AccessWindow,
  placements: readonly Placement[],
  activities: readonly Activity[],
): Map<string, number> {
  const byId = new Map(activities.map((one) => [one.id, one]));
  const changes = new Map<string, { at: number; by: number }[]>();
  for (const placement of placements) {
    if (placement.window !== window.id || placement.from >= placement.to) continue;
    for (const demand of byId.get(placement.activity)?.resources ?? []) {
      const list = changes.get(demand.resource) ?? [];
      list.push(
        { at: placement.from, by: demand.amount },
        { at: placement.to, by: -demand.amount },
      );
      changes.set(demand.resource, list);
    }
  }
  const peaks = new Map<string, number>();
  for (const [resource, list] of changes) {
    let level = 0;
    let peak = 0;
    // At one moment, what ends makes room for what begins.
    for (const change of list.sort((a, b) => a.at - b.at || a.by - b.by)) {
      level += change.by;
      peak = Math.max(peak, level);
    }
    peaks.set(resource, peak);
  }
  return peaks;
}
