import {
  dateOf,
  dayAt,
  dayNumber,
  startOfDay,
  weekdayOfDay,
  type DayNumber,
  type Instant,
} from '../../calendar/index.js';

const SATURDAY = 6;

/** The second Saturday in December; the timetable changes at its end. */
function lastDay(year: number): DayNumber {
  const eighth = dayNumber(year, 12, 8);
  return eighth + ((SATURDAY - weekdayOfDay(eighth) + 7) % 7);
}

/**
 * When the timetable changes in a year: local midnight at the end of the second Saturday in December.
 *
 * @see Directive 2012/34/EU, Annex VII; from memory.
 * @example timetableChange(2026, 'UTC') // Date.UTC(2026, 11, 13)
 */
export function timetableChange(year: number, zone: string): Instant {
  return startOfDay(lastDay(year) + 1, zone);
}

/** The Saturday before the timetable in force at a moment began: X in lead times. */
export function timetableSaturday(at: Instant, zone: string): DayNumber {
  const day = dayAt(at, zone);
  const { year } = dateOf(day);
  return lastDay(year) < day ? lastDay(year) : lastDay(year - 1);
}
