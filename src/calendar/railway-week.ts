import type { Instant } from './instant.js';
import type { Interval } from './interval.js';
import {
  dateOf,
  dayAt,
  dayNumber,
  startOfDay,
  weekdayOfDay,
  type DayNumber,
} from './local-date.js';

/**
 * Which planning week is week 1. Sources differ, so it is a setting:
 * the week that holds 1 April, the first that starts on or after it, or the one that starts nearest to it.
 */
export const weekOneRules = ['holds-1-april', 'first-whole-week', 'nearest-1-april'] as const;
export type WeekOneRule = (typeof weekOneRules)[number];

export interface RailwayWeekSettings {
  readonly weekOne: WeekOneRule;
  /** Day on which a week starts, 1 Monday to 7 Sunday. Planning weeks start on a Saturday, 6. */
  readonly startsOn: number;
}

/** A planning week: seven local days, which a clock change makes an hour longer or shorter. */
export interface RailwayWeek extends Interval {
  /** 1 to 53. */
  readonly number: number;
  /** Year in which the railway year of the week begins: 2026 for 2026/27. */
  readonly year: number;
}

/** The first day of week 1 of the railway year that begins in `year`. */
function firstDay(year: number, { weekOne, startsOn }: RailwayWeekSettings): DayNumber {
  const april = dayNumber(year, 4, 1);
  const holds = april - ((weekdayOfDay(april) - startsOn + 7) % 7);
  if (holds === april) return april;
  switch (weekOne) {
    case 'holds-1-april':
      return holds;
    case 'first-whole-week':
      return holds + 7;
    case 'nearest-1-april':
      return april - holds <= 3 ? holds : holds + 7;
  }
}

/**
 * The planning week that holds a moment, numbered from the start of the railway year.
 *
 * Weeks follow one another without a gap; a year has 52 or 53.
 * @throws {RangeError} When `startsOn` is no day of the week.
 * @see Weeks start on a Saturday and week 1 is near 1 April: from memory, weak; check it against the local plan.
 */
export function railwayWeek(at: Instant, zone: string, settings: RailwayWeekSettings): RailwayWeek {
  const { startsOn } = settings;
  if (!Number.isInteger(startsOn) || startsOn < 1 || startsOn > 7)
    throw new RangeError(`no day of the week: ${startsOn}`);
  const day = dayAt(at, zone);
  let { year } = dateOf(day);
  // Week 1 may start a few days either side of 1 April, and the first months belong to the year before.
  if (day < firstDay(year, settings)) year -= 1;
  const first = firstDay(year, settings);
  const number = Math.floor((day - first) / 7) + 1;
  const start = first + (number - 1) * 7;
  return { year, number, start: startOfDay(start, zone), end: startOfDay(start + 7, zone) };
}
