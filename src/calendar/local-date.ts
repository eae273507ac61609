import { DAY, MINUTE, type Instant } from './instant.js';
import { offsetMinutes, readings } from './local-time.js';

/** A day of the calendar, counted from 1970-01-01 as 0, so that days can be added and compared. It names no zone. */
export type DayNumber = number;

/** A day of the calendar in words. `month` is 1-12. */
export interface LocalDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const THURSDAY = 4;

/**
 * @throws {RangeError} When the numbers name no day (31 February).
 * @example dayNumber(1970, 1, 2) // 1
 */
export function dayNumber(year: number, month: number, day: number): DayNumber {
  const at = new Date(0);
  at.setUTCFullYear(year, month - 1, day);
  if (at.getUTCFullYear() !== year || at.getUTCMonth() + 1 !== month || at.getUTCDate() !== day)
    throw new RangeError(`no such day: ${year}-${month}-${day}`);
  return at.getTime() / DAY;
}

export function dateOf(day: DayNumber): LocalDate {
  const at = new Date(day * DAY);
  return { year: at.getUTCFullYear(), month: at.getUTCMonth() + 1, day: at.getUTCDate() };
}

/** 1 Monday to 7 Sunday, as ISO 8601 numbers them. */
export function weekdayOfDay(day: DayNumber): number {
  return ((((day + THURSDAY - 1) % 7) + 7) % 7) + 1;
}

/** The day that clocks in `zone` show at a moment. */
export function dayAt(at: Instant, zone: string): DayNumber {
  return Math.floor((at + offsetMinutes(at, zone) * MINUTE) / DAY);
}

/**
 * The moment `minutes` after midnight as the clocks of `zone` show it on a day; 1440 is midnight at its end.
 *
 * A time that clocks skip is the moment of the change; for a time that they show twice, `twice` says which.
 */
export function momentOn(
  day: DayNumber,
  minutes: number,
  zone: string,
  twice: 'earlier' | 'later' = 'earlier',
): Instant {
  const asUtc = day * DAY + minutes * MINUTE;
  // No zone changes clocks twice in four days, so an offset that is the same before and after holds in between. Both are
  // asked for at midnight UTC, where few answers are not in the cache yet: most days cost almost nothing.
  const before = offsetMinutes((day - 1) * DAY, zone);
  if (minutes >= 0 && minutes <= 2880 && before === offsetMinutes((day + 3) * DAY, zone))
    return asUtc - before * MINUTE;
  const shown = new Date(asUtc);
  const reading = readings(
    {
      year: shown.getUTCFullYear(),
      month: shown.getUTCMonth() + 1,
      day: shown.getUTCDate(),
      hour: shown.getUTCHours(),
      minute: shown.getUTCMinutes(),
    },
    zone,
  );
  if (reading.kind === 'one') return reading.at;
  if (reading.kind === 'none') return reading.gap;
  return twice === 'earlier' ? reading.earlier : reading.later;
}

/** The first moment of a day in `zone`. Days follow one another: one ends where the next starts. */
export function startOfDay(day: DayNumber, zone: string): Instant {
  return momentOn(day, 0, zone);
}

/** `2027-03-28`. */
export function dayText(day: DayNumber): string {
  return new Date(day * DAY).toISOString().slice(0, 10);
}

/** The day a text such as `2027-03-28` names; `undefined` when it names none. */
export function dayFromText(text: string): DayNumber | undefined {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!found) return undefined;
  const at = Date.parse(`${text}T00:00:00Z`);
  return Number.isNaN(at) || dayText(at / DAY) !== text ? undefined : at / DAY;
}
