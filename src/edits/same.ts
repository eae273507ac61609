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
