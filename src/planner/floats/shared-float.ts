import type { Activity } from '../../model/index.js';

/** Every activity reached from some along one direction of links, themselves included. */
function reached(
  from: readonly string[],
  next: ReadonlyMap<string, readonly string[]>,
): Set<string> {
  const seen = new Set(from);
  const open = [...from];
  for (let id = open.pop(); id !== undefined; id = open.pop())
    for (const other of next.get(id) ?? [])
      if (!seen.has(other)) {
        seen.add(other);
        open.push(other);
      }
  return seen;
}

/**
 * For work with a key date: the other packages with a key date that stand on a chain of links with it.
 *
 * In the order in which the plan first names them. O(activities + links) a call.
 */
export function sharesFloatWith(
  activities: readonly Activity[],
  own: readonly Activity[],
): readonly string[] {
  const before = new Map(
    activities.map((activity) => [activity.id, activity.after.map((link) => link.activity)]),
  );
  const after = new Map<string, string[]>();
  for (const activity of activities)
    for (const link of activity.after)
      after.set(link.activity, [...(after.get(link.activity) ?? []), activity.id]);
  const ids = own.map((activity) => activity.id);
  const chain = new Set([...reached(ids, before), ...reached(ids, after)]);
  const name = own[0]?.package;
  return [
    ...new Set(
      activities
        .filter(
          (activity) =>
            activity.keyDate !== undefined && activity.package !== name && chain.has(activity.id),
        )
        .map((activity) => activity.package),
    ),
  ];
}
