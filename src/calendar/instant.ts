/** A moment: milliseconds since 1970-01-01T00:00Z. Inside the core every moment is one of these. */
export type Instant = number;

export const MINUTE = 60_000;
export const HOUR = 3_600_000;
/** Twenty-four elapsed hours. A local day may be 23 or 25 of them: use `DayNumber` to count calendar days. */
export const DAY = 86_400_000;

/** Whole elapsed minutes from `start` to `end`; negative when `end` is earlier. */
export function minutesBetween(start: Instant, end: Instant): number {
  return Math.round((end - start) / MINUTE);
}

export function addMinutes(at: Instant, minutes: number): Instant {
  return at + minutes * MINUTE;
}
