import {
  dateOf,
  dayAt,
  DAY,
  momentOn,
  offsetMinutes,
  readings,
  type DayNumber,
  type Instant,
  type Interval,
} from '../../../src/calendar/index.js';
import { dayText } from '../../shared/format.js';
import { clockParts } from '../live/clock-entry.js';

/** What was typed as a time: hours and minutes, and which of two such times where the offset says so. */
interface TypedClock {
  readonly hour: number;
  readonly minute: number;
  readonly offsetMinutes?: number;
}

/** Reads `05:30`, `0530` or `01:30+01:00`; undefined for anything else. */
function typedClock(text: string): TypedClock | undefined {
  const found = /^(.*?)(?:([+\-\u2212])(\d{1,2}):?(\d{2}))?$/.exec(text.trim())!;
  const parts = clockParts(found[1]!);
  if (!parts) return undefined;
  const [hour, minute] = parts;
  if (found[2] === undefined) return { hour, minute };
  const size = Number(found[3]) * 60 + Number(found[4]);
  return { hour, minute, offsetMinutes: found[2] === '+' ? size : -size };
}

/** The days that a window touches, with what they are called. */
export function daysOf(
  { start, end }: { readonly start: Instant; readonly end: Instant },
  zone: string,
): readonly { readonly day: DayNumber; readonly text: string }[] {
  const first = dayAt(start, zone);
  return Array.from({ length: dayAt(end, zone) - first + 1 }, (_, index) => ({
    day: first + index,
    text: dayText(momentOn(first + index, 720, zone), zone),
  }));
}

/** Whether a time of day alone can mean two nights of the window, so that the day has to be said too. */
export const needsDay = ({ start, end }: Interval): boolean => end - start > DAY;

/**
 * Moments of a window at which its clocks show what was typed, in order; `day` leaves those of that day alone.
 * @returns `no-time` where no time was typed, `skipped` where clocks skip it on every day asked about, `outside`
 * where it is no time of the window.
 */
export function momentsIn(
  typed: string,
  window: Interval,
  zone: string,
  day?: DayNumber,
): readonly Instant[] | 'no-time' | 'skipped' | 'outside' {
  const clock = typedClock(typed);
  if (!clock) return 'no-time';
  const days = day === undefined ? daysOf(window, zone).map((item) => item.day) : [day];
  const { hour, minute } = clock;
  const shown = days.flatMap((value) => {
    const read = readings({ ...dateOf(value), hour, minute }, zone);
    return read.kind === 'one' ? [read.at] : read.kind === 'two' ? [read.earlier, read.later] : [];
  });
  const meant = shown.filter(
    (at) => clock.offsetMinutes === undefined || offsetMinutes(at, zone) === clock.offsetMinutes,
  );
  if (meant.length === 0) return 'skipped';
  const inside = meant.filter((at) => at >= window.start && at <= window.end);
  return inside.length > 0 ? inside : 'outside';
}
