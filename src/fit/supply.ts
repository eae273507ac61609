import { MINUTE, type Instant, type Interval } from '../calendar/index.js';
import type { Resource } from '../model/index.js';
import { dailyBands } from './daily-bands.js';
import type { Profile } from './profile.js';

/**
 * How much of a resource is there over time, in minutes after `base`, as a profile that begins at minus infinity.
 * Rows of availability add up; nothing is there where no row says so.
 */
export function supplyOf(
  resource: Resource,
  zone: string,
  base: Instant,
  horizon: Interval,
): Profile {
  const changes = new Map<number, number>();
  const add = (at: number, by: number): void => void changes.set(at, (changes.get(at) ?? 0) + by);
  for (const row of resource.availability) {
    const start = row.from ?? Number.NEGATIVE_INFINITY;
    const end = row.to ?? Number.POSITIVE_INFINITY;
    if (start >= end) continue;
    const daily = row.dailyFromMinute !== undefined || row.dailyToMinute !== undefined;
    const stretches: readonly Interval[] = daily
      ? dailyBands(
          {
            fromMinute: row.dailyFromMinute ?? 0,
            toMinute: row.dailyToMinute ?? 1440,
            doubt: 'shorter',
          },
          zone,
          Math.max(start, horizon.start),
          Math.min(end, horizon.end),
        )
      : [{ start, end }];
    for (const one of stretches) {
      // Part minutes at either end are no use to work that is planned by the minute.
      add(Math.ceil((one.start - base) / MINUTE), row.capacity);
      add(Math.floor((one.end - base) / MINUTE), -row.capacity);
    }
  }
  const at = [Number.NEGATIVE_INFINITY];
  const free = [changes.get(Number.NEGATIVE_INFINITY) ?? 0];
  const times = [...changes.keys()].filter(Number.isFinite).sort((a, b) => a - b);
  for (const time of times) {
    const level = free.at(-1)! + changes.get(time)!;
    if (level === free.at(-1)) continue;
    at.push(time);
    free.push(level);
  }
  return { at, free };
}
