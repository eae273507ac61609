import {
  HOUR,
  localTimeOf,
  startOfLocalDay,
  weekdayOf,
  type Instant,
} from '../../calendar/index.js';
import { weekdays } from '../../model/index.js';
import { clockOn } from '../people/index.js';
import type { Anchor, BookingRules, MilestoneRule } from './booking-rules.js';
import { timetableChangeFor } from './timetable-change.js';

/** The first moment of the four-week period that holds a moment. */
export type PeriodStart = (at: Instant) => Instant;

/** Start of the local day that a lead time is counted back from, for a window that holds the moment `at`. */
export function anchorDay(
  at: Instant,
  anchor: Anchor,
  book: Pick<BookingRules, 'weekStarts'>,
  where: { readonly zone: string; readonly periodStart?: PeriodStart },
): Instant {
  const { zone, periodStart } = where;
  if (anchor === 'window') return startOfLocalDay(at, zone);
  if (anchor === 'railway week') {
    const first = weekdays.indexOf(book.weekStarts) + 1;
    return startOfLocalDay(at, zone, -((weekdayOf(at, zone) - first + 7) % 7));
  }
  if (anchor === 'timetable change') {
    // Midnight ends the Saturday: dates are counted from the Saturday.
    return startOfLocalDay(timetableChangeFor(at, zone) - HOUR, zone);
  }
  if (!periodStart)
    throw new RangeError('a milestone counts from the period: periodStart is needed');
  return startOfLocalDay(periodStart(at), zone);
}

/** Start of the local day so many calendar months before; the last day of a month that is too short. */
export function monthsBefore(day: Instant, months: number, zone: string): Instant {
  const local = localTimeOf(day + 12 * HOUR, zone);
  const count = local.year * 12 + local.month - 1 - months;
  const year = Math.floor(count / 12);
  const month = count - year * 12;
  const lastDay = localTimeOf(Date.UTC(year, month + 1, 0, 12), 'UTC').day;
  return startOfLocalDay(Date.UTC(year, month, Math.min(local.day, lastDay), 12), zone);
}

/** The moment a milestone is due, counted back from a day by the local calendar. */
export function dueBefore(
  day: Instant,
  rule: Pick<MilestoneRule, 'months' | 'weeks' | 'days' | 'time'>,
  zone: string,
): Instant {
  const month = rule.months > 0 ? monthsBefore(day, rule.months, zone) : day;
  return clockOn(startOfLocalDay(month, zone, -(rule.weeks * 7 + rule.days)), rule.time, zone);
}
