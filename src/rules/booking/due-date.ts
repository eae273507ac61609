import {
  dateOf,
  dayAt,
  dayNumber,
  minuteOfClock,
  momentOn,
  railwayPeriod,
  weekdayOfDay,
  type DayNumber,
  type Instant,
} from '../../calendar/index.js';
import { weekdays } from '../../model/index.js';
import type { Anchor, BookingRules, MilestoneRule } from './booking-rules.js';
import { timetableSaturday } from './timetable-change.js';

/** Start of the four-week period that contains a moment. */
export type PeriodStart = (at: Instant) => Instant;

/** The day that a lead time is counted back from, for a window that includes `at`. */
export function anchorDay(
  at: Instant,
  anchor: Anchor,
  book: Pick<BookingRules, 'weekStarts'>,
  where: { readonly zone: string; readonly periodStart?: PeriodStart },
): DayNumber {
  const { zone, periodStart = (moment: Instant) => railwayPeriod(moment, zone).start } = where;
  const day = dayAt(at, zone);
  switch (anchor) {
    case 'window':
      return day;
    case 'railway week':
      return day - ((weekdayOfDay(day) - weekdays.indexOf(book.weekStarts) - 1 + 7) % 7);
    case 'four-week period':
      return dayAt(periodStart(at), zone);
    case 'timetable change':
      return timetableSaturday(at, zone);
  }
}

/** The day a number of calendar months earlier; the last day of the month if that month is too short. */
export function monthsBefore(day: DayNumber, months: number): DayNumber {
  const date = dateOf(day);
  const count = date.year * 12 + date.month - 1 - months;
  const first = (months: number): DayNumber =>
    dayNumber(Math.floor(months / 12), (months % 12) + 1, 1);
  return Math.min(first(count) + date.day, first(count + 1)) - 1;
}

/** When a milestone is due, counted back from a day by the local calendar. */
export function dueBefore(
  day: DayNumber,
  rule: Pick<MilestoneRule, 'months' | 'weeks' | 'days' | 'time'>,
  zone: string,
): Instant {
  const due = monthsBefore(day, rule.months) - rule.weeks * 7 - rule.days;
  return momentOn(due, minuteOfClock(rule.time), zone);
}
