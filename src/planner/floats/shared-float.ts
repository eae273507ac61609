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
  const before = new Map(activities.map((one) => [one.id, one.after.map((link) => link.activity)]));
  const after = new Map<string, string[]>();
  for (const one of activities)
    for (const link of one.after)
      after.set(link.activity, [...(after.get(link.activity) ?? []), one.id]);
  const ids = own.map((one) => one.id);
  const chain = new Set([...reached(ids, before), ...reached(ids, after)]);
  const name = own[0]?.package;
  return [
    ...new Set(
      activities
        .filter((one) => one.keyDate !== undefined && one.package !== name && chain.has(one.id))
        .map((one) => one.package),
    ),
  ];
}
