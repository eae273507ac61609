import { dailyBands, MINUTE, subtract, type Instant, type Interval } from '../../calendar/index.js';
import type { Availability, Resource } from '../../model/index.js';
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
    const daily = dailyGap(row);
    const range = { start: Math.max(start, horizon.start), end: Math.min(end, horizon.end) };
    const stretches = daily ? subtract([range], dailyBands(daily, range, zone)) : [{ start, end }];
    for (const stretch of stretches) {
      // Part minutes at either end are no use to work that is planned by the minute.
      add(Math.ceil((stretch.start - base) / MINUTE), row.capacity);
      add(Math.floor((stretch.end - base) / MINUTE), -row.capacity);
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

/**
 * The band of the day in which a row is not there; `undefined` when it is there all day. Asking for the gap gives
 * the shorter reading of a time that clocks show twice, since the gap takes the longer.
 */
function dailyGap(row: Availability): { fromMinute: number; toMinute: number } | undefined {
  const from = row.dailyFromMinute ?? 0;
  const to = row.dailyToMinute ?? 1440;
  return from % 1440 === to % 1440 ? undefined : { fromMinute: to % 1440, toMinute: from };
}
