import { weekdayOf, type Clock } from './clock.js';
import type { Curfew, Instant, Stretch, Weekday } from './plan-types.js';

const names: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** A recurring band of the day in local time. If `to` is not after `from`, it is on the next day. */
export interface Band {
  readonly from: number;
  readonly to: number;
  /** Days on which it starts; absent: every day. */
  readonly days?: readonly Weekday[] | undefined;
  /** For an edge at a local time that occurs twice: choose the one that makes the band `longer` or `shorter`. */
  readonly twice: 'longer' | 'shorter';
}

/** Occurrences of a band that overlap a time, not clipped, in order. */
export function stretchesOf(band: Band, within: Stretch, clock: Clock): Stretch[] {
  const { from, to, days, twice } = band;
  const found: Stretch[] = [];
  const last = clock.dayAt(within.end);
  for (let day = clock.dayAt(within.start) - 2; day <= last; day += 1) {
    if (days && !days.includes(names[weekdayOf(day)]!)) continue;
    const start = clock.moment(day, from, twice === 'longer' ? 'earlier' : 'later');
    const end = clock.moment(
      to > from ? day : day + 1,
      to,
      twice === 'longer' ? 'later' : 'earlier',
    );
    if (start < end && start < within.end && within.start < end) found.push({ start, end });
  }
  return found;
}

/** Curfews use the longer reading: nobody works in a doubtful minute. */
export function curfewStretches(curfew: Curfew, within: Stretch, clock: Clock): Stretch[] {
  const { from, to, days } = curfew;
  const band: Band = { from: minutesOf(from), to: minutesOf(to), days, twice: 'longer' };
  return stretchesOf(band, within, clock);
}

function minutesOf(text: string): number {
  const [hours, minutes] = text.split(':').map(Number);
  return hours! * 60 + minutes!;
}

/** The parts of a time that nothing covers, in order; adjacent parts are merged. */
export function uncovered(within: Stretch, covered: readonly Stretch[]): Stretch[] {
  const edges: { at: Instant; by: number }[] = [];
  for (const { start, end } of covered)
    if (end > start && start < within.end && end > within.start)
      edges.push({ at: start, by: 1 }, { at: end, by: -1 });
  edges.sort((a, b) => a.at - b.at || b.by - a.by);
  const clear: Stretch[] = [];
  let over = 0;
  let since = within.start;
  for (const { at, by } of edges) {
    if (over === 0 && at > since) clear.push({ start: since, end: at });
    over += by;
    if (over === 0) since = Math.max(within.start, at);
  }
  if (over === 0 && since < within.end) clear.push({ start: since, end: within.end });
  return clear;
}
