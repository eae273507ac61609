/** An activity of a plain network, in any unit of time. */
export interface NetworkActivity {
  readonly id: string;
  readonly duration: number;
  readonly after: readonly NetworkLink[];
}

export interface NetworkLink {
  readonly id: string;
  /** Whether its finish (the default) or its start is waited for. */
  readonly from?: 'finish' | 'start';
  readonly gap?: number;
}

export interface NetworkTimes {
  readonly id: string;
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  readonly totalFloat: number;
  readonly freeFloat: number;
  readonly critical: boolean;
}

export interface CriticalPath {
  readonly duration: number;
  /** In the order given. */
  readonly activities: readonly NetworkTimes[];
}

/**
 * Early and late times and floats of a network without calendars or resources.
 *
 * Total float is late start less early start; free float is what an activity can slip before any follower, or the
 * end, moves. Critical: no total float. O(activities + links).
 * @throws {RangeError} When an id is unknown or used twice, a duration is negative or the links close a ring.
 * @example criticalPath([{ id: 'A', duration: 3, after: [] }]).duration // 3
 */
export function criticalPath(network: readonly NetworkActivity[]): CriticalPath {
  const index = new Map(network.map((activity, i) => [activity.id, i]));
  if (index.size < network.length) throw new RangeError('an id is used twice');
  const links = network.flatMap((activity, to) => {
    if (!(activity.duration >= 0)) throw new RangeError(`${activity.id} has no duration`);
    return activity.after.map((link) => {
      const of = index.get(link.id);
      if (of === undefined) throw new RangeError(`${activity.id} waits for unknown ${link.id}`);
      return { of, to, start: link.from === 'start', gap: link.gap ?? 0 };
    });
  });
  const outOf = network.map(() => [] as typeof links);
  const waiting = network.map(() => 0);
  for (const link of links) {
    outOf[link.of]!.push(link);
    waiting[link.to] = waiting[link.to]! + 1;
  }
  const early = network.map(() => 0);
  const order = network.flatMap((_, i) => (waiting[i] === 0 ? [i] : []));
  for (let head = 0; head < order.length; head += 1) {
    const at = order[head]!;
    for (const link of outOf[at]!) {
      const from = early[at]! + (link.start ? 0 : network[at]!.duration);
      early[link.to] = Math.max(early[link.to]!, from + link.gap);
      waiting[link.to] = waiting[link.to]! - 1;
      if (waiting[link.to] === 0) order.push(link.to);
    }
  }
  if (order.length < network.length) throw new RangeError('the links close a ring');
  const duration = Math.max(0, ...network.map((activity, i) => early[i]! + activity.duration));
  const late = network.map((activity) => duration - activity.duration);
  const free = late.map((start, i) => start - early[i]!);
  for (const at of order.toReversed())
    for (const link of outOf[at]!) {
      const own = link.gap + (link.start ? 0 : network[at]!.duration);
      late[at] = Math.min(late[at]!, late[link.to]! - own);
      free[at] = Math.min(free[at]!, early[link.to]! - own - early[at]!);
    }
  return {
    duration,
    activities: network.map((activity, i) => ({
      id: activity.id,
      earlyStart: early[i]!,
      earlyFinish: early[i]! + activity.duration,
      lateStart: late[i]!,
      lateFinish: late[i]! + activity.duration,
      totalFloat: late[i]! - early[i]!,
      freeFloat: free[i]!,
      critical: late[i] === early[i],
    })),
  };
}
