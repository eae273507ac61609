// A window that is cut takes the times of its isolation with it: what lies outside is clipped, never left to be a fault.
import {
  clockOfMinute,
  intersect,
  isoText,
  localText,
  localTimeOf,
  totalMinutes,
  type Instant,
  type Interval,
  type IntervalSet,
} from '../calendar/index.js';
import { deadTimes, type AccessWindow, type IsolatedSection } from '../model/index.js';
import { parseIsolation } from './parse/isolation.js';
import { spanOf } from './parse/span.js';
import { parseMoment, type DateOrder } from './parse/written-moment.js';

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
 * its own, where the window moves to another time altogether, where it stays as it is, or where the new start and end
 * cannot be read, which is told as a fault of theirs.
 */
export function isolationCut(
  window: AccessWindow,
  start: string,
  end: string,
  order: DateOrder = 'day-first',
): CutIsolation | undefined {
  if (!window.isolation.some((one) => one.during)) return undefined;
  const [from, to] = [parseMoment(start.trim(), order), parseMoment(end.trim(), order)];
  if ('problem' in from || 'problem' in to) return undefined;
  const span = spanOf(from.value, to.value, window.zone);
  if ('problem' in span) return undefined;
  const becomes = span.value;
  if (becomes.start === window.start && becomes.end === window.end) return undefined;
  // Moved to another night it is no cut: times of day hold there as they stand.
  if (becomes.end <= window.start || becomes.start >= window.end) return undefined;
  const sections = window.isolation.map((one) => {
    const then = deadTimes(one, becomes, window.zone);
    const asItIs = cellOf(one, window.zone);
    const stays = readsAs(asItIs, then, becomes, window.zone);
    return { one, then, stays, text: stays ? asItIs : datedOf(one.section, then, window.zone) };
  });
  const timed = sections.filter(({ one }) => one.during);
  return {
    ...(sections.some(({ stays }) => !stays) && {
      text: sections.flatMap(({ text }) => text).join('; '),
    }),
    cut: timed.flatMap(({ one, then }) =>
      then.length > 0 && isLess(then, deadTimes(one, window, window.zone))
        ? [{ section: one.section, times: then }]
        : [],
    ),
    lost: timed.filter(({ then }) => then.length === 0).map(({ one }) => one.section),
  };
}

/** Whether some of the time that was is no more. */
const isLess = (then: IntervalSet, before: IntervalSet): boolean =>
  totalMinutes(intersect(then, before)) < totalMinutes(before);

/** The isolation cell that says what a window has. */
export const isolationCell = (sections: readonly IsolatedSection[], zone: string): string =>
  sections.flatMap((one) => cellOf(one, zone)).join('; ');

/** A section with its times as a cell says them, an entry each. */
function cellOf({ section, during }: IsolatedSection, zone: string): readonly string[] {
  if (!during) return [section];
  return during.flatMap((one) =>
    'fromMinute' in one
      ? [`${section} [${clockOfMinute(one.fromMinute)}-${clockOfMinute(one.toMinute)}]`]
      : datedOf(section, [one], zone),
  );
}

const datedOf = (section: string, times: IntervalSet, zone: string): readonly string[] =>
  times.map((one) => `${section} [${momentText(one.start, zone)} - ${momentText(one.end, zone)}]`);

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
    found.every((one, k) => one.start === times[k]!.start && one.end === times[k]!.end)
  );
}

/** A moment with its date and offset, which means the same whatever the window starts with. */
const momentText = (at: Instant, zone: string): string =>
  `${localText(localTimeOf(at, zone))}${isoText(at, zone).slice(-6)}`;
