/** An object of named values. */
export type Parts = Readonly<Record<string, unknown>>;

export const isParts = (value: unknown): value is Parts =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A list of objects: its items are kept apart, so that two people can change two of them. An empty list is one. */
export const isItems = (value: unknown): value is readonly Parts[] =>
  Array.isArray(value) && value.every(isParts);

/**
 * `next`, with every object of it that holds the same as its counterpart in `before` put in as that very object. `kept`
 * leads from an object put in to the one whose place it took.
 */
export function shared(
  before: unknown,
  next: unknown,
): { readonly value: unknown; readonly kept: ReadonlyMap<unknown, unknown> } {
  const kept = new Map<unknown, unknown>();
  const walk = (old: unknown, now: unknown): unknown => {
    if (Object.is(old, now)) return old;
    if (Array.isArray(old) && Array.isArray(now)) {
      const made = now.map((item, at) => walk(old[at], item));
      if (old.length === now.length && made.every((item, at) => item === old[at]))
        return keep(old, now);
      return keep(made.every((item, at) => item === now[at]) ? now : made, now);
    }
    if (isParts(old) && isParts(now)) {
      const keys = Object.keys(now);
      const made = keys.map((key) => walk(old[key], now[key]));
      const same = keys.length === Object.keys(old).length;
      if (same && keys.every((key, at) => made[at] === old[key] && Object.hasOwn(old, key)))
        return keep(old, now);
      if (keys.every((key, at) => made[at] === now[key])) return now;
      return keep(Object.fromEntries(keys.map((key, at) => [key, made[at]])), now);
    }
    return now;
  };
  const keep = <T>(put: T, now: unknown): T => {
    if (!Object.is(put, now)) kept.set(put, now);
    return put;
  };
  return { value: walk(before, next), kept };
}
