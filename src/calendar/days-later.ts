import type { Instant } from './instant.js';
import { dayAt, momentOn } from './local-date.js';
import { localTimeOf } from './local-time.js';

/**
 * The same time of the clock some days later, or earlier where `days` is below 0. Where clocks show that time twice, the
 * first of the two; where they skip it, the moment of the change.
 */
export function daysLater(at: Instant, days: number, zone: string): Instant {
  const { hour, minute } = localTimeOf(at, zone);
  return momentOn(dayAt(at, zone) + days, hour * 60 + minute, zone);
}
