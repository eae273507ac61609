/**
 * The index that each item of `after` had in `before`, -1 where it was not there. Items are compared as objects. Items
 * that are the same at both ends of the lists cost one comparison each.
 */
export function placesIn(before: readonly unknown[], after: readonly unknown[]): Int32Array {
  const places = new Int32Array(after.length);
  if (before.length === 0) return places.fill(-1);
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) {
    places[start] = start;
    start += 1;
  }
  const moved = after.length - before.length;
  let end = after.length;
  while (end - moved > start && end > start && before[end - 1 - moved] === after[end - 1]) {
    end -= 1;
    places[end] = end - moved;
  }
  if (start === end) return places;
  const known = new Map<unknown, number>();
  for (let at = end - moved - 1; at >= start; at -= 1) known.set(before[at], at);
  for (let at = start; at < end; at += 1) places[at] = known.get(after[at]) ?? -1;
  return places;
}

/** Whether every item is where it was, with nothing added or removed. */
export function unmoved(places: Int32Array, before: number): boolean {
  return places.length === before && places.every((place, at) => place === at);
}
