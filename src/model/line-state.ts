import type { Activity } from './activity.js';

/**
 * An activity after which the line is not fit to run, with the work that must be finished in the same window.
 *
 * A whole piece shares one window with all of `members`; of repeated work the window of its last unit holds them.
 */
export interface Bound {
  readonly activity: string;
  /** What makes it good, what lies in between by `after`, and what those are bound to in turn; in the order of the file. */
  readonly members: readonly string[];
  /** What makes it good but waits for it by no chain of links: it starts once the activity has finished, all the same. */
  readonly unlinked: readonly string[];
}

/**
 * The bound of every activity inside the closure that names what makes it good, in the order of the file.
 * Unknown names are skipped. O(n + links) for each activity with a bound.
 */
export function boundsOf(activities: readonly Activity[]): readonly Bound[] {
  const naming = activities.filter(
    (activity) => activity.place === 'inside' && Array.isArray(activity.madeGoodBy),
  );
  if (naming.length === 0) return [];
  const byId = new Map(activities.map((activity) => [activity.id, activity]));
  const followers = new Map<string, string[]>();
  for (const { id, after } of activities)
    for (const link of after) {
      const list = followers.get(link.activity);
      if (list) list.push(id);
      else followers.set(link.activity, [id]);
    }
  const followersOf = (id: string): readonly string[] => followers.get(id) ?? [];
  const leadersOf = (id: string): readonly string[] =>
    byId.get(id)?.after.map((link) => link.activity) ?? [];
  const own = new Map(
    naming.map((activity) => {
      const targets = (activity.madeGoodBy as readonly string[]).filter(
        (id) => id !== activity.id && byId.get(id)?.place === 'inside',
      );
      const ahead = reached([activity.id], followersOf);
      const behind = reached(targets, leadersOf);
      const between = [...ahead].filter((id) => behind.has(id));
      return [
        activity.id,
        {
          members: new Set([...targets, ...between]),
          unlinked: targets.filter((id) => !ahead.has(id)),
        },
      ] as const;
    }),
  );
  return naming.map(({ id }) => {
    const all = reached([id], (each) => [...(own.get(each)?.members ?? [])]);
    all.delete(id);
    return {
      activity: id,
      members: activities
        .filter((each) => all.has(each.id) && each.place === 'inside')
        .map((each) => each.id),
      unlinked: own.get(id)!.unlinked,
    };
  });
}

/** The ids and everything that is reached from them. */
function reached(from: readonly string[], next: (id: string) => readonly string[]): Set<string> {
  const seen = new Set(from);
  for (const id of seen) for (const other of next(id)) seen.add(other);
  return seen;
}

/**
 * Whether two activities inside the closure need a line and a place in common. Blank lines are every line, a blank
 * extent is everywhere; extents that only touch have no place in common.
 */
export function samePlace(activity: Activity, other: Activity): boolean {
  if (activity.place === 'outside' || other.place === 'outside') return false;
  const lines =
    activity.lines.length === 0 ||
    other.lines.length === 0 ||
    activity.lines.some((line) => other.lines.includes(line));
  if (!lines) return false;
  if (!activity.extent || !other.extent) return true;
  const [a, b] = [activity.extent, other.extent];
  // A single point is a place too.
  return (a.from < b.to && b.from < a.to) || (a.from === b.from && a.to === b.to);
}
