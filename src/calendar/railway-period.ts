import type { Instant } from './instant.js';
import { intersectionOf, type Interval } from './interval.js';
import {
  dateOf,
  dayAt,
  dayNumber,
  startOfDay,
  weekdayOfDay,
  type DayNumber,
} from './local-date.js';

/** A four-week period of the railway year, half-open: it ends at the midnight that ends its last day. */
export interface RailwayPeriod extends Interval {
  /** 1 to 13. */
  readonly number: number;
  /** Year in which the railway year begins: 2026 for 2026/27. */
  readonly year: number;
  /** Local days in it, both ends counted: 28 for periods 2 to 12. */
  readonly days: number;
}

const SUNDAY = 7;

/**
 * The first day of period 2: the Sunday that gives period 1 a length of 26 to 32 days.
 * Of the lengths that a whole number of weeks allows, those are the ones of 2024/25 to 2027/28 as published.
 */
function startOfPeriod2(year: number): DayNumber {
  const earliest = dayNumber(year, 4, 1) + 26;
  return earliest + ((SUNDAY - weekdayOfDay(earliest)) % 7);
}

/**
 * The thirteen periods of the railway year that begins on 1 April of `year`, in order and without a gap.
 *
 * Periods 2 to 12 run from Sunday to Saturday for 28 days; 1 starts on 1 April and 13 ends on 31 March.
 * @see A data package's table of periods 1995 to 2036, citing the regulator: edges read there; lengths of period 1
 * compared for 2024/25 to 2027/28.
 * @example railwayPeriods(2026, 'Europe/London').map((one) => one.days) // [32, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 25]
 */
export function railwayPeriods(year: number, zone: string): readonly RailwayPeriod[] {
  const second = startOfPeriod2(year);
  const starts = [
    dayNumber(year, 4, 1),
    ...Array.from({ length: 12 }, (_, i) => second + i * 28),
    dayNumber(year + 1, 4, 1),
  ];
  return starts.slice(0, -1).map((start, i) => {
    const next = starts[i + 1]!;
    return {
      year,
      number: i + 1,
      start: startOfDay(start, zone),
      end: startOfDay(next, zone),
      days: next - start,
    };
  });
}

const railwayYear = (at: Instant, zone: string): number => {
  const { year, month } = dateOf(dayAt(at, zone));
  return month >= 4 ? year : year - 1;
};

/** The period that holds a moment. */
export function railwayPeriod(at: Instant, zone: string): RailwayPeriod {
  return railwayPeriods(railwayYear(at, zone), zone).find(
    (period) => period.start <= at && at < period.end,
  )!;
}

/**
 * Every period that a stretch has time in, in order. A Saturday night at the edge of a period lies in two.
 * An empty stretch touches none.
 */
export function periodsTouched(span: Interval, zone: string): readonly RailwayPeriod[] {
  const found: RailwayPeriod[] = [];
  for (let year = railwayYear(span.start, zone); year <= railwayYear(span.end, zone); year += 1)
    found.push(...railwayPeriods(year, zone).filter((period) => intersectionOf(period, span)));
  return found;
}

/** `P8 2026/27`. */
export function periodText({ number, year }: Pick<RailwayPeriod, 'number' | 'year'>): string {
  return `P${number} ${year}/${String((year + 1) % 100).padStart(2, '0')}`;
}
