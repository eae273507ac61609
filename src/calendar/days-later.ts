import type { Instant } from './instant.js';
import { dayAt, momentOn } from './local-date.js';
import { localTimeOf } from './local-time.js';

/**
 * The same wall clock some days later, or earlier where `days` is below 0. Of a time that clocks show twice that night it
 * is the first; of one that they skip, the moment at which they do.
 */
export function daysLater(at: Instant, days: number, zone: string): Instant {
  const { hour, minute } = localTimeOf(at, zone);
  return momentOn(dayAt(at, zone) + days, hour * 60 + minute, zone);
}
