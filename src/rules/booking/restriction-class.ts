import { dayAt, type Interval } from '../../calendar/index.js';
import type { BookingRules } from './booking-rules.js';

/**
 * The class of a capacity restriction by its consecutive days and the share of each day's trains it cancels, re-routes
 * or replaces, in per cent. "More than" means more than: a figure on a threshold is below it.
 *
 * @throws {RangeError} When days are below 1 or the share is not a percentage.
 */
export function restrictionClass(
  days: number,
  sharePercent: number,
  book: Pick<BookingRules, 'classes' | 'otherwise'>,
): string {
  if (!(days >= 1)) throw new RangeError(`a restriction has a day or more, not ${days}`);
  if (!(sharePercent >= 0 && sharePercent <= 100))
    throw new RangeError(`a share of trains is 0 to 100 per cent, not ${sharePercent}`);
  const found = book.classes.find(
    (item) =>
      days > (item.daysOver ?? 0) &&
      days <= (item.daysAtMost ?? Infinity) &&
      sharePercent > item.shareOver,
  );
  return found?.class ?? book.otherwise;
}

/** Local days that a window touches: Saturday 22:00 to Sunday 06:00 touches two. An end at midnight adds none. */
export function daysTouched(window: Interval & { readonly zone: string }): number {
  const { start, end, zone } = window;
  if (end <= start) return 0;
  return dayAt(end - 1, zone) - dayAt(start, zone) + 1;
}
