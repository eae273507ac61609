import { DAY, localTimeOf, startOfLocalDay, type Instant } from '../../calendar/index.js';

/**
 * The change of timetable of a year: midnight at the end of the second Saturday in December, local.
 *
 * @see Directive 2012/34/EU, Annex VII; from memory.
 * @example new Date(timetableChange(2026, 'UTC')).toISOString() // '2026-12-13T00:00:00.000Z'
 */
export function timetableChange(year: number, zone: string): Instant {
  return startOfLocalDay(Date.UTC(year, 11, secondSaturday(year), 12), zone, 1);
}

/** Day of December on which the second Saturday falls. */
export function secondSaturday(year: number): number {
  const first = Math.round(Date.UTC(year, 11, 1) / DAY);
  // 1970-01-01 was a Thursday, so day 2 was the first Saturday.
  const toSaturday = (((2 - first) % 7) + 7) % 7;
  return 1 + toSaturday + 7;
}

/** The change that begins the timetable in force at a moment. */
export function timetableChangeFor(at: Instant, zone: string): Instant {
  const { year } = localTimeOf(at, zone);
  const thisYear = timetableChange(year, zone);
  return thisYear <= at ? thisYear : timetableChange(year - 1, zone);
}
