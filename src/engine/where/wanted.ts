import { DAY, MINUTE, startOfLocalDay, weekdayOf, type Instant } from '../../calendar/index.js';
import type { Activity, Placement, Resource } from '../../model/index.js';
import { supplyOf } from '../../planner/problem/supply.js';

/** One resource in one week, Monday to Sunday, at the moment with the least to spare while it is wanted. */
export interface WantedWeek {
  /** Start of its Monday. */
  readonly week: Instant;
  readonly at: Instant;
  /** Wanted by the plan at that moment. */
  readonly wanted: number;
  /** There at that moment by the list of resources; null: it is not listed, and so not limited. */
  readonly held: number | null;
}

/** What placed work wants of one resource. */
export interface WantedResource {
  readonly resource: string;
  /** Weeks in which it is wanted, in order. */
  readonly weeks: readonly WantedWeek[];
}

/** What the placed work wants of each resource, week by week, against what is there. Resources by name as listed. */
export function wantedByWeek(
  placements: readonly Placement[],
  activities: readonly Activity[],
  resources: readonly Resource[],
  zone: string,
): WantedResource[] {
  const byId = new Map(activities.map((activity) => [activity.id, activity]));
  const changes = new Map<string, Map<Instant, number>>();
  for (const { activity, from, to } of placements)
    for (const { resource, amount } of byId.get(activity)?.resources ?? []) {
      if (amount <= 0 || to <= from) continue;
      let own = changes.get(resource);
      if (!own) changes.set(resource, (own = new Map<Instant, number>()));
      own.set(from, (own.get(from) ?? 0) + amount);
      own.set(to, (own.get(to) ?? 0) - amount);
    }
  const listed = new Map(resources.map((resource) => [resource.id, resource]));
  const names = [
    ...resources.flatMap(({ id }) => (changes.has(id) ? [id] : [])),
    ...[...changes.keys()].filter((id) => !listed.has(id)).sort(),
  ];
  return names.map((resource) => ({
    resource,
    weeks: weeksOf(changes.get(resource)!, listed.get(resource), zone),
  }));
}

function weeksOf(
  changes: ReadonlyMap<Instant, number>,
  resource: Resource | undefined,
  zone: string,
): WantedWeek[] {
  const times = [...changes.keys()].sort((a, b) => a - b);
  const [first, last] = [times[0]!, times.at(-1)!];
  const supply = resource && supplyOf(resource, zone, 0, { start: first - DAY, end: last + DAY });
  const turns = (supply?.at ?? []).map((at) => at * MINUTE).filter((at) => at > first && at < last);
  const weeks = new Map<Instant, WantedWeek>();
  let wanted = 0;
  let level = 0;
  for (const at of [...new Set([...times, ...turns, ...mondays(first, last, zone)])].sort(
    (a, b) => a - b,
  )) {
    wanted += changes.get(at) ?? 0;
    if (wanted <= 0) continue;
    while (supply && level + 1 < supply.at.length && supply.at[level + 1]! * MINUTE <= at)
      level += 1;
    const held = supply ? supply.free[level]! : null;
    const week = mondayOf(at, zone);
    const known = weeks.get(week);
    if (!known || spare(wanted, held) < spare(known.wanted, known.held))
      weeks.set(week, { week, at, wanted, held });
  }
  return [...weeks.values()];
}

/** The less, the tighter. Of what is not limited the most wanted is. */
const spare = (wanted: number, held: number | null): number => (held ?? 0) - wanted;

function mondayOf(at: Instant, zone: string): Instant {
  return startOfLocalDay(at, zone, 1 - weekdayOf(at, zone));
}

/** Every Monday's start within a stretch. */
function mondays(from: Instant, to: Instant, zone: string): Instant[] {
  const found: Instant[] = [];
  for (let at = startOfLocalDay(mondayOf(from, zone), zone, 7); at < to;) {
    found.push(at);
    at = startOfLocalDay(at, zone, 7);
  }
  return found;
}
