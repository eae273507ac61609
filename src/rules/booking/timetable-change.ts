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

/** The second Saturday in December, at the end of which the timetable changes. */
function lastDay(year: number): DayNumber {
  const eighth = dayNumber(year, 12, 8);
  return eighth + ((SATURDAY - weekdayOfDay(eighth) + 7) % 7);
}

/**
 * The change of timetable of a year: midnight at the end of the second Saturday in December, local.
 *
 * @see Directive 2012/34/EU, Annex VII; from memory.
 * @example timetableChange(2026, 'UTC') // Date.UTC(2026, 11, 13)
 */
export function timetableChange(year: number, zone: string): Instant {
  return startOfDay(lastDay(year) + 1, zone);
}

/** The Saturday that ended with the change which began the timetable in force at a moment: X in lead times. */
export function timetableSaturday(at: Instant, zone: string): DayNumber {
  const day = dayAt(at, zone);
  const { year } = dateOf(day);
  return lastDay(year) < day ? lastDay(year) : lastDay(year - 1);
}
