import type { Instant } from './instant.js';
import { unionOf, type IntervalSet } from './interval-set.js';
import {
  dayAt,
  dayFromText,
  dayNumber,
  dayText,
  startOfDay,
  weekdayOfDay,
  type DayNumber,
} from './local-date.js';

/** A day on which a country or a company does not work as usual. A list of them is data: replace it with your own. */
export interface Holiday {
  /** `2027-03-26`. */
  readonly date: string;
  readonly name: string;
}

/**
 * Easter Day in the Gregorian calendar.
 *
 * @see The anonymous algorithm printed in 1876, from memory; compared with the Easter Days of 2024, 2027 and 2029.
 * @example easterDay(2027) // '2027-03-28'
 */
export function easterDay(year: number): string {
  const moonYear = year % 19;
  const century = Math.floor(year / 100);
  const inCentury = year % 100;
  const correction = Math.floor((century - Math.floor((century + 8) / 25) + 1) / 3);
  const moon = (19 * moonYear + century - Math.floor(century / 4) - correction + 15) % 30;
  const sunday =
    (32 + 2 * (century % 4) + 2 * Math.floor(inCentury / 4) - moon - (inCentury % 4)) % 7;
  const late = Math.floor((moonYear + 11 * moon + 22 * sunday) / 451);
  const sum = moon + sunday - 7 * late + 114;
  return dayText(dayNumber(year, Math.floor(sum / 31), (sum % 31) + 1));
}

const MONDAY = 1;
const firstMonday = (year: number, month: number): DayNumber => {
  const first = dayNumber(year, month, 1);
  return first + ((MONDAY - weekdayOfDay(first) + 7) % 7);
};
const lastMonday = (year: number, month: number): DayNumber => {
  const last = dayNumber(year, month, 31);
  return last - (weekdayOfDay(last) - MONDAY);
};
const isWeekend = (day: DayNumber): boolean => weekdayOfDay(day) >= 6;

/**
 * The bank holidays of England and Wales in a year by the standing rules, in order. A holiday that falls on a weekend is
 * listed on the weekday given instead.
 *
 * Days that a proclamation adds or moves in a single year (as in 2020, 2022 and 2023) are not in it: add them by hand.
 * @see Banking and Financial Dealings Act 1971, schedule 1, and the days proclaimed every year; from memory.
 */
export function bankHolidaysEnglandAndWales(year: number): readonly Holiday[] {
  const easter = dayFromText(easterDay(year))!;
  const newYear = dayNumber(year, 1, 1);
  const christmas = dayNumber(year, 12, 25);
  const given = (day: DayNumber, name: string, instead: DayNumber): Holiday =>
    isWeekend(day)
      ? { date: dayText(instead), name: `${name} (day given instead)` }
      : { date: dayText(day), name };
  // A weekend holiday moves to Monday; where both days of Christmas do, the second moves to Tuesday.
  return [
    given(newYear, 'New Year’s Day', newYear + (8 - weekdayOfDay(newYear))),
    { date: dayText(easter - 2), name: 'Good Friday' },
    { date: dayText(easter + 1), name: 'Easter Monday' },
    { date: dayText(firstMonday(year, 5)), name: 'Early May bank holiday' },
    { date: dayText(lastMonday(year, 5)), name: 'Spring bank holiday' },
    { date: dayText(lastMonday(year, 8)), name: 'Summer bank holiday' },
    given(christmas, 'Christmas Day', christmas + 2),
    given(christmas + 1, 'Boxing Day', christmas + 3),
  ].sort((a, b) => a.date.localeCompare(b.date));
}

/** The holiday on the local day of a moment, if there is one. */
export function holidayAt(
  at: Instant,
  zone: string,
  holidays: readonly Holiday[],
): Holiday | undefined {
  const today = dayText(dayAt(at, zone));
  return holidays.find((holiday) => holiday.date === today);
}

/**
 * The time that lies on a holiday, midnight to midnight.
 * @throws {RangeError} When there is no such date.
 */
export function holidayTimes(holidays: readonly Holiday[], zone: string): IntervalSet {
  return unionOf(
    holidays.map(({ date }) => {
      const day = dayFromText(date);
      if (day === undefined) throw new RangeError(`no such day: "${date}"`);
      return { start: startOfDay(day, zone), end: startOfDay(day + 1, zone) };
    }),
  );
}
