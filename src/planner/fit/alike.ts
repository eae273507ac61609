import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import type { LedgerBook } from '../problem/ledger-book.js';
import { minutesDown, minutesUp, type Skeleton } from '../problem/skeleton.js';
import { reach } from './extension.js';

/**
 * What movable work can see of a window, and of as much later an end as is ever tried: two windows of one text give the
 * same answer of time, minute for minute after their starts. `undefined` where the answer hangs on the day itself:
 * work outside the window, curing, time that the site closes, isolation with times of its own.
 *
 * O(groups + activities with dates + resources asked for).
 */
export function likenessOf(
  window: AccessWindow,
  skeleton: Skeleton,
  book: LedgerBook,
): string | undefined {
  const { activities, groups, named, cures, hasOutside } = skeleton;
  if (cures > 0 || hasOutside) return undefined;
  if (groups.some(({ needs }) => (needs.heeds?.length ?? 0) > 0)) return undefined;
  if (window.isolation.some((one) => one.during !== undefined)) return undefined;

  const base = Math.floor(window.start / MINUTE);
  const longest = reach(activities);
  const last = minutesUp(window.end, base * MINUTE) + longest;
  const parts = [`${window.start - base * MINUTE} ${window.end - window.start}`];
  const needed = new Set(groups.flatMap(({ needs }) => needs.isolation));
  for (const { section } of window.isolation) if (needed.has(section)) parts.push(section);
  const loud = groups.some(({ needs }) => needs.loud);
  const until = window.end - window.start + longest * MINUTE;
  parts.push(book.usable.curfews.text(window, loud, until));
  for (const { notBefore, keyDate } of activities) {
    // A date that has passed, or that lies past all that is tried, is like any other such date.
    if (notBefore !== undefined)
      parts.push(`b${Math.min(Math.max(0, minutesUp(notBefore, base * MINUTE)), last + 1)}`);
    if (keyDate !== undefined)
      parts.push(`d${Math.min(minutesDown(keyDate, base * MINUTE), last + 1)}`);
  }
  for (const resource of book.supplies.resources) {
    if (!named.has(resource.id)) continue;
    const { at, free } = book.supplies.part(resource, base, 0, last);
    parts.push(at.length === 1 ? `${free[0]}` : `${at.join()} ${free.join()}`);
  }
  return parts.join(';');
}
