import {
  instantOf,
  localTimeOf,
  readings,
  startOfLocalDay,
  unionOf,
  weekdayOf,
  type Instant,
  type Interval,
  type IntervalSet,
} from '../calendar/index.js';

/** A band of the local day: from one minute of the day to another, the next day's when not after the first. */
export interface DailyBand {
  readonly fromMinute: number;
  readonly toMinute: number;
  /** Days on which the band starts, 1 Monday to 7 Sunday; absent: every day. */
  readonly days?: readonly number[];
  /** Which reading of a time shown twice is meant: the one that makes the band `longer` or `shorter`. */
  readonly doubt: 'longer' | 'shorter';
}

/** The stretches of a band that touch [from, to), clipped to it, by the clocks of `zone`. */
export function dailyBands(band: DailyBand, zone: string, from: Instant, to: Instant): IntervalSet {
  const found: Interval[] = [];
  for (let day = startOfLocalDay(from, zone, -1); day < to; day = startOfLocalDay(day, zone, 1)) {
    if (band.days && !band.days.includes(weekdayOf(day, zone))) continue;
    const next = band.toMinute <= band.fromMinute ? band.toMinute + 1440 : band.toMinute;
    const start = momentOf(day, band.fromMinute, zone, band.doubt === 'shorter');
    const end = momentOf(day, next, zone, band.doubt === 'longer');
    found.push({ start: Math.max(start, from), end: Math.min(end, to) });
  }
  return unionOf(found);
}

/** The moment of a minute of the local day that begins at `day`; past 1440 it is on the next day. */
function momentOf(day: Instant, minuteOfDay: number, zone: string, later: boolean): Instant {
  const days = Math.floor(minuteOfDay / 1440);
  const start = days === 0 ? day : startOfLocalDay(day, zone, days);
  const minute = minuteOfDay - days * 1440;
  if (minute === 0) return start;
  const { year, month, day: date } = localTimeOf(start, zone);
  const local = { year, month, day: date, hour: Math.floor(minute / 60), minute: minute % 60 };
  const reading = readings(local, zone);
  if (reading.kind === 'none') return reading.gap;
  return instantOf(local, zone, later ? 'later' : 'earlier');
}
