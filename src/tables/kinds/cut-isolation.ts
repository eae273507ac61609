// A window that is cut takes the times of its isolation with it: what lies outside is clipped, never left to be a fault.
import {
  clockOfMinute,
  dayAt,
  daysLater,
  intersect,
  isoText,
  localText,
  localTimeOf,
  totalMinutes,
  type Instant,
  type Interval,
  type IntervalSet,
} from '../../calendar/index.js';
import { deadTimes, type AccessWindow, type IsolatedSection } from '../../model/index.js';
import { parseIsolation } from '../parse/isolation.js';
import { spanOf } from '../parse/span.js';
import { parseMoment, type DateOrder } from '../parse/written-moment.js';

/** What a window's new times do to the isolation written in its row. */
export interface CutIsolation {
  /** The cell as it is to be; absent where it stays true as it stands. */
  readonly text?: string;
  /** Sections that are dead for less time than before, and how they are dead then. */
  readonly cut: readonly { readonly section: string; readonly times: readonly Interval[] }[];
  /** Sections of which no time lies in the window any more. */
  readonly lost: readonly string[];
}

/**
 * What becomes of the isolation of a window once it starts and ends as typed; `undefined` where no section has times of
 * its own, where it stays as it is, or where the new start and end cannot be read, which is told as a fault of theirs.
 *
 * Moved to another time altogether the window takes the dates of its isolation with it.
 */
export function isolationCut(
  window: AccessWindow,
  start: string,
  end: string,
  order: DateOrder = 'day-first',
): CutIsolation | undefined {
  const becomes = spanTyped(window, start, end, order);
  if (!becomes || (becomes.start === window.start && becomes.end === window.end)) return undefined;
  const elsewhere = becomes.end <= window.start || becomes.start >= window.end;
  return clipped(elsewhere ? movedTo(window, becomes.start) : window, becomes, window);
}

/** The isolation of a window like another that starts and ends as typed: its dates are as many days later as the start. */
export function isolationLike(
  window: AccessWindow,
  start: string,
  end: string,
  order: DateOrder = 'day-first',
): CutIsolation | undefined {
  const becomes = spanTyped(window, start, end, order);
  return becomes && clipped(movedTo(window, becomes.start), becomes, window);
}

/** Where a window lies as typed; `undefined` where that cannot be read or nothing hangs on it. */
function spanTyped(
  window: AccessWindow,
  start: string,
  end: string,
  order: DateOrder,
): Interval | undefined {
  if (!window.isolation.some((section) => section.during)) return undefined;
  const [from, to] = [parseMoment(start.trim(), order), parseMoment(end.trim(), order)];
  if ('problem' in from || 'problem' in to) return undefined;
  const span = spanOf(from.value, to.value, window.zone);
  return 'problem' in span ? undefined : span.value;
}

/** The window as many whole days from where it is as another start is, its isolation at the same times by the clock. */
export function movedTo(window: AccessWindow, start: Instant): AccessWindow {
  const { zone } = window;
  const days = dayAt(start, zone) - dayAt(window.start, zone);
  const later = (interval: Interval): Interval => ({
    start: daysLater(interval.start, days, zone),
    end: daysLater(interval.end, days, zone),
  });
  return {
    ...window,
    ...later(window),
    isolation: window.isolation.map(({ section, during }) => ({
      section,
      ...(during && {
        during: during.map((item) => ('fromMinute' in item ? item : later(item))),
      }),
    })),
  };
}

/** A window's isolation in what becomes of it; `written`: the window whose cell is there. */
function clipped(window: AccessWindow, becomes: Interval, written: AccessWindow): CutIsolation {
  const sections = window.isolation.map((section) => {
    const then = deadTimes(section, becomes, window.zone);
    const asItIs = cellOf(section, window.zone);
    const stays = readsAs(asItIs, then, becomes, window.zone);
    return {
      section,
      then,
      text: stays ? asItIs : datedOf(section.section, then, window.zone),
    };
  });
  const timed = sections.filter(({ section }) => section.during);
  const text = sections.flatMap((part) => part.text).join('; ');
  return {
    ...(text !== isolationCell(written.isolation, written.zone) && { text }),
    cut: timed.flatMap(({ section, then }) =>
      then.length > 0 && isLess(then, deadTimes(section, window, window.zone))
        ? [{ section: section.section, times: then }]
        : [],
    ),
    lost: timed.filter(({ then }) => then.length === 0).map(({ section }) => section.section),
  };
}

/** Whether some of the time that was is no more. */
const isLess = (then: IntervalSet, before: IntervalSet): boolean =>
  totalMinutes(intersect(then, before)) < totalMinutes(before);

/** The isolation cell that says what a window has. */
export const isolationCell = (sections: readonly IsolatedSection[], zone: string): string =>
  sections.flatMap((section) => cellOf(section, zone)).join('; ');

/** A section with its times as a cell says them, an entry each. */
function cellOf({ section, during }: IsolatedSection, zone: string): readonly string[] {
  if (!during) return [section];
  return during.flatMap((item) =>
    'fromMinute' in item
      ? [`${section} [${clockOfMinute(item.fromMinute)}-${clockOfMinute(item.toMinute)}]`]
      : datedOf(section, [item], zone),
  );
}

const datedOf = (section: string, times: IntervalSet, zone: string): readonly string[] =>
  times.map(
    (time) => `${section} [${momentText(time.start, zone)} - ${momentText(time.end, zone)}]`,
  );

/** Whether entries of one section, read in a window, come to these times. */
function readsAs(
  entries: readonly string[],
  times: IntervalSet,
  window: Interval,
  zone: string,
): boolean {
  const read = parseIsolation(entries.join('; '), window, zone, 'day-first');
  if ('problem' in read || read.value.length !== 1) return false;
  const found = deadTimes(read.value[0]!, window, zone);
  return (
    found.length === times.length &&
    found.every(
      (interval, k) => interval.start === times[k]!.start && interval.end === times[k]!.end,
    )
  );
}

/** A moment with its date and offset, which means the same whatever the window starts with. */
const momentText = (at: Instant, zone: string): string =>
  `${localText(localTimeOf(at, zone))}${isoText(at, zone).slice(-6)}`;
