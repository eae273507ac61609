import { intersect, type Instant, type IntervalSet } from '../calendar/index.js';
import { deadTimes, type AccessWindow, type Needs } from '../model/index.js';

/** A needed section and when it may be dead in a window. */
export interface DeadTimes {
  readonly section: string;
  readonly times: IntervalSet;
}

/** When the sections that work needs may be dead in a window. */
export interface IsolationTimes {
  /** When all of them may be dead, in order: the whole window unless a section has its own times. Empty when they never coincide. */
  readonly dead: IntervalSet;
  /** Needed sections with their own times. */
  readonly timed: readonly DeadTimes[];
  /** Needed sections that the window does not isolate. */
  readonly notBooked: readonly string[];
}

/** When every needed section may be isolated at once. */
export function isolationTimes(window: AccessWindow, needs: Needs): IsolationTimes {
  const needed = window.isolation.filter((section) => needs.isolation.includes(section.section));
  const timed = needed
    .filter((section) => section.during)
    .map((section) => ({
      section: section.section,
      times: deadTimes(section, window, window.zone),
    }));
  return {
    dead: timed.reduce<IntervalSet>(
      (both, { times }) => intersect(both, times),
      [{ start: window.start, end: window.end }],
    ),
    timed,
    notBooked: [...new Set(needs.isolation)].filter(
      (section) => !needed.some((item) => item.section === section),
    ),
  };
}

/** The sections whose dead time starts, or ends, at a moment, and so limit the common one. All of them when none does. */
export function sectionsAt(
  timed: readonly DeadTimes[],
  edge: 'start' | 'end',
  at: Instant,
): string {
  const found = timed.filter(({ times }) => times.some((time) => time[edge] === at));
  return (found.length > 0 ? found : timed).map((item) => item.section).join(', ');
}
