import { MINUTE } from '../../calendar/index.js';
import {
  minutesInOneVisit,
  needsOf,
  unitsLeft,
  type Activity,
  type Needs,
} from '../../model/index.js';
import { blocksOf, clustersOf, impliedLinks, rolesOf } from './blocks.js';
import type { Block, Cluster, Role } from './blocks.js';
import type { Task, Tie } from './problem.js';
import { chainOf } from './chain.js';
import { solePlacesOf, type SolePlace } from './sole-places.js';

/** Activities that see the same time wherever they are placed. */
export interface Group {
  /** Its first activity, which stands for all. */
  readonly activity: Activity;
  readonly needs: Needs;
  /** Indices of all of them. */
  readonly members: readonly number[];
  readonly names: readonly string[];
}

/** A tie, and whether what was finished must cure first: how long that takes depends on when. */
export type Bond = Omit<Tie, 'cure'> & { readonly cured: boolean };

/** What some activities are to a problem, whatever the windows. */
export interface Skeleton {
  /** Those with something left. */
  readonly activities: readonly Activity[];
  readonly groups: readonly Group[];
  /** Index into `groups`, by activity. */
  readonly groupOf: readonly number[];
  /** Names of the resources asked for. */
  readonly named: ReadonlySet<string>;
  readonly before: readonly (readonly Bond[])[];
  readonly after: readonly (readonly Bond[])[];
  readonly rank: readonly number[];
  /** Task indices in an order in which all that is waited for comes first. */
  readonly order: readonly number[];
  readonly hasOutside: boolean;
  /** Some of it is fixed to a window by its name. */
  readonly isFixed: boolean;
  /** Minutes that outside work and all gaps take together, without curing. */
  readonly outsideMinutes: number;
  /** How many links wait for something to cure. */
  readonly cures: number;
  /** The latest moment before which something may not begin; minus infinity when there is none. */
  readonly lastNotBefore: number;
  /** The first date that outside work names; infinity when there is none. */
  readonly firstOutside: number;
  /** The last key date of outside work; minus infinity when there is none. */
  readonly lastOutside: number;
  readonly blocks: readonly Block[];
  /** By task, what it is to its block; absent: part of none. */
  readonly roles: ReadonlyMap<number, Role>;
  readonly clusters: readonly Cluster[];
  readonly solePlaces: readonly SolePlace[];
  readonly work: readonly Pick<Task, 'units' | 'perUnit' | 'setUp' | 'makeSafe'>[];
  /** Minutes of the longest chain of work and gaps that begins and ends inside, whatever the calendars. */
  readonly chain: number;
}

/** O(activities + links). */
export function skeletonOf(all: readonly Activity[]): Skeleton {
  const activities = all.filter((activity) => unitsLeft(activity.work) > 0);
  const indexOf = new Map(activities.map((activity, index) => [activity.id, index]));
  const before: Bond[][] = activities.map(() => []);
  const after: Bond[][] = activities.map(() => []);
  activities.forEach((activity, index) => {
    for (const link of activity.after) {
      const task = indexOf.get(link.activity);
      if (task === undefined) continue;
      const bond = {
        fromStart: link.from === 'start',
        gap: link.gapMinutes,
        cured: link.cured ?? false,
      };
      before[index]!.push({ ...bond, task });
      after[task]!.push({ ...bond, task: index });
    }
  });
  for (const { from, to } of impliedLinks(all, indexOf)) {
    const bond = { fromStart: false, gap: 0, cured: false };
    before[to]!.push({ ...bond, task: from });
    after[from]!.push({ ...bond, task: to });
  }
  const { rank, order } = ranksOf(before, after);
  const blocks = blocksOf(all, indexOf);
  let outsideMinutes = 0;
  let cures = 0;
  let lastNotBefore = Number.NEGATIVE_INFINITY;
  let firstOutside = Number.POSITIVE_INFINITY;
  let lastOutside = Number.NEGATIVE_INFINITY;
  for (const activity of activities) {
    if (activity.place === 'outside') {
      const { notBefore = Infinity, keyDate = Infinity } = activity;
      outsideMinutes += minutesInOneVisit(activity.work);
      firstOutside = Math.min(firstOutside, notBefore, keyDate);
      lastOutside = Math.max(lastOutside, activity.keyDate ?? lastOutside);
    }
    for (const link of activity.after) {
      outsideMinutes += link.gapMinutes;
      if (link.cured) cures += 1;
    }
    lastNotBefore = Math.max(lastNotBefore, activity.notBefore ?? lastNotBefore);
  }
  const work = activities.map(workOf);
  return {
    activities,
    ...groupsOf(activities),
    named: new Set(
      activities.flatMap((activity) => activity.resources.map((need) => need.resource)),
    ),
    before,
    after,
    rank,
    order,
    hasOutside: activities.some((activity) => activity.place === 'outside'),
    isFixed: activities.some((activity) => activity.window !== undefined),
    outsideMinutes,
    cures,
    lastNotBefore,
    firstOutside,
    lastOutside,
    blocks,
    roles: rolesOf(blocks),
    clusters: clustersOf(blocks, after, order),
    solePlaces: solePlacesOf(activities),
    work,
    chain: chainOf({ activities, order, before, work }),
  };
}

function workOf({ work }: Activity): Skeleton['work'][number] {
  return work.kind === 'whole'
    ? { units: 1, perUnit: work.minutes, setUp: 0, makeSafe: 0 }
    : {
        units: unitsLeft(work),
        perUnit: work.minutesPerUnit,
        setUp: work.setUpMinutes,
        makeSafe: work.makeSafeMinutes,
      };
}

function groupsOf(activities: readonly Activity[]): Pick<Skeleton, 'groups' | 'groupOf'> {
  const groups: (Group & { readonly members: number[]; readonly names: string[] })[] = [];
  const known = new Map<string, number>();
  const groupOf = activities.map((activity, at) => {
    const key = JSON.stringify([
      activity.place,
      needsOf(activity),
      activity.lines,
      activity.extent,
      activity.window,
    ]);
    let index = known.get(key);
    if (index === undefined) {
      known.set(key, (index = groups.length));
      groups.push({ activity, needs: needsOf(activity), members: [], names: [] });
    }
    groups[index]!.members.push(at);
    groups[index]!.names.push(activity.id);
    return index;
  });
  return { groups, groupOf };
}

/** Places in an order in which all that is waited for comes first; -1 for what waits for itself. */
function ranksOf(
  before: readonly (readonly Bond[])[],
  after: readonly (readonly Bond[])[],
): Pick<Skeleton, 'rank' | 'order'> {
  const waiting = before.map((ties) => ties.length);
  const rank = before.map(() => -1);
  const order = waiting.flatMap((count, index) => (count === 0 ? [index] : []));
  for (let head = 0; head < order.length; head += 1) {
    const index = order[head]!;
    rank[index] = head;
    for (const tie of after[index]!) {
      waiting[tie.task] = waiting[tie.task]! - 1;
      if (waiting[tie.task] === 0) order.push(tie.task);
    }
  }
  return { rank, order };
}

/** Whole minutes after `base` that are not before a moment, and those that are not after it. */
export const minutesUp = (at: number, base: number): number => Math.ceil((at - base) / MINUTE);
export const minutesDown = (at: number, base: number): number => Math.floor((at - base) / MINUTE);
