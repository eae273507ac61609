import { stretchesOf } from './bands.js';
import type { Clock } from './clock.js';
import type { ReportFault } from './types.js';
import type { Availability, Instant, Resource, Stretch } from './plan-types.js';
import { say } from './say.js';
import type { Job } from './work.js';

interface Change {
  readonly at: Instant;
  /** Change of capacity from then on. */
  readonly there: number;
  /** The activity that begins to use `amount`, or stops when `amount` is negative. */
  readonly user?: string;
  readonly amount: number;
}

/** Checks that no more of a resource is used than available. Resources not listed in the plan are unlimited. */
export function checkSupplies(
  resources: readonly Resource[],
  jobs: ReadonlyMap<string, Job>,
  clock: Clock,
  report: ReportFault,
): void {
  for (const resource of resources) {
    const uses = usesOf(resource, jobs);
    if (uses.length > 0) checkSupply(resource, uses, clock, report);
  }
}

function usesOf(resource: Resource, jobs: ReadonlyMap<string, Job>): Change[] {
  const changes: Change[] = [];
  for (const { activity, pieces } of jobs.values()) {
    let amount = 0;
    for (const need of activity.resources) if (need.resource === resource.id) amount += need.amount;
    if (amount <= 0) continue;
    for (const { from, to } of pieces)
      if (from < to)
        changes.push(
          { at: from, there: 0, user: activity.id, amount },
          { at: to, there: 0, user: activity.id, amount: -amount },
        );
  }
  return changes;
}

function checkSupply(
  resource: Resource,
  uses: readonly Change[],
  clock: Clock,
  report: ReportFault,
): void {
  let [start, end] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { at } of uses) [start, end] = [Math.min(start, at), Math.max(end, at)];
  const changes = [...uses];
  for (const row of resource.availability)
    for (const there of presenceOf(row, { start, end }, clock))
      changes.push(
        { at: there.start, there: row.capacity, amount: 0 },
        { at: there.end, there: -row.capacity, amount: 0 },
      );
  changes.sort((a, b) => a.at - b.at);
  const users = new Map<string, number>();
  const reported = new Set<string>();
  let there = 0;
  let used = 0;
  changes.forEach((change, i) => {
    there += change.there;
    used += change.amount;
    if (change.user !== undefined) {
      const count = (users.get(change.user) ?? 0) + Math.sign(change.amount);
      if (count === 0) users.delete(change.user);
      else users.set(change.user, count);
    }
    // Checked after all changes at one moment, and only while it is in use.
    if (changes[i + 1]?.at === change.at || used <= there || users.size === 0) return;
    for (const user of users.keys())
      if (!reported.has(user)) {
        reported.add(user);
        report({
          code: 'resource',
          activity: user,
          text: say('resource-overused', { activity: user, used, resource: resource.id, there }),
        });
      }
  });
}

/** When an availability row applies within a time. If a daily edge occurs twice in local time, the shorter reading. */
export function presenceOf(row: Availability, within: Stretch, clock: Clock): readonly Stretch[] {
  const start = Math.max(within.start, row.from ?? within.start);
  const end = Math.min(within.end, row.to ?? within.end);
  if (start >= end) return [];
  const from = row.dailyFromMinute ?? 0;
  const to = row.dailyToMinute ?? 1440;
  if (from % 1440 === to % 1440) return [{ start, end }];
  return stretchesOf({ from, to, twice: 'shorter' }, { start, end }, clock).map((stretch) => ({
    start: Math.max(start, stretch.start),
    end: Math.min(end, stretch.end),
  }));
}
