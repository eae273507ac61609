import type { Instant } from './instant.js';
import { lengthMinutes, type Interval } from './interval.js';

/** Intervals in time order that neither overlap nor touch; none is empty. */
export type IntervalSet = readonly Interval[];

/**
 * The moments covered by any of the given intervals, which may come in any order and overlap.
 * O(n log n).
 */
export function unionOf(intervals: readonly Interval[]): IntervalSet {
  const sorted = intervals
    .filter((interval) => interval.end > interval.start)
    .sort((a, b) => a.start - b.start);
  const merged: { start: Instant; end: Instant }[] = [];
  for (const next of sorted) {
    const last = merged.at(-1);
    if (last && next.start <= last.end) last.end = Math.max(last.end, next.end);
    else merged.push({ start: next.start, end: next.end });
  }
  return merged;
}

/** The moments in both sets. O(n + m). */
export function intersect(a: IntervalSet, b: IntervalSet): IntervalSet {
  const shared: Interval[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const interval = a[i]!;
    const other = b[j]!;
    const start = Math.max(interval.start, other.start);
    const end = Math.min(interval.end, other.end);
    if (start < end) shared.push({ start, end });
    if (interval.end < other.end) i += 1;
    else j += 1;
  }
  return shared;
}

/** The moments in `a` that are not in `b`. O(n + m). */
export function subtract(a: IntervalSet, b: IntervalSet): IntervalSet {
  const left: Interval[] = [];
  let j = 0;
  for (const interval of a) {
    let from = interval.start;
    while (j < b.length && b[j]!.end <= from) j += 1;
    let k = j;
    while (k < b.length && b[k]!.start < interval.end) {
      const hole = b[k]!;
      if (hole.start > from) left.push({ start: from, end: hole.start });
      from = Math.max(from, hole.end);
      k += 1;
    }
    if (from < interval.end) left.push({ start: from, end: interval.end });
  }
  return left;
}

/** Minutes covered by the set. */
export function totalMinutes(set: IntervalSet): number {
  return set.reduce((sum, interval) => sum + lengthMinutes(interval), 0);
}

export function covers(set: IntervalSet, at: Instant): boolean {
  return set.some((interval) => interval.start <= at && at < interval.end);
}
