import type { Row } from './edit.js';

/** Whether two values are the same JSON, whatever the order of keys. `undefined` counts as absent. */
export function sameJson(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((item, index) => sameJson(item, b[index]))
    );
  }
  const left = a as Readonly<Record<string, unknown>>;
  const right = b as Readonly<Record<string, unknown>>;
  const own = (from: Readonly<Record<string, unknown>>, key: string): unknown =>
    Object.hasOwn(from, key) ? from[key] : undefined;
  return [...new Set([...Object.keys(left), ...Object.keys(right)])].every((key) =>
    sameJson(own(left, key), own(right, key)),
  );
}

export function sameRow(a: Row | undefined, b: Row | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined || a.length !== b.length) return false;
  return a.every((cell, index) => cell === b[index]);
}

/** Whether two lists hold the same things in the same order, those included that `alike` takes for the same. */
export function sameItems<T>(
  a: readonly T[],
  b: readonly T[],
  alike?: (item: T, other: T) => boolean,
): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at += 1)
    if (a[at] !== b[at] && !alike?.(a[at]!, b[at]!)) return false;
  return true;
}
