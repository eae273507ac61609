import { MINUTE, type Instant } from './instant.js';

/** A stretch of time, half-open: `start` belongs to it, `end` does not. Empty when both are equal. */
export interface Interval {
  readonly start: Instant;
  readonly end: Instant;
}

/** @throws {RangeError} When `end` is before `start`. */
export function interval(start: Instant, end: Instant): Interval {
  if (!(end >= start)) throw new RangeError(`interval ends (${end}) before it starts (${start})`);
  return { start, end };
}

/** Length in whole minutes. */
export function lengthMinutes(a: Interval): number {
  return Math.round((a.end - a.start) / MINUTE);
}

/**
 * Whether two intervals share a moment.
 * @example overlaps({ start: 0, end: 1 }, { start: 1, end: 2 }) // false
 */
export function overlaps(a: Interval, b: Interval): boolean {
  return a.start < b.end && b.start < a.end;
}

export function contains(outer: Interval, inner: Interval): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}

/** The shared stretch, or `undefined` when they share no moment. */
export function intersectionOf(a: Interval, b: Interval): Interval | undefined {
  const start = Math.max(a.start, b.start);
  const end = Math.min(a.end, b.end);
  return start < end ? { start, end } : undefined;
}
