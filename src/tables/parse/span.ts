import { localTimeOf, type Instant, type Interval } from '../../calendar/index.js';
import { minuteOfDay, type ClockTime } from './clock.js';
import {
  candidatesOf,
  clocksGoBackAt,
  dayAfter,
  midnight,
  shortestPair,
  twiceWarning,
  type Candidates,
} from './local-moment.js';
import { refuse } from './parsed.js';
import type { CalendarDay, WrittenMoment } from './written-moment.js';
import type { Problem } from '../../model/index.js';
import type { TwiceReason } from '../problems/cell-problems.js';

/** A stretch read from a start and an end, with what is worth saying of each. */
export interface ReadSpan extends Interval {
  readonly startWarning?: Problem;
  readonly endWarning?: Problem;
}

export type SpanResult = { value: ReadSpan } | { problem: Problem; of: 'start' | 'end' };

const shorter = 'shorter-stretch';
const wholeNight = 'whole-hour';
const needsTime = (what: string): { problem: Problem } => refuse('time-missing', { what });

/**
 * A window's start and end as moments. An end that is only a time is the first such time after the start. Where
 * clocks show a time twice, the reading that gives the shorter window is taken; but a start at the first doubled minute
 * is the edge of the doubled hour, as a window over the whole night means it: its first showing.
 */
export function spanOf(start: WrittenMoment, end: WrittenMoment, zone: string): SpanResult {
  if (!start.date) {
    return {
      of: 'start',
      ...refuse('date-missing/start'),
    };
  }
  const from = withMidnight(start);
  if (!from) return { of: 'start', ...needsTime('start') };
  const starts = candidatesOf(from, zone);
  if ('problem' in starts) return { ...starts, of: 'start' };
  const to = withMidnight(
    end.date ? end : { ...end, date: dayOfEnd(end.time!, starts.value, zone) },
  );
  if (!to) return { of: 'end', ...needsTime('end') };
  const ends = candidatesOf(to, zone);
  if ('problem' in ends) return { ...ends, of: 'end' };
  const edge = startsAtEdge(starts.value, zone);
  const pair = shortestPair(
    edge ? [starts.value.instants[0]!] : starts.value.instants,
    ends.value.instants,
  );
  if (!pair) {
    return {
      of: 'end',
      ...refuse('end-not-after-start'),
    };
  }
  const startWarning = warningOf(starts.value, pair.start, zone, edge ? wholeNight : shorter);
  const endWarning = warningOf(ends.value, pair.end, zone, shorter);
  return {
    value: { ...pair, ...(startWarning && { startWarning }), ...(endWarning && { endWarning }) },
  };
}

function withMidnight(written: WrittenMoment): WrittenMoment | undefined {
  if (written.time) return written;
  return written.serial ? { ...written, time: midnight } : undefined;
}

function dayOfEnd(end: ClockTime, starts: Candidates, zone: string): CalendarDay {
  // The zone's own clock is asked, as a start with an offset may fall on another local day.
  const shown = localTimeOf(starts.instants[0]!, zone);
  return dayAfter(shown, minuteOfDay(end) > minuteOfDay(shown) ? 0 : 1);
}

function startsAtEdge({ instants }: Candidates, zone: string): boolean {
  return instants.length === 2 && clocksGoBackAt(instants[1]!, zone);
}

function warningOf(
  found: Candidates,
  taken: Instant,
  zone: string,
  why: TwiceReason,
): Problem | undefined {
  if (found.instants.length < 2) return found.warning;
  return twiceWarning(found.instants, taken, zone, why);
}
