import { HOUR, type Instant } from './instant.js';
import { intersect, unionOf, type IntervalSet } from './interval-set.js';
import type { Interval } from './interval.js';
import { localTimeOf, readings, startOfLocalDay, weekdayOf, type LocalTime } from './local-time.js';

/** A stretch that comes back every day, in minutes of the local day. */
export interface DailyBand {
  /** 0 to 1439. */
  readonly fromMinute: number;
  /** 0 to 1440; at or before `fromMinute` it lies on the next day. */
  readonly toMinute: number;
  /** Days on which the band starts, 1 Monday to 7 Sunday; absent: every day. */
  readonly days?: readonly number[];
}

/** The local time `minute` minutes into a local day; 1440 is midnight at its end. */
function localAt(day: LocalTime, minute: number): LocalTime {
  const moved = new Date(0);
  moved.setUTCFullYear(day.year, day.month - 1, day.day);
  moved.setUTCHours(0, minute);
  return {
    year: moved.getUTCFullYear(),
    month: moved.getUTCMonth() + 1,
    day: moved.getUTCDate(),
    hour: moved.getUTCHours(),
    minute: moved.getUTCMinutes(),
  };
}

/** An edge that clocks skip is the moment of the change; one shown twice is taken where the band is longer. */
function edge(local: LocalTime, zone: string, side: 'start' | 'end'): Instant {
  const reading = readings(local, zone);
  if (reading.kind === 'one') return reading.at;
  if (reading.kind === 'none') return reading.gap;
  return side === 'start' ? reading.earlier : reading.later;
}

/**
 * The stretches of a daily band inside `range`, in real time: a band over a clock change is an hour longer or shorter.
 *
 * A band belongs to the day it starts on, so one that started the evening before `range` counts too.
 */
export function dailyBands(band: DailyBand, range: Interval, zone: string): IntervalSet {
  const { fromMinute, toMinute, days } = band;
  const endMinute = toMinute > fromMinute ? toMinute : toMinute + 1440;
  const found: Interval[] = [];
  // Two days back: a band may last until the end of the day after it started.
  for (
    let day = startOfLocalDay(range.start, zone, -2);
    day < range.end;
    day = startOfLocalDay(day + 2 * HOUR, zone, 1)
  ) {
    // Noon is on the intended day in every zone.
    const noon = day + 12 * HOUR;
    if (days && !days.includes(weekdayOf(noon, zone))) continue;
    const local = localTimeOf(noon, zone);
    const start = edge(localAt(local, fromMinute), zone, 'start');
    const end = edge(localAt(local, endMinute), zone, 'end');
    if (end > start) found.push({ start, end });
  }
  return intersect(unionOf(found), [range]);
}
