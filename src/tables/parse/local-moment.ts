import {
  addMinutes,
  isoText,
  localText,
  localTimeOf,
  MINUTE,
  offsetMinutes,
  readings,
  type Instant,
  type LocalTime,
} from '../../calendar/index.js';
import { refuse, type Parsed, problemOf } from './parsed.js';
import type { CalendarDay, WrittenMoment } from './written-moment.js';
import type { ClockTime } from './clock.js';
import type { Problem } from '../../model/index.js';
import type { TwiceReason } from '../problems/cell-problems.js';

/** The moments a written time can mean: one, or two in the hour that clocks repeat. */
export interface Candidates {
  readonly instants: readonly Instant[];
  readonly warning?: Problem;
}

export const midnight: ClockTime = { hour: 0, minute: 0 };

/** The calendar day `days` after another. */
export function dayAfter(date: CalendarDay, days: number): CalendarDay {
  const at = new Date(Date.UTC(date.year, date.month - 1, date.day + days));
  return { year: at.getUTCFullYear(), month: at.getUTCMonth() + 1, day: at.getUTCDate() };
}

/** Every moment at which clocks in `zone` show a time of a day; 24:00 is midnight of the next. */
export function candidatesAt(
  date: CalendarDay,
  time: ClockTime,
  zone: string,
): Parsed<readonly Instant[]> {
  const local = shownAt(date, time);
  const reading = readings(local, zone);
  if (reading.kind === 'one') return { value: [reading.at] };
  if (reading.kind === 'two') return { value: [reading.earlier, reading.later] };
  const last = localText(localTimeOf(reading.gap - MINUTE, zone));
  const next = localText(localTimeOf(reading.gap, zone));
  if (
    localText(localTimeOf(addMinutes(wallClock(reading.gap - MINUTE, zone), 1), 'UTC')) ===
    localText(local)
  ) {
    // The first minute skipped is not inside the gap but its edge: the moment at which clocks change.
    const warning = problemOf('time-at-clock-change', { local: localText(local), zone, next });
    return { value: [reading.gap], warning };
  }
  return refuse('time-does-not-exist', { local: localText(local), zone, last, next });
}

/** The moment at which clocks go over a time of a day, so that they never show it; `undefined` where they show it. */
export function gapAt(date: CalendarDay, time: ClockTime, zone: string): Instant | undefined {
  const reading = readings(shownAt(date, time), zone);
  return reading.kind === 'none' ? reading.gap : undefined;
}

const shownAt = (date: CalendarDay, time: ClockTime): LocalTime =>
  time.hour === 24
    ? { ...dayAfter(date, 1), hour: 0, minute: 0 }
    : { year: date.year, month: date.month, day: date.day, hour: time.hour, minute: time.minute };

/** What the wall clock shows, as if it were UTC. */
const wallClock = (at: Instant, zone: string): Instant => addMinutes(at, offsetMinutes(at, zone));

/** Whether clocks go back at this very moment, so that it is the second showing of the first doubled minute. */
export function clocksGoBackAt(at: Instant, zone: string): boolean {
  return offsetMinutes(at - MINUTE, zone) > offsetMinutes(at, zone);
}

/** The moments a written date and time can mean. @throws {RangeError} When it has no date or no time. */
export function candidatesOf(written: WrittenMoment, zone: string): Parsed<Candidates> {
  const { date, time, offset } = written;
  if (!date || !time) throw new RangeError('a date and a time are needed');
  if (offset === undefined) {
    const found = candidatesAt(date, time, zone);
    if ('problem' in found) return found;
    return { value: { instants: found.value, ...(found.warning && { warning: found.warning }) } };
  }
  const at = utc(date, time) - offset * MINUTE;
  const there = offsetMinutes(at, zone);
  if (offset === there || offset === 0) return { value: { instants: [at] } };
  const warning = problemOf('offset-not-of-zone', { zone, moment: isoText(at, zone) });
  return { value: { instants: [at], warning } };
}

function utc(date: CalendarDay, time: ClockTime): Instant {
  return Date.UTC(date.year, date.month - 1, date.day, time.hour, time.minute);
}

/** Says that a time is shown twice, which reading was taken, and gives both. */
export function twiceWarning(
  instants: readonly Instant[],
  taken: Instant,
  zone: string,
  why: TwiceReason,
): Problem {
  const [earlier = '', later = ''] = instants.map((at) => isoText(at, zone));
  return problemOf('time-happens-twice', {
    zone,
    earlier,
    later,
    moment: isoText(taken, zone),
    why,
  });
}

/**
 * One moment from its candidates, `earlier` or `later` where there are two, and then says so.
 *
 * @param why The reason of the choice, to end the sentence with.
 */
export function settle(
  found: Candidates,
  prefer: 'earlier' | 'later',
  zone: string,
  why: TwiceReason,
): Parsed<Instant> {
  const [first, second] = found.instants;
  if (first === undefined) throw new RangeError('no moment to choose from');
  if (second === undefined) {
    return found.warning ? { value: first, warning: found.warning } : { value: first };
  }
  const value = prefer === 'earlier' ? first : second;
  return { value, warning: twiceWarning(found.instants, value, zone, why) };
}

/**
 * The pair (start, end) that makes the shortest stretch that is not empty; the earlier of two as short. `undefined`
 * when no end comes after a start.
 */
export function shortestPair(
  starts: readonly Instant[],
  ends: readonly Instant[],
): { start: Instant; end: Instant } | undefined {
  let best: { start: Instant; end: Instant } | undefined;
  for (const start of starts) {
    for (const end of ends) {
      if (end <= start) continue;
      if (!best || end - start < best.end - best.start) best = { start, end };
    }
  }
  return best;
}
