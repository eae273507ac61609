import type { Instant } from './instant.js';
import { intersect, unionOf, type IntervalSet } from './interval-set.js';
import type { Interval } from './interval.js';
import { dayAt, momentOn, weekdayOfDay, type DayNumber } from './local-date.js';

/** A stretch that comes back every day, in minutes of the local day. */
export interface DailyBand {
  /** 0 to 1440; 1440 is midnight at the end of the day the band belongs to. */
  readonly fromMinute: number;
  /** 0 to 1440; at or before `fromMinute` it lies on the next day. */
  readonly toMinute: number;
  /** Days on which the band starts, 1 Monday to 7 Sunday; absent: every day. */
  readonly days?: readonly number[];
}

function isMinuteOfDay(minute: number): boolean {
  return Number.isInteger(minute) && minute >= 0 && minute <= 1440;
}

/**
 * The stretches of a daily band inside `range`, in real time: a band over a clock change is longer or shorter.
 *
 * A band belongs to the day it starts on, so a band that started the evening before `range` counts too. An edge that
 * clocks skip is the moment of the change. An edge that they show twice is read so that the band is `longer`, or
 * `shorter` but not empty.
 * @throws {RangeError} When an edge is not a minute of the day.
 */
export function dailyBands(
  band: DailyBand,
  range: Interval,
  zone: string,
  twice: 'longer' | 'shorter' = 'longer',
): IntervalSet {
  const { fromMinute, toMinute, days } = band;
  if (!isMinuteOfDay(fromMinute) || !isMinuteOfDay(toMinute))
    throw new RangeError(`no minutes of a day: ${fromMinute} to ${toMinute}`);
  const endMinute = toMinute > fromMinute ? toMinute : toMinute + 1440;
  const found: { start: Instant; end: Instant }[] = [];
  const last = dayAt(range.end, zone);
  // Two days back: a band that starts at 24:00 and lasts a day ends at the second midnight after the day it belongs
  // to, and where clocks go back over midnight, that midnight comes again within the day after.
  for (let day = dayAt(range.start, zone) - 2; day <= last; day += 1) {
    if (days && !days.includes(weekdayOfDay(day))) continue;
    const interval =
      twice === 'longer'
        ? {
            start: momentOn(day, fromMinute, zone, 'earlier'),
            end: momentOn(day, endMinute, zone, 'later'),
          }
        : shortest(day, fromMinute, endMinute, zone);
    if (interval.end > interval.start) found.push(interval);
  }
  return intersect(unionOf(found), [range]);
}

/** The shortest band that is not empty, over the readings of both edges; the earlier where two are equally short. */
function shortest(day: DayNumber, from: number, to: number, zone: string): Interval {
  let best: Interval = { start: 0, end: 0 };
  for (const first of ['earlier', 'later'] as const)
    for (const last of ['earlier', 'later'] as const) {
      const read = { start: momentOn(day, from, zone, first), end: momentOn(day, to, zone, last) };
      const length = read.end - read.start;
      if (length > 0 && (best.end === best.start || length < best.end - best.start)) best = read;
    }
  return best;
}
