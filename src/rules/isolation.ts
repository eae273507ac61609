import type { Interval } from '../calendar/index.js';
import type { AccessWindow, Needs } from '../model/index.js';

/** When the sections that work needs are dead in a window. */
export interface IsolationTimes extends Interval {
  /** Needed sections that are dead no earlier than `start`, where that is after the start of the window. */
  readonly startLate: readonly string[];
  /** Needed sections that must be given back by `end`, where that is before the end of the window. */
  readonly endEarly: readonly string[];
  /** Needed sections that the window does not isolate at all. */
  readonly notBooked: readonly string[];
}

/**
 * The stretch in which every needed section may be isolated: from the latest start to the earliest end of their own
 * times, the whole window where none has times of its own. It ends before it starts when those times do not meet.
 */
export function isolationTimes(window: AccessWindow, needs: Needs): IsolationTimes {
  if (needs.isolation.length === 0)
    return { start: window.start, end: window.end, startLate: [], endEarly: [], notBooked: [] };
  const needed = window.isolation.filter((one) => needs.isolation.includes(one.section));
  const times = needed.flatMap(({ section, during }) => (during ? [{ section, ...during }] : []));
  const start = Math.max(window.start, ...times.map((one) => one.start));
  const end = Math.min(window.end, ...times.map((one) => one.end));
  return {
    start,
    end,
    startLate: times.filter((one) => one.start === start && start > window.start).map(nameOf),
    endEarly: times.filter((one) => one.end === end && end < window.end).map(nameOf),
    notBooked: [...new Set(needs.isolation)].filter(
      (section) => !needed.some((one) => one.section === section),
    ),
  };
}

const nameOf = (one: { readonly section: string }): string => one.section;
